"""Ingredient cards become ingredients, found by every name that they answer to; the studio's own replace those of the library."""

from collections.abc import Iterable, Mapping
from dataclasses import replace

from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.recipe.figure import Figure, Figures
from builder.model.recipe.ingredient import Ingredient
from builder.model.recipe.unread import as_far_as_read
from builder.read.known import NamesKnown
from builder.read.shapes.card import CardShape
from builder.read.shapes.figure import RELATIVE_DENSITY
from builder.read.text.placed_data import PlacedData
from builder.read.yaml.in_part import made_in_part
from builder.words.fold import fold

WATER_DENSITY = "water density at 20 degC"
FINDS = (FindingKind("name-taken-twice", STOP, "Two cards answer to the same name."),)


def read_ingredient(
    placed: PlacedData, known: NamesKnown, constants: Mapping[str, Figure], findings: list[Finding]
) -> tuple[Ingredient | None, bool]:
    """Read one card, and tell whether all of it can be read; None where nothing of it can."""
    card, is_whole = made_in_part(CardShape, placed, findings, known)
    if card is None or not placed.inside("figures", "density").data:
        return card, is_whole
    read = replace(placed, is_whole=is_whole)
    figures = read.part(lambda: {**card.figures, "density": _in_grams_per_millilitre(card.figures["density"], constants)})
    return replace(card, figures=figures), is_whole


def index_ingredients(shipped: Iterable[Ingredient], own: Iterable[Ingredient], findings: list[Finding]) -> dict[str, Ingredient]:
    """Key ingredients by every name they answer to; each name may belong to one card only."""
    shipped = tuple(shipped)
    theirs = {card.key: card for card in shipped}
    own = tuple(replace(card, replaces=theirs.get(card.key)) for card in own)
    replaced = {card.key for card in own}
    index: dict[str, Ingredient] = {}
    for card in (*(card for card in shipped if card.key not in replaced), *own):
        names = (card.name, *card.also_called)
        others = {fold(name): index[fold(name)] for name in names if fold(name) in index}
        for name in names:
            index.setdefault(fold(name), card)
        for key in list(others)[:1]:
            findings.append(_taken_twice(card, key, others[key]))
    return index


def indexed_in_part(
    shipped: Iterable[Ingredient], own: Iterable[Ingredient], in_part: Iterable[Ingredient], findings: list[Finding]
) -> tuple[Ingredient, ...]:
    """Return the cards that can be read in part, each as it would be among the others; one whose names cannot be read is left out."""
    known = []
    for card in in_part:
        found: list[Finding] = []
        with as_far_as_read():
            known.append(index_ingredients(shipped, (*own, card), found)[card.key])
            findings += [one for one in found if one.place.file == card.place.file]
    return tuple(known)


def _taken_twice(card: Ingredient, key: str, other: Ingredient) -> Finding:
    name = other.name if key == other.key else key
    where = "that ships" if other.place.ships else f"in {other.place.file}"
    wrong = f'The card of "{other.name}" {where} answers to "{name}" as well, so a recipe could mean either.'
    return stop("name-taken-twice", card.name_places[key], wrong, "Let only one of the two cards answer to that name.")


def _in_grams_per_millilitre(figures: Figures, constants: Mapping[str, Figure]) -> Figures:
    def converted(figure: Figure) -> Figure:
        if figure.unit != RELATIVE_DENSITY:
            return figure
        water = constants[WATER_DENSITY].typical
        note = "; ".join(part for part in (figure.note, "published as relative density") if part)
        high = None if figure.high is None else figure.high * water
        return replace(figure, low=figure.low * water, high=high, unit="g/mL", note=note)

    return Figures(converted(figures.in_use), tuple(converted(figure) for figure in figures.others))
