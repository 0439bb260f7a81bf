"""Whether the preservatives of a product cover it whole, work beside the other ingredients, and meet any water at all.

Decided: nonionic emulsifiers that weaken a preservative are no finding, nor is water in bath salts by itself. Why: no source gives an
amount from which it matters; what a supplier states allows for it.
"""

from collections.abc import Iterator
from fractions import Fraction

from builder.check.figure_words import DEFER, inside
from builder.check.formula.formulas import FormulaPart, Formulation, formulas_of
from builder.check.formula.usual_ph import usual_ph_of
from builder.check.keeping.preservatives import is_enough, is_preservative, uncovered, why_not
from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.recipe.ingredient import WATERY, CountsAs, Ingredient
from builder.model.studio import Studio
from builder.rules.basis import basis
from builder.words.listed import listed_once
from builder.words.plain_number import plain_number

MOST_NAMED = 3
_GROWS = {"bacteria": "bacteria", "fungi": "yeast and mould"}


@rule_on(
    STUDIO,
    FindingKind("preservative-without-water", CAUTION, "A preservative is in a product without water, where it does nothing."),
    FindingKind(
        "preservative-unknown", CAUTION, "The card of a preservative does not say what it works against, how much is usual, or at which pH."
    ),
    FindingKind("preservation-in-part", CAUTION, "The preservative holds back bacteria or fungi, and not both."),
    FindingKind("preservative-inactivated", CAUTION, "Something in the product takes the preservative its effect."),
)
def find_preservatives_that_do_not_fit(studio: Studio) -> Iterator[Finding]:
    """Look at the preservatives of each recipe, and at what stands beside them."""
    for formula in formulas_of(studio):
        found = formula.of_kind("preservative")
        if not found:
            continue
        if not _meets_water(formula):
            yield _without_water(formula, found[0])
            continue
        known = tuple(part for part in found if not why_not(part.card))
        # Where none of them is known, the product counts as one without a preservative, which is a finding of its own.
        if known or formula.with_lye or formula.first(*WATERY) is None:
            yield from (_unknown(part) for part in found if why_not(part.card))
        if known == found and formula.first(CountsAs.BASE) is None:
            yield from _in_part(formula, known, studio)
        for part in found:
            yield from _inactivated(formula, part)


def _meets_water(formula: Formulation) -> bool:
    watery = formula.first(*WATERY, CountsAs.BASE) or formula.with_lye
    return bool(watery) or formula.product.meets_water


def _without_water(formula: Formulation, part: FormulaPart) -> Finding:
    return caution(
        "preservative-without-water",
        part.place,
        f"{formula.recipe.name} holds no water, and {inside(part.card)} is meant for what does: microbes grow in water alone, and free of "
        "water is one of the criteria of a product of low risk (ISO 29621:2017). In oil or powder it does nothing, and lies there as a "
        "neat irritant.",
        "Leave it out, and keep wet hands and steam out of the jar; or accept this and say how water gets in.",
    )


def _unknown(part: FormulaPart) -> Finding:
    return caution(
        "preservative-unknown",
        part.place,
        f"Whether {part.card.name} preserves is not known: {why_not(part.card)}. It does not count against bacteria, yeast and mould.",
        "Copy to the card what the supplier states: `preserves: "
        "{covers: [bacteria, fungi], alone: yes, source: ..., at: ..., known: supplier}`, and the figures `usual amount` and `pH window`.",
    )


def _in_part(formula: Formulation, found: tuple[FormulaPart, ...], studio: Studio) -> Iterator[Finding]:
    cards = [part.card for part in found]
    if is_enough(cards):
        return
    missing = [_GROWS[microbe] for microbe in uncovered(cards)]
    part, preserves = next((part, part.card.preserves) for part in found if part.card.preserves)
    what = f"leaves {listed_once(missing)} free to grow" if missing else "is a part of a system and too weak alone"
    names = listed_once([one.card.name for one in found])
    yield caution(
        "preservation-in-part",
        part.place,
        f"{names} {what} ({basis(preserves.source, preserves.at, preserves.known)}). What holds water needs both bacteria and fungi held "
        "back, and only a challenge test proves that they are (ISO 11930).",
        f"Add a partner that covers the rest, or use a broad system{_such_as(formula, missing, studio)}. {DEFER}",
    )


def _such_as(formula: Formulation, missing: list[str], studio: Studio) -> str:
    """Name what would do at the pH of the product, as it was measured or else as such a product usually has it."""
    found, ph = usual_ph_of(formula, studio), formula.recipe.ph
    ends = (ph.low, ph.high) if ph else (found[1].low, found[1].highest) if found else None
    cards = {card.key: card for card in studio.ingredients.values() if is_preservative(card) and card.key not in _keys(formula)}
    fit = [card for card in cards.values() if _covers(card, missing) and (ends is None or _works(card, *ends))]
    # What is only a part of a system is a partner, and comes before what does all by itself.
    names = [inside(card) for card in sorted(fit, key=lambda card: (card.preserves is not None and card.preserves.alone, card.name))]
    if not names:
        return ""
    at = f" at pH {plain_number(ends[0])} to {plain_number(ends[1])}" if ends else ""
    return f"; of those known here that work{at}: {', '.join(names[:MOST_NAMED])}"


def _keys(formula: Formulation) -> set[str]:
    return {part.card.key for part in formula.all}


def _covers(card: Ingredient, missing: list[str]) -> bool:
    covers = [_GROWS[microbe] for microbe in card.preserves.covers] if card.preserves else []
    return all(one in covers for one in missing)


def _works(card: Ingredient, low: Fraction, high: Fraction) -> bool:
    window = card.figure("pH window")
    return window is not None and window.low <= low and high <= window.highest


def _inactivated(formula: Formulation, part: FormulaPart) -> Iterator[Finding]:
    preserves = part.card.preserves
    if preserves is None:
        return
    against = next((one for one in formula.all if one.card.charge and one.card.charge in preserves.fails_with), None)
    if against:
        yield caution(
            "preservative-inactivated",
            part.place,
            f"{part.card.name} does not go with what is {against.card.charge}, and {inside(against.card)} is "
            f"({basis(preserves.source, preserves.at, preserves.known)}). The two bind each other, and the product is not preserved.",
            f"Choose another preservative or another emulsifier. {DEFER}",
        )
