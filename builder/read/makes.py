"""A shape of what a file says makes a value of the model, and a field that the two have in common is declared once.

It goes over by its name. What of it makes a value is made on the way, a name learns where it is written, a count becomes its number, and of
things by name the model may want a list. What the shape works out has the name of the field. Only what else becomes something else is said,
by a method beside the field (`becomes`). What is not written (None) is left to the model. The model's `place` is that of the key under
which the whole stands, or of the one that the shape `stands_at`; its `key` or `name`, where the file has no such key, is what it is listed
by. `places` are those of all its keys.

So do the shapes of YAML (`shapes/shape.py`) and the rows of tables (`text/tables.py`).
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import MISSING, fields, replace
from functools import cache, partial
from types import FunctionType
from typing import TYPE_CHECKING, Any, Generic, TypeVar, get_args, get_origin

from builder.model.dates.studio_class import HomeSize
from builder.model.finding import Acceptance
from builder.model.place import NOWHERE, Name, Place
from builder.model.recipe.quantity import Count
from builder.model.recipe.unread import UNREAD
from builder.read.text.placed_data import PlacedData

if TYPE_CHECKING:
    from _typeshed import DataclassInstance

M = TypeVar("M", covariant=True)
T = TypeVar("T")
# What learns where it is written: as a value, or in a mapping at its key.
_PLACED = (Name, HomeSize, Acceptance)
_Take = Callable[[Any, PlacedData], Any]


class Makes(Generic[M]):
    """Says of a shape which value of the model it makes."""

    def make(self, placed: PlacedData, **others: Any) -> M:
        """Make the value of what stands at a place; `others` stand in place of what is written."""
        return self.made_as(made_by(type(self)), placed, **others)  # type: ignore[arg-type]

    def made_as(self, model: type[T], placed: PlacedData, **others: Any) -> T:
        """Make a value of another model that it has fields in common with."""
        as_they_are, become, may_be_none = _plan(type(self), model)  # type: ignore[arg-type]
        given = {name: getattr(self, name) for name in as_they_are} | others
        for name, take in become.items():
            if name not in others:
                given[name] = placed.part(partial(take, self, placed))
        for name in may_be_none:
            if name in given and given[name] is None:
                del given[name]
        return model(**given)


def becomes(field: str) -> Callable[[T], T]:
    """Mark a method of a shape as the one that makes a field of the model; it is handed what has been read, to ask for places."""

    def say(method: T) -> T:
        method.becomes = field  # type: ignore[attr-defined]
        return method

    return say


@cache
def made_by(shape: Any) -> type:
    """Return the class of the model values that a shape makes: as it says, or the nearest of those that it builds on."""
    said = (base for one in shape.__mro__ for base in one.__dict__.get("__orig_bases__", ()))
    return next(get_args(base)[0] for base in said if get_origin(base) is Makes)  # type: ignore[no-any-return]


def conversions(shape: type) -> dict[str, Callable[..., Any]]:
    """Return the methods of a shape that give a field of the model, by that field."""
    methods = (method for one in reversed(shape.__mro__) for method in vars(one).values() if isinstance(method, FunctionType))
    return {method.becomes: method for method in methods if hasattr(method, "becomes")}


@cache
def _plan(shape: Any, model: type[DataclassInstance]) -> tuple[list[str], dict[str, _Take], list[str]]:
    """Return how a shape makes a value: what goes over as it is, what becomes something else and how, and what of these may be None."""
    said, declared = conversions(shape), shape.declared()
    plain, become, may_be_none = [], dict[str, _Take](), []
    for field in fields(model):
        name = field.name
        if not field.init:
            continue
        if name in said:
            become[name] = said[name]
        elif name in declared and any(map(_changes, _types_in(declared[name][1]))):
            is_list = get_origin(field.type) is tuple and get_origin(declared[name][1]) is dict
            become[name] = partial(_carried, name, declared[name][0], is_list)
        elif name in declared or isinstance(getattr(shape, name, None), property):
            plain.append(name)
        elif name in _BY_NAME:
            become[name] = (lambda _, placed: placed.name) if field.type is Name else _BY_NAME[name]
        if field.default_factory is not MISSING or field.default not in (MISSING, None):
            may_be_none.append(name)
    return plain, become, may_be_none


def _types_in(annotation: Any) -> Iterator[Any]:
    yield annotation
    for inner in get_args(annotation):
        yield from _types_in(inner)


def _changes(kind: Any) -> bool:
    """Tell whether a value of a type becomes another on its way into the model: a shape, or what learns where it is written."""
    return kind in (*_PLACED, Count) or (isinstance(kind, type) and issubclass(kind, Makes))


def _carried(name: str, key: str, is_list: bool, shape: Makes[Any], placed: PlacedData) -> Any:
    value = carried(getattr(shape, name), placed.inside(key))
    return tuple(value.values()) if is_list else value


def carried(value: Any, placed: PlacedData) -> Any:
    """Return what becomes of a value, and of what is in it, on its way into the model."""
    if value is UNREAD or value is None:
        return value
    if isinstance(value, Makes):
        return placed.part(partial(value.make, placed))
    if isinstance(value, tuple):
        return tuple(carried(one, placed.inside(number)) for number, one in enumerate(value))
    if isinstance(value, dict):
        return {key: carried(_known(one, placed.key_place(key)), placed.inside(key)) for key, one in value.items()}
    return value.number if type(value) is Count else _known(value, placed.place())


def _known(value: Any, place: Place) -> Any:
    """Return a value that knows where it is written."""
    return replace(value, place=place) if type(value) in _PLACED and value.place is NOWHERE else value


def _place(shape: Makes[Any], placed: PlacedData) -> Any:
    at = getattr(shape, "stands_at", "")
    return placed.place(at) if at and isinstance(placed.data, dict) and at in placed.data else placed.key_place()


_BY_NAME: dict[str, _Take] = {
    "place": _place,
    "places": lambda _, placed: placed.places(),
    "key": lambda _, placed: placed.key,
    "name": lambda _, placed: placed.key,
}
