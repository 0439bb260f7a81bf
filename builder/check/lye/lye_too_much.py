"""Lye that is left in the soap, or may be: a column of weighings with more alkali than its fats take up.

Decided: in cold process the low end counts waxes as nothing; without them below -1 % it stops, up to zero it is a caution. Why: a wax
takes its lye in hours of boiling; its free acids take a little at once.

Decided: where a bar is given at least the superfat that is usual, the worst case is told from -1 % on, and of less superfat from zero on.
Why: that superfat is there for what figures and scales may be off (common practice, no source). With every one of them at its worst at once
it may still pass zero by half a percent, in any batch of any size: 0.05 % of free alkali in fresh soap, and part of that goes in the cure.
"""

from collections.abc import Iterator
from fractions import Fraction
from math import ceil

from builder.check.batches import Batch, BatchFinding
from builder.check.lye.lye_remedies import less_lye
from builder.check.rule import BATCH, rule_on
from builder.model.finding_kind import CAUTION, STOP, FindingKind
from builder.model.lye.lye_result import Cause, LyeResult
from builder.model.recipe.column import Column, Role, Weighed
from builder.model.recipe.ingredient import CountsAs
from builder.model.recipe.quantity import NO_MASS
from builder.model.recipe.recipe import LyePlan
from builder.words.listed import listed
from builder.words.percent import percent
from builder.words.plain_number import plain_number

CLEARLY = "superfat that is clearly below zero"
USUAL = "usual superfat of bars"
# Batches are named to so many grams.
_ROUND = 100


@rule_on(
    BATCH,
    FindingKind("lye-too-much", STOP, "There is more lye than the fats can take up, and the soap would burn the skin."),
    FindingKind("lye-left-by-wax", STOP, "Lye would be left over if the wax took none of it, and a wax hardly takes any."),
    FindingKind("wax-may-leave-lye", CAUTION, "A little lye would be left over if the wax took none of it."),
    FindingKind("lye-range-below-zero", CAUTION, "At the worst ends of what is known, lye could be left in the soap."),
)
def find_too_much_lye(batch: Batch) -> Iterator[BatchFinding]:
    """Look at the superfat of every column as it will be weighed: each column is a weighing of its own."""
    plan, cooked = batch.worked.recipe.lye, batch.worked.product.cooked
    for column in batch.worked.columns:
        lye = column.lye
        if plan is None or lye is None:
            continue
        unwaxed = lye.superfat if lye.without_waxes is None else lye.without_waxes
        if lye.superfat < 0:
            yield _too_much(batch, plan, column, lye)
        elif unwaxed * 100 < batch.constants[CLEARLY].typical and not cooked:
            yield _left_by_wax(batch, plan, column, unwaxed)
        elif lye.lowest < _told_below(batch, lye, unwaxed):
            yield _may_be_too_much(batch, plan, column, lye)
        if lye.superfat >= 0 > unwaxed and cooked:
            yield _may_be_left_by_wax(batch, plan, column, unwaxed)


def _told_below(batch: Batch, lye: LyeResult, unwaxed: Fraction) -> Fraction:
    """Return from which worst case on a batch is told of, as a fraction of one."""
    return batch.constants[CLEARLY].typical / 100 if _is_usual(batch, lye) and unwaxed >= 0 else Fraction(0)


def _is_usual(batch: Batch, lye: LyeResult) -> bool:
    return lye.asked * 100 >= batch.constants[USUAL].low


def _too_much(batch: Batch, plan: LyePlan, column: Column, lye: LyeResult) -> BatchFinding:
    return batch.stop(
        "lye-too-much",
        plan.at("superfat"),
        "There is more lye than the fats can take up. The soap would burn the skin, and no curing takes it away.",
        _remedy(batch, plan, column, lye),
        f"{batch.weighed_in(column.unit)} (the superfat comes to {percent(lye.superfat)})",
    )


def _remedy(batch: Batch, plan: LyePlan, column: Column, lye: LyeResult) -> str:
    """Return in words what to do: about the batch where only rounding has made it so, else about the recipe."""
    if lye.asked < 0:
        return f"{less_lye(plan).capitalize()}, and compare each weight and its unit with your notes."
    return f"{_bigger_batch(batch)}, {_finer_scale(column)}, or {less_lye(plan)}."


