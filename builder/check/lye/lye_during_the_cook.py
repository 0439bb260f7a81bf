"""Lye that finds fat or acid only after the cook, when what is tested before has too much of it."""

from collections.abc import Iterator

from builder.check.batches import Batch, BatchFinding
from builder.check.lye.lye_remedies import less_lye
from builder.check.rule import BATCH, rule_on
from builder.model.finding_kind import CAUTION, FindingKind
from builder.words.listed import listed
from builder.words.percent import percent


@rule_on(
    BATCH,
    FindingKind(
        "lye-left-during-the-cook",
        CAUTION,
        "During the cook there is more lye in the pot than the fats can take up, until the rest of the fat goes in.",
    ),
)
def find_lye_left_during_the_cook(batch: Batch) -> Iterator[BatchFinding]:
    """Look at the superfat of what is in the pot during the cook, with the decimal that the sheets print."""
    plan = batch.worked.recipe.lye
    for column in batch.worked.columns:
        lye = column.lye
        if plan is None or lye is None or lye.before_the_cook is None:
            continue
        # A recipe that keeps all of its superfat back until after the cook comes to zero, and by rounding a trace below.
        if round(lye.before_the_cook * 1000) < 0:
            late = listed(name.lower() for name in lye.late)
            yield batch.caution(
                "lye-left-during-the-cook",
                plan.at("superfat"),
                f"During the cook there is more lye in the pot than it can take up, since {late} goes in only afterwards. "
                "A test before then finds lye, and says nothing of the finished soap.",
                f"Put in {late} before the end of the cook, or {less_lye(plan)}. "
                "Otherwise cook on after it has gone in, and test only then.",
                f"{batch.weighed_in(column.unit)} ({percent(lye.before_the_cook)} during the cook, {percent(lye.superfat)} afterwards)",
            )
