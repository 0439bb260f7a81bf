"""The words in which a finding names the basis of a figure, and a range of it."""

from builder.model.recipe.figure import Figure, Known, Source
from builder.model.recipe.ingredient import Ingredient
from builder.words.plain_number import plain_number
from builder.words.within import within

DEFER = "Your supplier's documents and local rules come first."


def basis(source: Source, at: str, known: Known) -> str:
    """Say where something stands, or that it is common practice, and that it must be looked up where it is known from memory."""
    if source.kind == "practice":
        return f"common practice, no source: {at}"
    memory = "; from memory, to be looked up again" if known is Known.MEMORY else ""
    return f"{source.title}, {at}{memory}"


def basis_of(figure: Figure) -> str:
    """Say where a figure stands."""
    return basis(figure.source, figure.at, figure.known)


def range_of(figure: Figure, unit: str) -> str:
    """Give a figure from its low to its high end."""
    low, high = plain_number(figure.low), plain_number(figure.highest)
    numbers = low if low == high else f"{low} to {high}"
    return f"{numbers} {unit}".strip()


def inside(card: Ingredient) -> str:
    """Give a card's name as it stands inside a sentence."""
    return within(card.name)


def listed(cards: list[str]) -> str:
    """Give names in a row."""
    names = list(dict.fromkeys(cards))
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"
