"""lye-too-much, lye-range-below-zero: a column of weighings that leaves lye in the soap, or may."""

from collections.abc import Iterator
from fractions import Fraction

from builder.check.batches import Batch, BatchFinding
from builder.model.batch_sheet import Column, LyeResult, Role, Weighed
from builder.model.plain_number import plain_number
from builder.model.recipe import LyePlan


def find_too_much_lye(batch: Batch) -> Iterator[BatchFinding]:
    """Look at the superfat of every column as it will be weighed: each column is a weighing of its own."""
    plan = batch.sheet.recipe.lye
    for column in batch.sheet.columns:
        if plan is None or column.lye is None:
            continue
        if column.lye.superfat < 0:
            yield _too_much(batch, plan, column, column.lye)
        elif column.lye.lowest < 0:
            yield _may_be_too_much(batch, plan, column, column.lye)


def _too_much(batch: Batch, plan: LyePlan, column: Column, lye: LyeResult) -> BatchFinding:
    return batch.stop(
        "lye-too-much",
        plan.at("superfat"),
        "There is more lye than the fats can take up. The soap would burn the skin, and no curing takes it away.",
        f"{_bigger_batch(batch)}, {_finer_scale(column)}, or raise the superfat.",
        f"{batch.weighed_in(column.unit)} (the superfat comes to {_percent(lye.superfat)})",
    )


def _may_be_too_much(batch: Batch, plan: LyePlan, column: Column, lye: LyeResult) -> BatchFinding:
    cause = lye.causes[0] if lye.causes else None
    if cause is None or lye.by_scales >= cause.takes:
        remedy = f"The scales take the most of it. {_bigger_batch(batch)}, weigh on a finer scale, or raise the superfat."
    else:
        remedy = (
            f"The range of {cause.ingredient} takes the most of it. Raise the superfat, or enter the figure of your supplier's certificate "
            "on a card in shelf/ingredients/: a single value has no range. A bigger batch and a finer scale help a little."
        )
    return batch.caution(
        "lye-range-below-zero",
        plan.at("superfat"),
        "With the fats, the lye and the scales at the worst ends of their ranges the superfat could come out below zero, "
        "and lye would be left in the soap.",
        remedy,
        f"{batch.weighed_in(column.unit)} ({_percent(lye.superfat)}, at the worst {_percent(lye.lowest)})",
    )


def _bigger_batch(batch: Batch) -> str:
    smallest = batch.sheet.smallest
    bigger = smallest is not None and smallest > batch.sheet.grams.total
    return f"Make a batch of {plain_number(smallest.grams)} g or more" if smallest and bigger else "Make a bigger batch"


def _finer_scale(column: Column) -> str:
    """Name the fat of which rounding takes the most: lye is rounded down, so what is missing is fat."""
    fats = [weighed for weighed in column.weighed if weighed.line.role is Role.OIL]
    most = max(fats, key=_lost)
    division = plain_number(most.scale.division.grams / most.scale.grams_per_unit)
    return f"weigh {most.line.name} on a scale that reads finer than {division} {column.unit}"


def _lost(weighed: Weighed) -> Fraction:
    return weighed.line.exact.grams - weighed.mass.grams


def _percent(fraction: Fraction) -> str:
    return f"{plain_number(fraction * 100, 3)} %"
