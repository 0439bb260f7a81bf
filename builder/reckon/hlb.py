"""The oil phase of an emulsion: the HLB that it requires, the HLB of its emulsifiers, and how two of them make the one that is wanted.

After Griffin (Journal of the Society of Cosmetic Chemists, 1949 and 1954, from memory): required HLB = sum of (share of the oil phase times
the required HLB of the oil); the HLB of a mixture is the sum of (share by weight times HLB). It holds for non-ionic emulsifiers alone.
"""

from collections.abc import Sequence
from fractions import Fraction

from builder.model.batch_sheet import Emulsion, Given, Line, Working
from builder.model.figure import Figure, Known
from builder.model.ingredient import CountsAs

REQUIRED, HAS = "required HLB", "HLB"
Part = tuple[Fraction, Figure | None]


def mixture_of(parts: Sequence[Part]) -> Fraction | None:
    """Give the weighted middle of some figures; None where one of them is not known, for a guess would stand in for it."""
    whole = sum((share for share, _ in parts), Fraction(0))
    if not whole or any(figure is None for _, figure in parts):
        return None
    return sum((share / whole * figure.typical for share, figure in parts if figure), Fraction(0))


def share_of_high(wanted: Fraction, high: Fraction, low: Fraction) -> Fraction | None:
    """Give the share of the emulsifier of high HLB in a pair that comes to what is wanted; None where no share does."""
    return (wanted - low) / (high - low) if low <= wanted <= high and low < high else None


def reckon_emulsion(lines: Sequence[Line]) -> Emulsion | None:
    """Work out the emulsion of a batch; None where water and oil do not meet, or where the batch is soap or rests on a ready-made base."""
    cards = [line.ingredient for line in lines]
    watery = any(card.counts_as in (CountsAs.WATER, CountsAs.LIQUID) for card in cards)
    oils = [line for line in lines if _is_oil(line)]
    other = any(card.counts_as in (CountsAs.ALKALI, CountsAs.BASE) for card in cards)
    if not (watery and any(line.ingredient.counts_as.is_oil for line in oils)) or other:
        return None
    emulsifiers = [line for line in lines if line.ingredient.kind == "emulsifier"]
    pair = sorted(emulsifiers, key=lambda line: _hlb(line) or Fraction(0), reverse=True)
    required = mixture_of([(line.share, line.ingredient.figure(REQUIRED)) for line in oils])
    has = mixture_of([(line.share, line.ingredient.figure(HAS)) for line in emulsifiers])
    blend = None
    if len(pair) == 2 and required is not None and has is not None:
        blend = share_of_high(required, _hlb(pair[0]) or Fraction(0), _hlb(pair[1]) or Fraction(0))
    return Emulsion(
        oils=tuple(line.ingredient for line in oils),
        emulsifiers=tuple(line.ingredient for line in pair),
        oil_share=sum((line.share for line in oils), Fraction(0)),
        required=required,
        has=has,
        share_of_first=blend,
        workings=(*_working(REQUIRED, oils, required), *_working(HAS, emulsifiers, has)),
    )


def _is_oil(line: Line) -> bool:
    """Say whether a line is of the oil phase: fats, waxes, fatty acids, and the fatty alcohols of which a required HLB is known."""
    card = line.ingredient
    return card.counts_as.is_oil or (card.kind != "emulsifier" and card.figure(REQUIRED) is not None)


def _hlb(line: Line) -> Fraction | None:
    figure = line.ingredient.figure(HAS)
    return figure.typical if figure else None


def _working(name: str, lines: Sequence[Line], result: Fraction | None) -> tuple[Working, ...]:
    if result is None:
        return ()
    whole = sum((line.share for line in lines), Fraction(0))
    given: list[Given] = []
    for line in lines:
        figure = line.ingredient.figure(name)
        if figure:
            given.append(Given(f"share of {line.ingredient.name}", line.share / whole, "of 1"))
            memory = ", from memory" if figure.known is Known.MEMORY else ""
            given.append(Given(name, figure.typical, "", f"{figure.source.title}, {figure.at}{memory}"))
    of = "the oil phase" if name == REQUIRED else "the emulsifiers"
    return (Working(f"{name} of a mixture", of, tuple(given), result, ""),)
