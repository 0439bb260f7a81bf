"""A home batch that fills not even one container."""

from collections.abc import Iterator

from builder.check.batches import Batch, BatchFinding
from builder.check.rule import BATCH, rule_on
from builder.model.finding_kind import CAUTION, FindingKind
from builder.words.plain_number import plain_number


@rule_on(BATCH, FindingKind("fills-no-container", CAUTION, "A batch is smaller than what fills one container."))
def find_short_portions(batch: Batch) -> Iterator[BatchFinding]:
    """Compare the containers that a batch yields with what was asked for."""
    portions = batch.filling.portions
    if portions.yields == 0 and portions.wanted != 0:
        yield batch.caution(
            "fills-no-container",
            batch.size_place or batch.filling.fill.place,
            f"The batch is smaller than the {plain_number(portions.fill.grams, 4)} g that fill one container.",
            "Make a bigger batch, or fill a smaller container.",
            batch.name,
        )
