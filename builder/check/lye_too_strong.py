"""water-below-zero, lye-too-strong, lye-water-unusual: lye with too much water, too little, or more or less than is usual."""

from collections.abc import Iterator

from builder.check.batches import Batch
from builder.model.finding import Finding, caution, stop
from builder.model.quantity import NO_MASS


def find_too_strong_lye(batch: Batch) -> Iterator[Finding]:
    """Look at the concentration of the lye in its water, as weighed in grams."""
    plan, column = batch.sheet.recipe.lye, batch.sheet.grams
    if plan is None:
        return
    if column.lye_water < NO_MASS:
        yield stop(
            "water-below-zero",
            plan.water.place,
            f"{batch.what}: the ready-mixed lye alone brings more water than the recipe asks for.",
            "Ask for a weaker lye, or use a stronger ready-mixed solution.",
            about=batch.about,
        )
        return
    if column.lye is None:
        return
    ceiling, usual = batch.constants["strongest lye from solid"], batch.constants["usual lye concentration"]
    strength = column.lye.in_water * 100
    if strength > ceiling.typical and plan.ready_mixed is None:
        yield stop(
            "lye-too-strong",
            plan.water.place,
            f"{batch.what}: a lye of {float(strength):.1f} % does not dissolve at room temperature "
            f"({ceiling.source.title}, {ceiling.at}): solid lye stays behind and ends up in the soap.",
            f"Use more water: a lye concentration of at most {float(ceiling.typical):g} %. "
            f"{float(usual.low):g} % to {float(usual.highest):g} % is usual (common practice, no source).",
            about=batch.about,
        )
    elif not usual.low <= strength <= usual.highest:
        yield caution(
            "lye-water-unusual",
            plan.water.place,
            f"{batch.what}: the lye comes to {float(strength):.1f} %. {usual.at[0].upper()}{usual.at[1:]}.",
            f"{float(usual.low):g} % to {float(usual.highest):g} % is usual (common practice, no source). "
            "Change the water, or accept this finding with your reason.",
            about=batch.about,
        )
