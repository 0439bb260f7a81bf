"""The words in which a finding names the basis of a figure, and a range of it."""

from builder.model.recipe.figure import Figure
from builder.model.recipe.ingredient import Ingredient
from builder.words.plain_number import plain_number
from builder.words.within import within

DEFER = "Your supplier's documents and local rules come first."


def range_of(figure: Figure, unit: str) -> str:
    """Return a figure from its low to its high end."""
    low, high = plain_number(figure.low), plain_number(figure.highest)
    numbers = low if low == high else f"{low} to {high}"
    return f"{numbers} {unit}".strip()


def inside(card: Ingredient) -> str:
    """Return a card's name as it stands inside a sentence."""
    return within(card.name)
