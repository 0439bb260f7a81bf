"""A phase that is hotter or cooler than what stands in it asks for.

Each is judged by the figures of the card: `add below`, `heat at most`, `flash point`, `melting point`. A phase without `heat to:` is
taken to be cool.

Decided: a choice is taken to be stirred in at the heat of the coolest phase, and compared with a flash point alone. Why: a recipe does
not say when students add it; what merely evaporates costs scent, not safety.

Decided: a phase heated to the flash point of what stands in it is a caution, no stop. Why: a flash point asks for a flame, and a phase
knows of none; steps with a flame are read as dangers.
"""

from collections.abc import Iterator

from builder.check.figure_words import DEFER, inside, range_of
from builder.check.formula.formulas import FormulaPart, Formulation, formulas_of
from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.recipe.figure import Figure
from builder.model.recipe.ingredient import WATERY, MixesWith
from builder.model.recipe.quantity import Temperature
from builder.model.recipe.recipe import Phase
from builder.model.studio import Studio
from builder.rules.basis import basis_of
from builder.words.plain_number import plain_number

NEEDED, MARGIN = "hottest that fat needs", "warmer than what melts"
BOILS = "boiling point of water"


@rule_on(
    STUDIO,
    FindingKind("heated-to-flash-point", CAUTION, "A phase is heated to where the vapour of something in it catches fire."),
    FindingKind("heated-too-far", CAUTION, "A phase is heated further than anything in it asks for."),
    FindingKind("not-melted", CAUTION, "A phase is too cool to melt something in it."),
    FindingKind(
        "added-too-hot", CAUTION, "Something that breaks down or evaporates in the heat stands in a phase that is hotter than it bears."
    ),
)
def find_what_is_heated_too_far(studio: Studio) -> Iterator[Finding]:
    """Compare the heat of each phase with what its ingredients bear, and with what melts them."""
    for formula in formulas_of(studio):
        yield from _choices_too_hot(formula)
        for part in formula.parts:
            if part.phase is not None and part.phase.heat_to is not None:
                yield from _part(formula, part, part.phase, part.phase.heat_to)
        for phase in formula.recipe.phases:
            yield from _hotter_than_fat_needs(formula, phase, studio)


def _part(formula: Formulation, part: FormulaPart, phase: Phase, heat_to: Temperature) -> Iterator[Finding]:
    heat, heated = heat_to.celsius, f"The phase “{phase.name}” is heated to {plain_number(heat_to.celsius)} °C"
    flash, bears, most, melts = (part.card.figure(name) for name in ("flash point", "add below", "heat at most", "melting point"))
    if flash and heat >= flash.low and not _is_thinned(formula, part):
        yield caution(
            "heated-to-flash-point",
            part.place,
            f"{heated}, and the vapour of {inside(part.card)} catches fire at a flame or a spark from {range_of(flash, '°C')} on "
            f"({basis_of(flash)}).",
            "Put it into a phase of its own that is added off the heat, well below that. Where it has to be stirred in so hot, keep "
            f"every flame and every open heating element out of the room. {DEFER}",
        )
    elif bears and heat > bears.highest:
        yield caution(
            "added-too-hot",
            part.place,
            f"{heated}, and {inside(part.card)} is added below {range_of(bears, '°C')} ({basis_of(bears)}): above it, it evaporates or "
            "breaks down, and less is left than the label says.",
            f"Put it into a phase of its own without `heat to:`, and stir that in once the rest has cooled. {DEFER}",
        )
    if most and heat > most.highest:
        yield caution(
            "heated-too-far",
            part.place,
            f"{heated}, and {inside(part.card)} bears {plain_number(most.highest)} °C at most ({basis_of(most)}).",
            f"Heat it to no more than that: {_melts_at(melts)}. {DEFER}" if melts else f"Heat it to no more than that. {DEFER}",
        )
    if melts and heat < melts.low:
        sets = " In the pot of a soap it sets again, and what looks like trace is only that." if formula.with_lye else ""
        yield caution(
            "not-melted",
            part.place,
            f"{heated}, and {inside(part.card)} melts at {range_of(melts, '°C')} ({basis_of(melts)}): it stays in grains or "
            f"in lumps.{sets}",
            f"Heat the phase to {plain_number(melts.highest)} °C and a few degrees more, until the last piece is gone, or leave it out.",
        )


def _melts_at(melts: Figure) -> str:
    return f"it melts at {range_of(melts, '°C')}"


def _is_thinned(formula: Formulation, part: FormulaPart) -> bool:
    """Tell whether what flashes mixes with water and stands in a phase with other water: it is thinned there below what burns."""
    others = [one for one in formula.parts if one.phase is part.phase and one.card is not part.card]
    return part.card.mixes_with is MixesWith.WATER and any(one.card.counts_as.is_watery for one in others)


def _hotter_than_fat_needs(formula: Formulation, phase: Phase, studio: Studio) -> Iterator[Finding]:
    """Look for fat and wax that are heated far beyond what melts them, where a water bath hardly reaches and nothing holds them back."""
    if phase.heat_to is None:
        return
    inside_it = [part for part in formula.parts if part.phase is phase]
    fats = [part for part in inside_it if part.card.counts_as.is_oil]
    melting = [melts.highest for part in inside_it if (melts := part.card.figure("melting point"))]
    needed = max([studio.constants[NEEDED].typical, *(high + studio.constants[MARGIN].highest for high in melting)])
    if not fats or phase.heat_to.celsius <= needed:
        return
    basis = basis_of(studio.constants[NEEDED])
    yield caution(
        "heated-too-far",
        phase.name.place,
        f"The phase “{phase.name}” is heated to {plain_number(phase.heat_to.celsius)} °C, and nothing in it asks for more than "
        f"{plain_number(needed)} °C ({basis}). Hot fat burns worse than water, and oils go stale sooner.",
        f"Heat it to {plain_number(needed)} °C at most, in a water bath, which cannot pass {round(studio.constants[BOILS].typical)} °C. "
        f"{DEFER}",
    )


def _choices_too_hot(formula: Formulation) -> Iterator[Finding]:
    """Look for choices that burn, where no phase is cool, so that a portion may be as hot as the coolest of them.

    What holds water is an emulsion, which is portioned cold.
    """
    heats = [phase.heat_to for phase in formula.recipe.phases]
    coolest = min((heat.celsius for heat in heats if heat), default=None)
    if coolest is None or None in heats or formula.first(*WATERY):
        return
    for option in formula.options:
        flash = option.card.figure("flash point")
        if flash and coolest >= flash.low:
            yield caution(
                "heated-to-flash-point",
                option.place,
                f"Students may stir {inside(option.card)} into {formula.recipe.name}, of which every phase is heated, to "
                f"{plain_number(coolest)} °C at the least, and its vapour catches fire at a flame or a spark from "
                f"{range_of(flash, '°C')} on ({basis_of(flash)}).",
                "Offer something else, or let each portion cool below that first. Where it sets before it is so cool, keep every flame, "
                f"spark and hot plate out of the room while it is stirred in, and accept this. {DEFER}",
            )
