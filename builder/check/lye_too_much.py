"""lye-too-much, lye-range-below-zero: a column of weighings that leaves lye in the soap, or may."""

from collections.abc import Iterator
from fractions import Fraction

from builder.check.batches import Batch
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
                f"of their ranges it could be {_percent(column.lye.lowest)}.",
                "Raise the superfat, use the saponification values and the purity of your supplier's certificates, weigh on a finer scale, "
                "or make a bigger batch.",
                about=batch.about,
            )
