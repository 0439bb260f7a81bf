"""Equivalents: how much alkali fats and acids take up, and how much hydroxide an alkali brings.

Definitions: saponification value SV in mg of KOH per g of fat (ISO 3657); equivalents in mol,
    fat E_f = sum(m * SV / 1000) / M(KOH);  acid E_a = sum(m * purity * protons / M);  alkali E_b = sum(m * purity / M).
"""

from fractions import Fraction
from typing import Literal

from builder.model.recipe.figure import Figure
from builder.model.recipe.ingredient import CountsAs, Ingredient
from builder.model.recipe.quantity import Mass

End = Literal["low", "typical", "high"]
OTHER_END: dict[End, End] = {"low": "high", "typical": "typical", "high": "low"}


def figure_of(card: Ingredient, name: str) -> Figure:
    """Return a figure that a check has made sure of."""
    figure = card.figure(name)
    assert figure is not None, f"{card.name} has no {name}: a check should have held it back"
    return figure


def at_end(figure: Figure, end: End) -> Fraction:
    """Return a figure at one end of its range, or its typical value."""
    return figure.typical if end == "typical" else figure.low if end == "low" else figure.highest


def molar_mass(card: Ingredient) -> Fraction:
    """Return the molar mass of an alkali or acid in g/mol."""
    return figure_of(card, "molar mass").typical


def fat_equivalents(mass: Mass, card: Ingredient, koh: Fraction, end: End = "typical") -> Fraction:
    """Return the mol of alkali that a fat, wax or fatty acid takes up. `koh` is the molar mass of KOH in g/mol."""
    return mass.grams * at_end(figure_of(card, "saponification"), end) / 1000 / koh


def acid_equivalents(mass: Mass, card: Ingredient, end: End = "typical") -> Fraction:
    """Return the mol of alkali that an acid takes up: mass by assay, times its protons."""
    strength = min(at_end(figure_of(card, "purity"), end) / 100, Fraction(1))
    return mass.grams * strength * figure_of(card, "protons").typical / molar_mass(card)


def water_in(card: Ingredient) -> Fraction:
    """Return the share of an ingredient that is water: all of pure water, the card's figure for a milk, a juice or an acid, else none."""
    figure = card.figure("water content")
    if figure is not None:
        return min(figure.typical / 100, Fraction(1))
    return Fraction(1) if card.counts_as is CountsAs.WATER else Fraction(0)
