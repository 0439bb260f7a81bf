"""The starters that ship: for each kind of product a recipe and a class, and for each region what a new studio begins with."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any

from builder.library import CONTENT
from builder.model.recipe.product import Product
from builder.read.text.file_names import plain_name
from builder.read.text.text_files import TextFolder
from builder.read.yaml.placed_yaml import read_yaml_file
from builder.words.fold import fold

_FOLDER = CONTENT / "starters"
OWN_KIND = "own kind"  # The class of a kind of the studio's own, of which nobody here knows how it is made.
STUDIO, RECIPE, CLASS, LESSON = "studio.yaml", "recipe.yaml", "class.yaml", "lesson.md"


@dataclass(frozen=True)
class RegionStart:
    """What a new studio of a region begins with. `address` is one to put the studio's own in place of."""

    currency: str
    paper: str
    emergency: str
    in_ounces: bool
    in_american: bool
    address: tuple[str, ...]


@dataclass(frozen=True)
class ScaleStart:
    """A scale as `studio.yaml` has it."""

    name: str
    reads_to: str
    up_to: str


@dataclass(frozen=True)
class CardStart:
    """What a new card says of a kind of ingredient."""

    counts_as: str
    mixes_with: str
    declared_as: str
    hazards: tuple[str, ...]


def text_of(*names: str) -> str:
    """Return the text of a file of starters."""
    return _FOLDER.joinpath(*names).read_text(encoding="utf-8")


def has_starter(product: str) -> bool:
    """Tell whether a kind of product has a starter."""
    return (_FOLDER / plain_name(product)).is_dir()


def starter_of(product: Product) -> str | None:
    """Return the kind whose starter serves for a kind of product: itself, or the first that a kind of the studio's own is like."""
    return next((name for name in (product.name, *product.like) if has_starter(name)), None)


def region_start(region: str) -> RegionStart:
    """Return what a studio of a region begins with; of a region without an entry, what the first one has."""
    told = _data("regions.yaml")
    one = told.get(region) or next(iter(told.values()))
    return RegionStart(
        one["currency"], one["paper"], one["emergency"], one["units"] == "ounces", one["spelling"] == "American", tuple(one["address"])
    )


def other_words_for_regions() -> dict[str, str]:
    """Return the regions by other words for them, folded: the names of countries, and how people shorten them."""
    return {fold(word): region for region, one in _data("regions.yaml").items() for word in one.get("also called", ())}


def usual_scales(where: str) -> tuple[ScaleStart, ...]:
    """Return the scales that a studio is taken to have (`grams`, `ounces`), or its students (`at home`)."""
    return tuple(ScaleStart(one["name"], one["reads to"], one["up to"]) for one in _data("scales.yaml")[where]["scales"])


def card_start(kind: str) -> CardStart:
    """Return what a card of a kind of ingredient begins with. Raises KeyError for a kind of which no card begins as a guess."""
    one = _data("cards.yaml")[kind]
    return CardStart(one["counts as"], one["mixes with"], one.get("declared as", ""), tuple(one.get("hazards", ())))


def card_kinds() -> tuple[str, ...]:
    """Return the kinds of ingredient of which a card can be begun."""
    return tuple(_data("cards.yaml"))


@cache
def _data(name: str) -> Mapping[str, Any]:
    placed = read_yaml_file(TextFolder(_FOLDER, [], "starters/"), name)
    assert placed and isinstance(placed.data, dict)
    return placed.data
