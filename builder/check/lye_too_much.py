"""lye-too-much, lye-range-below-zero: a column of weighings that leaves lye in the soap, or may."""

from collections.abc import Iterator
from fractions import Fraction

from builder.check.batches import Batch
from builder.model.batch_sheet import LyeResult
from builder.model.finding import Finding, caution, stop


def _percent(fraction: Fraction) -> str:
    return f"{float(fraction * 100):.2f} %"


def find_too_much_lye(batch: Batch) -> Iterator[Finding]:
    """Look at the superfat of every column as it will be weighed: each column is a weighing of its own."""
    plan = batch.sheet.recipe.lye
    for column in batch.sheet.columns:
        if plan is None or column.lye is None:
            continue
        of = f"{batch.what}, weighed in {column.unit}"
        if column.lye.superfat < 0:
            yield stop(
                "lye-too-much",
                plan.superfat_place,
                f"{of}: the superfat comes to {_percent(column.lye.superfat)}. There is more lye than the fats can take up; "
                "the soap would burn the skin, and no curing takes it away.",
                "Raise the superfat, weigh the lye on a finer scale, or make a bigger batch.",
                about=batch.about,
            )
        elif column.lye.lowest < 0:
            yield caution(
                "lye-range-below-zero",
                plan.superfat_place,
                f"{of}: the superfat is {_percent(column.lye.superfat)}, but with the fats, the lye and the scales at the worst ends "
                f"of their ranges it could be {_percent(column.lye.lowest)}. {_main_cause(column.lye)}",
                _narrower(column.lye, batch),
                about=batch.about,
            )


def _main_cause(lye: LyeResult) -> str:
    """Say which range takes most of the superfat."""
    cause = lye.causes[0] if lye.causes else None
    if cause is None or lye.by_scales >= cause.takes:
        return f"The scales alone take up to {_percent(lye.by_scales)} of it."
    return f"The range of {cause.ingredient} alone takes up to {_percent(cause.takes)} of it."


def _narrower(lye: LyeResult, batch: Batch) -> str:
    """Say what narrows that range."""
    cause = lye.causes[0] if lye.causes else None
    if cause is None or lye.by_scales >= cause.takes:
        smallest = batch.sheet.smallest
        size = f" of {float(smallest.grams):g} g or more" if smallest else ""
        return f"Make a batch{size}, weigh on a finer scale, or raise the superfat."
    return (
        f"Raise the superfat, or enter the figure of your supplier's certificate for {cause.ingredient} on a card in shelf/ingredients/: "
        "a single value has no range. A bigger batch and a finer scale help a little."
    )
