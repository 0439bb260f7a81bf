"""Data that does not fit a shape becomes what of it can be read, with `UNREAD` in place of all else.

Decided: a key that has no meaning stands for the key that is near to it and absent, or, near to none, for any that is absent. Why: what
is meant by it is said, and is not found missing.
"""

from inspect import isclass
from typing import Annotated, Any, TypeVar, get_args, get_origin

from pydantic import AliasChoices, TypeAdapter, ValidationError
from pydantic.fields import FieldInfo

from builder.model.recipe.unread import UNREAD
from builder.read.known import Known
from builder.read.shapes.shape import Shape
from builder.words.nearest import nearest

S = TypeVar("S", bound=Shape)


def in_part(shape: type[S], data: object, known: Known) -> S:
    """Make a shape of what can be read of some data."""
    if not isinstance(data, dict):
        return UNREAD  # type: ignore[no-any-return]
    amiss = _amiss(shape, data, known)
    if amiss is None:
        return UNREAD  # type: ignore[no-any-return]
    written = {str(info.alias): key for info in shape.model_fields.values() for key in _spellings(info) if key in data}
    absent = [str(info.alias) for info in shape.model_fields.values() if info.alias not in written]
    strange = data.keys() - set(written.values())
    meant = {near for key in strange for near in nearest(str(key), absent, most=1) or absent}
    values = {}
    for info in shape.model_fields.values():
        key = str(info.alias)
        if key in amiss or key in meant or (key in absent and info.is_required()):
            values[key] = UNREAD
        elif key in written:
            values[key] = _value(info.annotation, info.metadata, data[written[key]], known)
    return shape.model_construct(**values)


def _amiss(shape: type[Shape], data: object, known: Known) -> set[str] | None:
    """Return the keys that do not go together, each sound by itself; None where it is all of them."""
    try:
        shape.model_validate(data, context=known)
    except ValidationError as error:
        together = [fault["ctx"]["error"] for fault in error.errors(include_url=False) if not fault["loc"] and "ctx" in fault]
        return None if any(not getattr(one, "at", ()) for one in together) else {str(one.at[0]) for one in together}
    return set()


def _spellings(info: FieldInfo) -> tuple[str, ...]:
    both = info.validation_alias
    return tuple(map(str, both.choices)) if isinstance(both, AliasChoices) else (str(info.alias),)


def _value(kind: Any, judged_by: list[Any], given: Any, known: Known) -> Any:
    """Return the value of one field; where it does not fit, what of it can be read."""
    try:
        return TypeAdapter(Annotated[kind, *judged_by] if judged_by else kind).validate_python(given, context=known)
    except ValidationError:
        return _parts(kind, given, known) if given else UNREAD


def _parts(kind: Any, given: Any, known: Known) -> Any:
    inside, origin = get_args(kind), get_origin(kind)
    if hasattr(kind, "__metadata__"):
        return _value(inside[0], list(kind.__metadata__), given, known)
    if type(None) in inside:
        return _value(next(one for one in inside if one is not type(None)), [], given, known)
    if isclass(kind) and issubclass(kind, Shape):
        return in_part(kind, given, known)
    if origin is tuple and inside[1:] == (...,) and isinstance(given, list):
        return tuple(_value(inside[0], [], one, known) for one in given)
    if origin is dict and isinstance(given, dict):
        return {key: _value(inside[1], [], one, known) for key, one in given.items()}
    return UNREAD
