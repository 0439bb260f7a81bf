"""Whether the preservatives of a product cover it whole, work beside the other ingredients, and meet any water at all.

preservation-in-part, preservative-inactivated, preservative-without-water, preservative-unknown.
"""

from collections.abc import Iterator

from builder.check.figure_words import DEFER, basis, inside, listed
from builder.check.formulas import WATERY, Formula, Part, formulas_of
from builder.model.finding import Finding, caution
from builder.model.ingredient import MICROBES, CountsAs
from builder.model.studio import Studio

_GROWS = {"bacteria": "bacteria", "fungi": "yeast and mould"}


def find_preservatives_that_do_not_fit(studio: Studio) -> Iterator[Finding]:
    """Look at the preservatives of each recipe, and at what stands beside them."""
    for formula in formulas_of(studio):
        found = formula.of_kind("preservative")
        if not found:
            continue
        if not _meets_water(formula):
            yield _without_water(formula, found[0])
            continue
        yield from (_unknown(part) for part in found if part.card.preserves is None)
        if all(part.card.preserves for part in found) and formula.first(CountsAs.BASE) is None:
            yield from _in_part(found)
        for part in found:
            yield from _inactivated(formula, part)


def _meets_water(formula: Formula) -> bool:
    watery = formula.first(*WATERY, CountsAs.BASE) or formula.with_lye
    return bool(watery) or formula.product.meets_water


def _without_water(formula: Formula, part: Part) -> Finding:
    return caution(
        "preservative-without-water",
        part.place,
        f"{formula.recipe.name} holds no water, and {inside(part.card)} is meant for what does: microbes grow in water alone, and free of "
        "water is one of the criteria of a product of low risk (ISO 29621:2017). In oil or powder it does nothing, and lies there as a "
        "neat irritant.",
        "Leave it out, and keep wet hands and steam out of the jar; or accept this and say how water gets in.",
    )


def _unknown(part: Part) -> Finding:
    return caution(
        "preservative-unknown",
        part.place,
        f"The card of {part.card.name} does not say what it preserves against, so it is not known whether this product is kept from "
        "bacteria as well as from yeast and mould.",
        "Copy to the card what the supplier states: `preserves: "
        "{covers: [bacteria, fungi], alone: yes, source: ..., at: ..., known: supplier}`, and the figures `usual amount` and `pH window`.",
    )


def _in_part(found: tuple[Part, ...]) -> Iterator[Finding]:
    known = [(part, part.card.preserves) for part in found if part.card.preserves]
    covered = {microbe for _, preserves in known for microbe in preserves.covers}
    missing = [_GROWS[microbe] for microbe in MICROBES if microbe not in covered]
    alone = any(preserves.alone for _, preserves in known) or len({part.card.key for part in found}) > 1
    if not missing and alone:
        return
    part, preserves = known[0]
    what = f"leaves {' and '.join(missing)} free to grow" if missing else "is a part of a system and too weak alone"
    names = listed([one.card.name for one in found])
    yield caution(
        "preservation-in-part",
        part.place,
        f"{names} {what} ({basis(preserves.source, preserves.at, preserves.known)}). What holds water needs both bacteria and fungi held "
        "back, and only a challenge test proves that they are (ISO 11930).",
        f"Add a partner that covers the rest (potassium sorbate and sodium benzoate are such a pair), or use a broad system. {DEFER}",
    )


def _inactivated(formula: Formula, part: Part) -> Iterator[Finding]:
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
