"""A superfat, asked for or worked out, at which little or nothing becomes soap."""

from collections.abc import Iterator

from builder.check.batches import Batch, BatchFinding
from builder.check.lye.superfat_out_of_range import SUPERFAT_TOO_HIGH
from builder.check.rule import BATCH, rule_on
from builder.model.finding_kind import CAUTION, FindingKind
from builder.words.plain_number import plain_number

HIGHEST = "highest usual superfat"


@rule_on(BATCH, SUPERFAT_TOO_HIGH, FindingKind("superfat-unusual", CAUTION, "Far more of the fat would find no lye than is usual."))
def find_unusual_superfat(batch: Batch) -> Iterator[BatchFinding]:
    """Look at the superfat before rounding, in the column in grams."""
    plan, lye = batch.worked.recipe.lye, batch.worked.grams.lye
    if plan is None or lye is None:
        return
    usual = batch.constants[HIGHEST]
    case = f"{batch.name} ({plain_number(lye.asked * 100, 3)} %)"
    if plan.superfat is None and lye.asked >= 1:
        yield batch.stop(
            "superfat-too-high",
            plan.at("superfat"),
            "The acids take up all of the lye, so that none of the fat becomes soap.",
            "Correct the weight of the lye, or leave out the acid.",
            case,
        )
    elif lye.asked * 100 > usual.typical:
        yield batch.caution(
            "superfat-unusual",
            plan.at("superfat"),
            f"More than {plain_number(usual.typical)} % of the fat would find no lye ({usual.at}).",
            "Correct the lye, or accept this with your reason." if plan.superfat else "Compare the weight and its unit with your notes.",
            case,
        )
