"""The figures that ship, by name: constants with their values, and the limits that are published for one ingredient."""

from collections.abc import Iterator
from fractions import Fraction

from builder.compose.recipe.card_text import KNOWN
from builder.model.dose.limit import Limit
from builder.model.library import Library
from builder.model.recipe.figure import Figure
from builder.words.fold import fold
from builder.words.percent import percent
from builder.words.plain_number import plain_number


def figure_lines(name: str, library: Library) -> list[str]:
    """Tell a constant by its name: value, unit, source, the place in it, how it is known. Empty where there is none."""
    figure = next((figure for key, figure in library.constants.items() if fold(key) == fold(name)), None)
    return list(_constant(figure)) if figure else []


def limit_lines(name: str, library: Library) -> list[str]:
    """Tell every published limit of an ingredient, or of what a limit is called. Empty where there is none."""
    card = library.ingredients.get(fold(name))
    names = {fold(inci) for inci in card.label_name.inci} if card and card.label_name else set()
    return [
        line
        for limit in library.limits
        if fold(limit.ingredient) == fold(name) or (card and fold(limit.ingredient) == fold(card.name)) or names & set(limit.names)
        for line in _limit(limit)
    ]


def value_of(figure: Figure) -> str:
    """Write the value of a figure with its unit."""
    low = plain_number(figure.low, 6)
    if figure.high is None:
        return f"at least {low} {figure.unit}"
    number = low if figure.low == figure.high else f"{low} to {plain_number(figure.high, 6)}"
    return number if figure.unit in ("count", "1") else f"{number} {figure.unit}"


def _constant(figure: Figure) -> Iterator[str]:
    yield value_of(figure)
    yield f"Source: {figure.source.title}; {figure.at}."
    yield f"How it is known: {KNOWN[figure.known]}."
    if figure.note:
        yield f"Note: {figure.note}"


def _limit(limit: Limit) -> Iterator[str]:
    yield f"- {_most(limit.most)} of the {limit.percent_of.value}, {_where(limit)} ({limit.region}; {limit.weight.value})"
    yield f"  {limit.source.title}; {limit.at}. {KNOWN[limit.known]}."


def _most(most: Fraction | None) -> str:
    if most is None:
        return "no most is set"
    return "banned: nothing" if most == 0 else f"at most {percent(most)}"


def _where(limit: Limit) -> str:
    told = limit.narrower or ", ".join(limit.products) or limit.product_type or ", ".join(limit.contact)
    return f"in {told}" if told else "in any product"
