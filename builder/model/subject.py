"""What a finding is about, and a stop holds back: the whole studio, or one thing in it."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime


@dataclass(frozen=True)
class WholeStudio:
    """Everything that the studio publishes."""


@dataclass(frozen=True)
class WholeClass:
    """A class with all its documents, by its key."""

    key: str


@dataclass(frozen=True)
class OneDate:
    """One date of a class: its sheets, its labels, and the date on the class page."""

    class_key: str
    on: datetime


@dataclass(frozen=True)
class WholeRecipe:
    """A recipe, by its key: every batch of it, and with it every class that makes it."""

    key: str


@dataclass(frozen=True)
class HomeSheet:
    """The take-home sheet of one recipe of a class at one size, as the studio wrote the size."""

    class_key: str
    recipe: str
    size: str


@dataclass(frozen=True)
class Labels:
    """What labels of a recipe say. `class_key` is the class in which they say so; empty where it is all that make it."""

    recipe: str
    class_key: str = ""


@dataclass(frozen=True)
class UnusedCard:
    """A card of the studio's shelf that no recipe names, by its file."""

    file: str


@dataclass(frozen=True)
class TextPage:
    """A page of text of the site, by its key."""

    key: str


@dataclass(frozen=True)
class ShoppingList:
    """The list of what to buy for all dates."""


Subject = WholeStudio | WholeClass | OneDate | WholeRecipe | HomeSheet | Labels | UnusedCard | TextPage | ShoppingList


def wholes_of(subject: Subject) -> Iterator[Subject]:
    """Yield all that a subject is part of, itself first."""
    yield subject
    match subject:
        case OneDate(class_key):
            yield WholeClass(class_key)
        case HomeSheet(class_key, recipe):
            yield from (WholeClass(class_key), WholeRecipe(recipe))
        case Labels(recipe, class_key):
            yield from (WholeClass(class_key), Labels(recipe), WholeRecipe(recipe)) if class_key else (WholeRecipe(recipe),)
    if subject != WholeStudio():
        yield WholeStudio()