def _left_by_wax(batch: Batch, plan: LyePlan, column: Column, unwaxed: Fraction) -> BatchFinding:
    waxes = _waxes(column)
    return batch.stop(
        "lye-left-by-wax",
        plan.at("superfat"),
        f"The lye is meant for {waxes} too, and in cold process a wax takes up little or none of it: its saponification value is found "
        "only after hours of boiling. The lye that is left would burn the skin, and no curing takes it away.",
        f"Use less {waxes}, or {less_lye(plan)}.",
        f"{batch.weighed_in(column.unit)} (the superfat is {percent(unwaxed)} if no wax takes lye)",
    )


def _may_be_left_by_wax(batch: Batch, plan: LyePlan, column: Column, unwaxed: Fraction) -> BatchFinding:
    return batch.caution(
        "wax-may-leave-lye",
        plan.at("superfat"),
        f"Lye would be left in the soap if {_waxes(column)} took none of it, and a wax takes its lye only when it is boiled for hours.",
        f"{less_lye(plan).capitalize()}, use less wax, or cook until a test shows no lye, and accept this with your reason.",
        f"{batch.weighed_in(column.unit)} ({percent(unwaxed)} if no wax takes lye)",
    )


def _may_be_too_much(batch: Batch, plan: LyePlan, column: Column, lye: LyeResult) -> BatchFinding:
    cause = lye.causes[0] if lye.causes else None
    bigger = lye.grows_until(batch.constants[CLEARLY].typical / 100) if _is_usual(batch, lye) else None
    if bigger is not None:
        enough = max(column.total * bigger, batch.worked.smallest or NO_MASS)
        grams = ceil(enough.grams / _ROUND) * _ROUND
        remedy = f"Weigh on a finer scale, make a batch of about {grams} g or more, or {less_lye(plan)}."
    elif cause is None or lye.by_scales >= cause.takes:
        remedy = f"The scales take the most of it. {_bigger_batch(batch)}, weigh on a finer scale, or {less_lye(plan)}."
    elif not batch.worked.product.cooked and _is_wax(cause, column):
        remedy = (
            f"{cause.ingredient} takes the most of it, since a wax takes up little or no lye in cold process. "
            f"{less_lye(plan).capitalize()}, or use less of it."
        )
    elif any(cause.ingredient == w.line.name for w in column.weighed if w.line.role is Role.ALKALI) and plan.bought:
        remedy = (
            f"The range of {cause.ingredient} takes the most of it. {less_lye(plan).capitalize()}, or write the range that the certificate "
            "of the bottle in hand states."
        )
    elif any(cause.ingredient == w.line.name for w in column.weighed if w.line.role is Role.ALKALI):
        remedy = (
            f"The range of {cause.ingredient} takes the most of it. {less_lye(plan).capitalize()}. For your own pack a purity from its "
            "certificate, in `purity:` of the lye block, narrows the range; at home it does not, since another pack is used there."
        )
    else:
        remedy = (
            f"The range of {cause.ingredient} takes the most of it. {less_lye(plan).capitalize()}, or enter the figure of your supplier's "
            "certificate on a card in shelf/ingredients/: a single value has no range. A bigger batch and a finer scale help a little."
        )
    return batch.caution(
        "lye-range-below-zero",
        plan.at("superfat"),
        "With the fats, the lye and the scales at the worst ends of their ranges the superfat could come out below zero, "
        "and lye would be left in the soap.",
        remedy,
        f"{batch.weighed_in(column.unit)} ({percent(lye.superfat)}, at the worst {percent(lye.lowest)})",
    )


def _bigger_batch(batch: Batch) -> str:
    smallest = batch.worked.smallest
    bigger = smallest is not None and smallest > batch.worked.grams.total
    return f"Make a batch of {plain_number(smallest.grams)} g or more" if smallest and bigger else "Make a bigger batch"


def _finer_scale(column: Column) -> str:
    """Name the fat of which rounding takes the most: lye is rounded down, so what is missing is fat."""
    fats = [weighed for weighed in column.weighed if weighed.line.role is Role.OIL]
    most = max(fats, key=_lost)
    division = plain_number(most.scale.division.grams / most.scale.grams_per_unit)
    return f"weigh {most.line.name} on a scale that reads finer than {division} {column.unit}"


def _lost(weighed: Weighed) -> Fraction:
    return weighed.line.exact.grams - weighed.mass.grams


def _waxes(column: Column) -> str:
    names = dict.fromkeys(w.line.name.lower() for w in column.weighed if w.line.ingredient.counts_as is CountsAs.WAX)
    return listed(names)


def _is_wax(cause: Cause, column: Column) -> bool:
    return any(w.line.name == cause.ingredient and w.line.ingredient.counts_as is CountsAs.WAX for w in column.weighed)
