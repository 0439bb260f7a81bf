"""Data of a file becomes a shape, or findings: each with the place of the value that it is about, and none hides another."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from inspect import isclass
from typing import Any, TypeVar, get_args, get_origin

from pydantic import BaseModel, ValidationError
from pydantic.fields import FieldInfo
from pydantic_core import ErrorDetails

from builder.model.figure import Source
from builder.model.finding import Finding, stop
from builder.model.nearest import did_you_mean
from builder.model.product import Product
from builder.read.placed_yaml import PlacedYaml
from builder.read.shapes.shape import Shape
from builder.read.text_error import TextError
from builder.read.yaml_nodes import Step

S = TypeVar("S", bound=Shape)


@dataclass(frozen=True)
class Known:
    """What a text may name: the sources and the kinds of product that have been read before it."""

    sources: Mapping[str, Source] = field(default_factory=dict)
    products: Mapping[str, Product] = field(default_factory=dict)


NOTHING_KNOWN = Known()


def fit(shape: type[S], placed: PlacedYaml, findings: list[Finding], *path: Step, known: Known = NOTHING_KNOWN) -> S | None:
    """Fit the data at a path to a shape; where it does not fit, add what is wrong and give None."""
    try:
        return shape.model_validate(placed.at(*path), context=known)
    except ValidationError as error:
        findings.extend(_finding(shape, placed, path, fault) for fault in error.errors(include_url=False))
        return None


def fit_each(shape: type[S], placed: PlacedYaml, findings: list[Finding], known: Known = NOTHING_KNOWN) -> Iterator[tuple[str, S]]:
    """Fit each entry of a file that lists things by name; the entries that do not fit are left out."""
    if not isinstance(placed.data, dict):
        wrong = "A set of named values is wanted in this file."
        findings.append(stop("wrong-kind-of-value", placed.place(), wrong, 'Begin each entry with its name and a colon: "name:".'))
        return
    for key in placed.data:
        fitted = fit(shape, placed, findings, key, known=known)
        if fitted is not None:
            yield key, fitted


def _finding(shape: type[Shape], placed: PlacedYaml, path: tuple[Step, ...], fault: ErrorDetails) -> Finding:
    inner = fault["loc"]
    spot = (*path, *inner)
    error = fault.get("ctx", {}).get("error")
    if isinstance(error, TextError):
        return stop(error.name, placed.place(*spot, *error.at), error.wrong, error.remedy)
    declared = _walk(shape, inner)[0]
    key = next((str(step) for step in reversed(inner) if isinstance(step, str)), placed.file)
    example = f' Write it like this: "{key}: {declared.examples[0]}".' if declared and declared.examples else ""
    match fault["type"]:
        case "missing":
            return stop(
                "field-missing", placed.key_place(*spot), f'"{key}" is missing here.', f'Add a line that begins with "{key}:".{example}'
            )
        case "extra_forbidden":
            keys = [str(info.alias) for info in _walk(shape, inner[:-1])[1].model_fields.values()]
            remedy = f"These may stand here: {', '.join(keys)}.{did_you_mean(key, keys)}"
            return stop("key-unknown", placed.key_place(*spot), f'"{key}" has no meaning here.', remedy)
        case kind:
            wanted = "a list" if kind in ("tuple_type", "list_type") else "a set of named values"
            wrong = f'{_kind_of(fault["input"])} stands in "{key}", and {wanted} is wanted.'
            return stop("wrong-kind-of-value", placed.place(*spot), wrong, example.strip() or _how_to_write(wanted))


def _kind_of(given: object) -> str:
    if given == "":
        return "Nothing"
    return "A list" if isinstance(given, list) else "A set of named values" if isinstance(given, dict) else "A single text"


def _how_to_write(wanted: str) -> str:
    if wanted == "a list":
        return 'Write each item in a line of its own that begins with "- ", or all in square brackets, with commas between.'
    return 'Write "name: value" lines below, set in by two spaces, or leave the line out.'


def _walk(shape: type[Shape], path: tuple[Step, ...]) -> tuple[FieldInfo | None, Any]:
    """Give the field at a path, where it is one, and the type of what stands there."""
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
