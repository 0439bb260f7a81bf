"""What does not fit a shape becomes findings, in the words of the file and not in those of the shape."""

import re
from collections.abc import Iterator, Sequence
from inspect import isclass
from typing import Any, get_args, get_origin

from pydantic import BaseModel
from pydantic.fields import FieldInfo
from pydantic_core import ErrorDetails

from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.place import Place
from builder.read.shapes.shape import Shape
from builder.read.text.placed_data import PlacedData, Step
from builder.read.text.text_error import TextError
from builder.words.nearest import did_you_mean, nearest

FINDS = (
    FindingKind("field-missing", STOP, "Something that has to be said is missing."),
    FindingKind("key-unknown", STOP, "A name stands where it has no meaning."),
    FindingKind("wrong-kind-of-value", STOP, "A text, a list or a set of named values stands where another of them is wanted."),
)

_Path = tuple[Step, ...]


def explain_faults(faults: Sequence[ErrorDetails], shape: type[Shape], placed: PlacedData) -> Iterator[Finding]:
    """Make the findings for what does not fit in some data. A misspelt key is one mistake, and not a missing one as well."""
    misspelt = {meant for fault in faults if fault["type"] == "extra_forbidden" for meant in _meant(fault["loc"], faults)}
    for fault in faults:
        if fault["type"] != "missing" or fault["loc"] not in misspelt:
            yield _explain(fault, shape, placed)


def _meant(unknown: _Path, faults: Sequence[ErrorDetails]) -> Iterator[_Path]:
    """Yield the missing key that is near to an unknown one beside it."""
    missing = [str(fault["loc"][-1]) for fault in faults if fault["type"] == "missing" and fault["loc"][:-1] == unknown[:-1]]
    yield from ((*unknown[:-1], key) for key in nearest(str(unknown[-1]), missing, most=1))


# What follows a decimal comma among named values in braces: to YAML a name of its own.
_DECIMALS = re.compile(r"\d+ ?[^\W\d]*%?")


def _explain(fault: ErrorDetails, shape: type[Shape], placed: PlacedData) -> Finding:
    inner = fault["loc"]
    spot = (*placed.path, *inner)
    error = fault.get("ctx", {}).get("error")
    if isinstance(error, TextError):
        return placed.inside(*inner).refused(error)
    declared = _walk(shape, inner)[0]
    key = next((str(step) for step in reversed(inner) if isinstance(step, str)), "")
    example = f'"{key}: {declared.examples[0]}"' if declared and declared.examples else ""
    match fault["type"]:
        case "missing":
            around = spot[:-1]
            place = placed.key_place(*inner[:-1]) if around else Place(placed.file)
            remedy = f"Write for example {example}." if example else f'Write "{key}:", and its value behind it.'
            return stop("field-missing", place, f'"{key}" is missing {_inside(around)}.', remedy)
        case "extra_forbidden":
            if _DECIMALS.fullmatch(key) and not fault["input"]:
                wrong = f'A comma stands before "{key}", and to a file in YAML it ends the number before it.'
                return stop("key-unknown", placed.key_place(*inner), wrong, 'Write decimals with a point, for example "0.5 %".')
            keys = [str(info.alias) for info in _walk(shape, inner[:-1])[1].model_fields.values()]
            near = did_you_mean(key, keys)
            comma = (
                ""
                if near or fault["input"]
                else " If it belongs to the text before it, put that text in quotes: in braces a comma ends it."
            )
            remedy = f"These may stand here: {', '.join(keys)}.{near}{comma}"
            return stop("key-unknown", placed.key_place(*inner), f'"{key}" has no meaning here.', remedy)
        case kind:
            wanted = "a list" if kind in ("tuple_type", "list_type", "frozen_set_type") else "a set of named values"
            wrong = f"{_kind_of(fault['input'])} stands {_inside(spot)}, and {wanted} is wanted."
            remedy = f"Write it like this: {example}." if example else 'Write each value in a line of its own as "name: value".'
            return stop("wrong-kind-of-value", placed.place(*inner), wrong, remedy)


def _inside(path: _Path) -> str:
    if not path:
        return "in this file"
    return f'under "{path[-1]}"' if isinstance(path[-1], str) else "in this item of the list"


def _kind_of(given: object) -> str:
    if given == "":
        return "Nothing"
    return "A list" if isinstance(given, list) else "A set of named values" if isinstance(given, dict) else "A single text"


def _walk(shape: type[Shape], path: _Path) -> tuple[FieldInfo | None, Any]:
    """Return the field at a path, where it is one, and the type of what stands there."""
    found: FieldInfo | None = None
    inside: Any = shape
    for step in path:
        if isclass(inside) and issubclass(inside, BaseModel):
            found = next((info for info in inside.model_fields.values() if info.alias == step), None)
            inside = _without_none(found.annotation) if found else None
        else:
            found = None
            inside = _without_none(get_args(inside)[1 if get_origin(inside) is dict else 0])
    return found, inside


def _without_none(annotation: Any) -> Any:
    """Look through `X | None` and through the annotations of a type."""
    arguments = get_args(annotation)
    if type(None) in arguments:
        return _without_none(next(argument for argument in arguments if argument is not type(None)))
    return _without_none(arguments[0]) if hasattr(annotation, "__metadata__") else annotation
