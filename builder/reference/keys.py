"""A shape becomes sections of keys: its own first, then those of each shape that stands within it, once."""

from collections import deque
from dataclasses import dataclass
from enum import StrEnum

from pydantic.fields import FieldInfo

from builder.read.shapes.fields import parser_of
from builder.read.shapes.shape import Shape
from builder.reference.descriptions import about_field, about_shape
from builder.reference.value_words import example_of, shapes_in, value_words


@dataclass(frozen=True)
class Key:
    """One key: what may stand after it, what it means, an example, and what holds without it where that is a plain word."""

    name: str
    value: str
    is_needed: bool
    about: str
    example: str
    default: str


@dataclass(frozen=True)
class Section:
    """The keys of one shape, and the keys under which the shape stands (none for the file itself)."""

    shape: type[Shape]
    about: str
    under: tuple[str, ...]
    keys: tuple[Key, ...]


def sections_of(*shapes: type[Shape]) -> tuple[Section, ...]:
    """Return the sections of the shapes of a file, each shape once, those within after those around."""
    under: dict[type[Shape], list[str]] = {shape: [] for shape in shapes}
    waiting = deque(shapes)
    while waiting:
        for field in waiting.popleft().model_fields.values():
            for inner in shapes_in(field.annotation):
                if inner not in under:
                    waiting.append(inner)
                under.setdefault(inner, []).append(str(field.alias))
    return tuple(
        Section(shape, about_shape(shape), tuple(dict.fromkeys(keys)), tuple(_key(shape, *one) for one in shape.model_fields.items()))
        for shape, keys in under.items()
    )


def _key(shape: type[Shape], name: str, field: FieldInfo) -> Key:
    shown = example_of(field) if field.examples or field.is_required() else ""
    example = f"{field.alias}: {shown}" if shown else ""
    return Key(str(field.alias), value_words(field), field.is_required(), about_field(shape, name), example, _plain(field))


def _plain(field: FieldInfo) -> str:
    """Return a default that can be said in a word; empty for any other."""
    match default := field.default:
        case bool():
            parser = next(map(parser_of, field.metadata), None)
            return str(getattr(parser, "words", ("yes", "no"))[not default])
        case StrEnum() | int():
            return str(default)
        case str():
            return default
        case _:
            return ""
