"""Lye with too much water, too little, or more or less than is usual."""

from collections.abc import Iterator
from math import ceil

from builder.check.batches import Batch, BatchFinding
from builder.check.rule import BATCH, rule_on
from builder.model.finding_kind import CAUTION, STOP, FindingKind
from builder.model.lye.lye_result import LyeResult
from builder.model.recipe.column import Column, Role
from builder.model.recipe.figure import Figure
from builder.model.recipe.ingredient import CountsAs
from builder.model.recipe.quantity import NO_MASS, Share
from builder.model.recipe.recipe import LyePlan
from builder.rules.basis import PRACTICE
from builder.words.fold import fold
from builder.words.listed import listed
from builder.words.plain_number import plain_number

# The alkali whose solubility the figure is, and the alkali of soft and liquid soap.
_MEASURED = "sodium hydroxide"
_SOFT = "potassium hydroxide"


@rule_on(
    BATCH,
    FindingKind("water-below-zero", STOP, "Ready-mixed lye alone brings more water than the recipe asks for."),
    FindingKind("lye-too-strong", STOP, "The lye is stronger than what dissolves, and solid lye would end up in the soap."),
    FindingKind("lye-water-unusual", CAUTION, "The lye is stronger or weaker than is usual."),
)
def find_too_strong_lye(batch: Batch) -> Iterator[BatchFinding]:
    """Look at the concentration of the lye in its water, as weighed in grams."""
    plan, column = batch.worked.recipe.lye, batch.worked.grams
    if plan is None:
        return
    if plan.ready_mixed is not None and column.lye_water < NO_MASS:
        yield batch.stop(
            "water-below-zero",
            plan.water.place,
            "The ready-mixed lye alone brings more water than the recipe asks for.",
            f"Ask for a weaker lye, or use a stronger ready-mixed solution: of {_least(plan.ready_mixed, column)} % at least.",
            batch.name,
        )
        return
    if column.lye is None:
        return
    yield from _solution(batch, plan, column.lye)
    ceiling, usual = batch.constants["strongest lye from solid"], _usual(batch, column)
    strength = column.lye.in_water * 100
    case = f"{batch.name} ({plain_number(strength, 3)} %)"
    range_ = f"{plain_number(usual.low)} % to {plain_number(usual.highest)} % is usual ({PRACTICE})."
    if strength > ceiling.typical and plan.ready_mixed is None:
        yield batch.stop(
            "lye-too-strong",
            plan.water.place,
            f"{_why_not(column.lye, ceiling)} What stays solid ends up in the soap.{_uncounted(column)}",
            f"Use more water: a lye concentration of at most {plain_number(ceiling.typical)} %. {range_}",
            case,
        )
    elif not usual.low <= strength <= usual.highest:
        yield batch.caution(
            "lye-water-unusual",
            plan.water.place,
            f"The lye is stronger or weaker than is usual. {usual.at[0].upper()}{usual.at[1:]}.",
            f"{range_} Change the water, or accept this finding with your reason.",
            case,
        )


def _uncounted(column: Column) -> str:
    """Return in words of which liquids no water counts, since their cards do not say how much they hold."""
    in_lye = (one.line.ingredient for one in column.weighed if one.line.role is Role.LYE_WATER)
    unknown = [card.name for card in in_lye if card.counts_as is CountsAs.LIQUID and not card.figure("water content")]
    if not unknown:
        return ""
    return f" No water of {listed(unknown)} is counted, since the card does not say how much it holds (`figures:`, `water content:`)."


def _least(strength: Share, column: Column) -> int:
    """Return how strong a solution has to be, in whole percent of hydroxide, so that it brings no more water than the recipe has."""
    return ceil(column.alkali / (column.alkali + column.lye_water) * strength.fraction * 100)


def _solution(batch: Batch, plan: LyePlan, lye: LyeResult) -> Iterator[BatchFinding]:
    """Look at the strength of a ready-mixed lye by itself, whatever water is added to it."""
    ceiling = batch.constants["strongest lye from solid"]
    weighed = [w.line.strength for w in batch.worked.grams.weighed if w.line.strength is not None]
    if not weighed:
        return
    strength = plan.bought.low if plan.bought else max(weighed)
    if strength * 100 <= ceiling.typical:
        return
    why, written = _why_not(lye, ceiling), plain_number(strength * 100)
    if plan.bought:
        wrong = f"{why} So no solution of {written} % is sold, and the lye would be another than is counted."
        remedy = "Write the strength that the certificate of the bottle states. Of a solid leave out `ready-mixed:`."
    else:
        wrong = f"{why} What stays solid at {written} % would end up in one pot and be missing in the others."
        remedy = f"Mix it to {plain_number(ceiling.typical)} % at most."
    yield batch.stop("lye-too-strong", plan.at("ready-mixed"), wrong, remedy, batch.name)


def _usual(batch: Batch, column: Column) -> Figure:
    """Return the usual concentration: soft and liquid soaps, which are mostly made with potassium hydroxide, have their own."""
    parts = column.lye.parts if column.lye else ()
    soft = sum(part.by_equivalents for part in parts if _SOFT in {fold(name) for name in (part.card.name, *part.card.also_called)})
    return batch.constants["usual lye concentration of soft soap" if soft * 2 > 1 else "usual lye concentration"]


def _why_not(lye: LyeResult, ceiling: Figure) -> str:
    """Return in words why a lye above the ceiling is refused, with the figure's source where the figure is that of this alkali."""
    most = plain_number(ceiling.typical)
    if {fold(purity.alkali) for purity in lye.purities} == {_MEASURED}:
        return f"A lye of more than {most} % does not dissolve at room temperature ({ceiling.source.title}: {ceiling.at})."
    return f"A lye of more than {most} % may not dissolve at room temperature ({PRACTICE})."
