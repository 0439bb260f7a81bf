"""added-too-hot, heated-to-flash-point: what stands in a phase, or is stirred into a portion, that is hotter than it bears."""

from collections.abc import Iterator

from builder.check.figure_words import DEFER, basis_of, inside, range_of
from builder.check.formulas import Formula, formulas_of
from builder.model.finding import Finding, caution, stop
from builder.model.plain_number import plain_number
from builder.model.studio import Studio


def find_what_is_heated_too_far(studio: Studio) -> Iterator[Finding]:
    """Compare the heat of each phase with what its ingredients bear. A phase without `heat to:` is taken to be cool."""
    for formula in formulas_of(studio):
        yield from _choices_too_hot(formula)
        for part in formula.parts:
            if part.phase is None or part.phase.heat_to is None:
                continue
            heat = part.phase.heat_to.celsius
            flash, bears = part.card.figure("flash point"), part.card.figure("add below")
            if flash and heat >= flash.low:
                yield stop(
                    "heated-to-flash-point",
                    part.place,
                    f"The phase “{part.phase.name}” is heated to {plain_number(heat)} °C, and the vapour of {inside(part.card)} catches "
                    f"fire at a spark from {range_of(flash, '°C')} on ({basis_of(flash)}).",
                    f"Put it into a phase of its own that is added off the heat, well below that. {DEFER}",
                    acceptable=True,
                )
            elif bears and heat > bears.highest:
                yield caution(
                    "added-too-hot",
                    part.place,
                    f"The phase “{part.phase.name}” is heated to {plain_number(heat)} °C, and {inside(part.card)} is added below "
                    f"{range_of(bears, '°C')} ({basis_of(bears)}): above it, it evaporates or breaks down, and less is left than the "
                    "label says.",
                    f"Put it into a phase of its own without `heat to:`, and stir that in once the rest has cooled. {DEFER}",
                )


def _choices_too_hot(formula: Formula) -> Iterator[Finding]:
    """Look for choices that burn, where no phase is cool, so that a portion may be as hot as the coolest of them."""
    heats = [phase.heat_to for phase in formula.recipe.phases]
    coolest = min((heat.celsius for heat in heats if heat), default=None)
    if coolest is None or None in heats:
        return
    for option in formula.options:
        flash = option.card.figure("flash point")
        if flash and coolest >= flash.low:
            yield caution(
                "heated-to-flash-point",
                option.place,
                f"Students may stir {inside(option.card)} into {formula.recipe.name}, of which every phase is heated, to "
                f"{plain_number(coolest)} °C at the least, and its vapour catches fire at a spark from {range_of(flash, '°C')} on "
                f"({basis_of(flash)}).",
                "Offer something else, or let each portion cool below that first. Where it sets before it is so cool, keep every flame, "
                f"spark and hot plate out of the room while it is stirred in, and accept this. {DEFER}",
            )
