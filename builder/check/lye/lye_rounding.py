"""Batches of soap too small for their scales.

Decided: a batch of soap is sensible where rounding cannot move the superfat by more than a point; a home size below that is a stop that a
studio may accept. Why: one rule for what sheets advise and what is offered; a finer scale costs little.
"""

from collections.abc import Iterator
from fractions import Fraction

from builder.check.batches import Batch, BatchFinding
from builder.check.rule import BATCH, rule_on
from builder.model.finding_kind import ACCEPTABLE_STOP, CAUTION, FindingKind
from builder.model.lye.lye_result import LyeResult
from builder.model.recipe.recipe import LyePlan
from builder.model.studio import Scale
from builder.words.percent import percent
from builder.words.plain_number import plain_number

MOST = "most that rounding may move the superfat"


@rule_on(
    BATCH,
    FindingKind("superfat-moved-by-rounding", CAUTION, "The batch is so small that rounding to the scales moves its superfat."),
    FindingKind(
        "home-size-too-small", ACCEPTABLE_STOP, "A batch for home is so small that rounding to the scales moves its superfat too far."
    ),
)
def find_superfat_moved_by_rounding(batch: Batch) -> Iterator[BatchFinding]:
    """Compare the superfat as weighed with the one asked for, and a home size with what the scales at home can weigh."""
    plan = batch.worked.recipe.lye
    most = batch.constants[MOST].typical / 100
    for column in batch.worked.columns:
        if plan is None or column.lye is None:
            continue
        case = batch.weighed_in(column.unit)
        coarsest = max((w.scale for w in column.weighed), key=lambda scale: scale.division)
        if batch.size_place and column.lye.rounding_may_move > most:
            yield _home_size(batch, column.lye, coarsest, case, most)
        elif abs(column.lye.moved_by_rounding) > most:
            yield _moved(batch, plan, column.lye, case, most)


def _moved(batch: Batch, plan: LyePlan, lye: LyeResult, case: str, most: Fraction) -> BatchFinding:
    return batch.caution(
        "superfat-moved-by-rounding",
        plan.at("superfat"),
        f"The batch is so small that rounding to the scales moves the superfat by more than {plain_number(most * 100)} %.",
        f"{_bigger(batch)}, or weigh on a finer scale.",
        f"{case} (asked {percent(lye.asked)}, got {percent(lye.superfat)})",
    )


def _home_size(batch: Batch, lye: LyeResult, coarsest: Scale, case: str, most: Fraction) -> BatchFinding:
    """Nobody is hurt by a superfat that is printed as it is, so that a studio may accept it."""
    assert batch.size_place is not None
    return batch.stop(
        "home-size-too-small",
        batch.size_place,
        f"The batch is too small for the scales at home. Rounding to them can move its superfat by more than {plain_number(most * 100)} %.",
        f"{_bigger(batch)}, list a finer scale under `scales at home:`, or accept this with your reason.",
        f"{case} (asked {percent(lye.asked)}, got {percent(lye.superfat)}, on a scale that reads to {_reading(coarsest)})",
        acceptable=True,
    )


def _bigger(batch: Batch) -> str:
    smallest = batch.worked.smallest
    return f"Make a batch of {plain_number(smallest.grams)} g or more" if smallest else "Make a bigger batch"


def _reading(scale: Scale) -> str:
    return f"{plain_number(scale.division.grams / scale.grams_per_unit, 4)} {scale.unit}"
