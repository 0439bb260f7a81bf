"""lye-too-strong, water-below-zero: lye that cannot dissolve, or a ready-mixed lye that brings more water than is wanted."""

from collections.abc import Iterator

from builder.check.batches import Batch
from builder.model.finding import Finding, stop
from builder.model.quantity import NO_MASS


def find_too_strong_lye(batch: Batch) -> Iterator[Finding]:
    """Look at the concentration of the lye by weight as weighed."""
    plan, lye = batch.sheet.recipe.lye, batch.sheet.grams.lye
    if plan is None or lye is None:
        return
    ceiling = batch.constants["strongest lye from solid"]
    if batch.sheet.grams.lye_water < NO_MASS:
        yield stop(
            "water-below-zero",
            plan.water.place,
            f"{batch.what}: the ready-mixed lye alone brings more water than the recipe asks for.",
            "Ask for a weaker lye, or use a stronger ready-mixed solution.",
            about=batch.about,
        )
    elif lye.concentration > ceiling.typical / 100 and plan.ready_mixed is None:
        yield stop(
            "lye-too-strong",
            plan.water.place,
            f"{batch.what}: a lye of {float(lye.concentration * 100):.1f} % does not dissolve at room temperature "
            f"({ceiling.source.title}, {ceiling.at}): solid lye stays behind and ends up in the soap.",
            f"Use more water: a lye concentration of at most {float(ceiling.typical):g} %. "
            "25 % to 40 % is usual (common practice, no source).",
            about=batch.about,
        )
