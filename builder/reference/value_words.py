"""What may stand after a key, in words: from the type of its field and the function that reads it."""

from collections.abc import Iterator
from datetime import datetime
from enum import Enum
from fractions import Fraction
from functools import cache
from inspect import isclass
from types import UnionType
from typing import Any, Union, get_args, get_origin

from pydantic.fields import FieldInfo

from builder.library import CONTENT
from builder.model.dates.studio_class import HomeSize
from builder.model.finding import Acceptance
from builder.model.keeping.durability import Durability
from builder.model.place import Name
from builder.model.recipe.figure import Source
from builder.model.recipe.product import Product
from builder.model.recipe.quantity import Amount, Box, Count, Density, Duration, Length, Mass, Share, Temperature, Volume
from builder.model.recipe.recipe import StatedPurity
from builder.read.label.share_ranges import parse_share_range
from builder.read.shapes.fields import parser_of
from builder.read.shapes.shape import Shape
from builder.read.text.text_files import TextFolder
from builder.read.values import amounts, numbers, values
from builder.read.values.kinds import Kind
from builder.read.yaml.placed_yaml import read_yaml_file

_LASTS = "a length of time in words"
_BY_TYPE: dict[Any, str] = {
    **dict.fromkeys((str, Name, Acceptance), "a text"),
    int: "a whole number",
    Fraction: "a number",
    bool: "yes or no",
    datetime: "a day, with a time where there is one",
    Mass: Kind.WEIGHT,
    Volume: Kind.VOLUME,
    Share: Kind.SHARE,
    Temperature: Kind.TEMPERATURE,
    Duration: Kind.TIME,
    Length: Kind.LENGTH,
    Count: Kind.COUNT,
    Density: Kind.DENSITY,
    Box: "length x width x height",
    Amount: "an amount",
    Source: "the short name of a work",
    Product: "a kind of product",
    StatedPurity: "a percentage, with or without its range",
    Durability: _LASTS,
    HomeSize: "a weight, a weight of oils, or a number of containers",
}
_BY_PARSER: dict[Any, str] = {
    numbers.parse_price: "an amount of money",
    values.parse_currency: "three capital letters",
    values.parse_web_address: "a web address",
    values.parse_mail_address: "a mail address",
    values.parse_day: "a day",
    values.parse_cancelled: "yes, no, or the reason",
    values.parse_words_of_keeping: _LASTS,
    values.parse_words_of_cure: _LASTS,
    values.find_oil: "the name of an oil",
    amounts.parse_division: Kind.WEIGHT,
    parse_share_range: "a percentage or a range of percentages",
}


_KEYS = "keys of its own"


def value_words(field: FieldInfo) -> str:
    """Return in words what may stand after a key."""
    return _words(field.annotation, tuple(field.metadata))


def example_of(field: FieldInfo) -> str:
    """Return what may stand after a key, as an example: as the shape has it, else the first of the words that may; empty without either."""
    one, is_one_of, words = value_words(field).partition("one of: ")
    return str(field.examples[0]) if field.examples else words.partition(",")[0] if is_one_of and not one else ""


@cache
def _regions() -> tuple[str, ...]:
    placed = read_yaml_file(TextFolder(CONTENT, [], "content/"), "regions.yaml")
    return tuple(placed.places()) if placed else ()


def shapes_in(annotation: Any) -> Iterator[type[Shape]]:
    """Yield the shapes that may stand within a type."""
    if isclass(annotation) and issubclass(annotation, Shape):
        yield annotation
    for argument in get_args(annotation):
        yield from shapes_in(argument)


def _words(annotation: Any, metadata: tuple[Any, ...] = ()) -> str:
    if hasattr(annotation, "__metadata__"):
        inner, *more = get_args(annotation)
        return _words(inner, (*more, *metadata))
    arguments = [one for one in get_args(annotation) if one is not type(None)]
    origin = get_origin(annotation)
    if origin in (Union, UnionType) and annotation not in _BY_TYPE:
        return " or ".join(dict.fromkeys(_words(one, metadata) for one in arguments))
    parser = next((parser for one in metadata if (parser := parser_of(one))), None)
    if words := getattr(parser, "words", ()):
        return f"one of: {', '.join(words)}"
    if parser is values.find_region:
        return f"one of: {', '.join(_regions())}"
    if parser in _BY_PARSER:
        return _BY_PARSER[parser]
    if origin in (tuple, frozenset):
        return f"a list, each {_inside(arguments[0])}"
    if origin is dict:
        return f"names, each with {_words(arguments[1])}"
    if isclass(annotation) and issubclass(annotation, Shape):
        return _KEYS
    if isclass(annotation) and issubclass(annotation, Enum):
        return f"one of: {', '.join(annotation)}"
    return _BY_TYPE[annotation]


def _inside(annotation: Any) -> str:
    words = _words(annotation)
    return f"with {words}" if words == _KEYS else words
