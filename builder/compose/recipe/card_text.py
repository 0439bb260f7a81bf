"""An ingredient card as lines of text: every figure with its source, the place in it, and how it is known."""

from collections.abc import Iterator
from dataclasses import dataclass

from builder.compose.recipe.wording import listed, shortest
from builder.model.recipe.figure import Figure, Known
from builder.model.recipe.ingredient import Ingredient, LabelName
from builder.rules.basis import PRACTICE

KNOWN = {
    Known.READ: "read in the source",
    Known.MEMORY: "from memory, not yet checked in the source",
    Known.COMPUTED: "computed",
    Known.PRACTICE: PRACTICE,
    Known.SUPPLIER: "the supplier's own document",
    Known.MEASURED: "measured by the studio",
}


@dataclass(frozen=True)
class CardLine:
    """One line of a card: how far it is indented, its text, and whether it is the figure in use."""

    indent: int
    text: str
    strong: bool = False


def card_lines(card: Ingredient) -> list[CardLine]:
    """Lay out a card."""
    lines = [CardLine(0, card.name, strong=True)]
    if card.also_called:
        lines.append(CardLine(1, f"also called {listed(card.also_called, 'or')}"))
    if card.label_name:
        inci, plain = ", ".join(card.label_name.inci), ", ".join(card.label_name.plain)
        lines.append(CardLine(1, f"on a label: {inci} ({plain}); {KNOWN[card.label_name.known]}"))
        if card.label_name.shares:
            lines.append(CardLine(1, f"made of: {listed(tuple(_shares(card.label_name)))}; {KNOWN[card.label_name.known]}"))
    else:
        lines.append(CardLine(1, "on a label: the supplier's declared list has to be copied to a card of your own"))
    if card.colour_name:
        lines.append(CardLine(1, "as a colour: " + "; ".join(f"{name} ({region.upper()})" for region, name in card.colour_name.items())))
    lines.append(CardLine(1, f"{card.kind}; counts as {card.counts_as}; mixes with {card.mixes_with}"))
    if card.hazards:
        lines.append(CardLine(1, f"hazards: {listed(card.hazards)}"))
    if card.allergens:
        lines.append(CardLine(1, f"allergen families: {listed(card.allergens)}"))
    if card.charge:
        lines.append(CardLine(1, f"charge in water: {card.charge}"))
    if card.preserves:
        alone = "a system of its own" if card.preserves.alone else "a part of a system, to be paired"
        basis = f"{card.preserves.source.title}; {card.preserves.at} [{KNOWN[card.preserves.known]}]"
        lines.append(CardLine(1, f"preserves against {listed(card.preserves.covers)}, {alone}: {basis}"))
    if card.about:
        lines.append(CardLine(1, card.about))
    if card.drop_mass:
        drop = card.drop_mass
        lines.append(CardLine(1, f"one drop: {shortest(drop.one.grams * 1000, 1)} mg ({drop.drops} drops weighed; {drop.measured})"))
    for name, figures in card.figures.items():
        lines.append(CardLine(1, name, strong=True))
        for figure in figures.all:
            lines += _figure(figure, in_use=figure is figures.in_use and len(figures.all) > 1)
    lines.append(CardLine(0, "a card that ships" if card.place.ships else f"from {card.place.file}"))
    return lines


def _shares(label_name: LabelName) -> Iterator[str]:
    for part, (low, high) in sorted(label_name.shares.items()):
        numbers = shortest(low * 100, 2) if low == high else f"{shortest(low * 100, 2)} to {shortest(high * 100, 2)}"
        yield f"{label_name.inci[part]} {numbers} %"


def _figure(figure: Figure, *, in_use: bool) -> list[CardLine]:
    if figure.high is None:
        value = f"at least {shortest(figure.low, 5)}"
    elif figure.low == figure.high:
        value = shortest(figure.low, 5)
    else:
        value = f"{shortest(figure.low, 5)} to {shortest(figure.high, 5)}"
    when = f" at {figure.when}" if figure.when else ""
    by = f"{figure.source.by}, " if figure.source.by else ""
    text = f"{value} {figure.unit}{when}: {by}{figure.source.title}; {figure.at} [{KNOWN[figure.known]}]"
    lines = [CardLine(2, f"{text} (in use)" if in_use else text, strong=in_use)]
    if in_use and figure.because:
        lines.append(CardLine(3, figure.because))
    if figure.note:
        lines.append(CardLine(3, figure.note))
    return lines
