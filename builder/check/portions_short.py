"""fills-no-container: a home batch that fills not even one container."""

from collections.abc import Iterator

from builder.check.batches import Batch
from builder.model.finding import Finding, caution


def find_short_portions(batch: Batch) -> Iterator[Finding]:
    """Compare the containers that a batch yields with what was asked for."""
    portions = batch.sheet.portions
    if portions.yields == 0 and portions.wanted != 0:
        yield caution(
            "fills-no-container",
            batch.sheet.recipe.fill.place,
            f"{batch.what}: the batch is smaller than the {float(portions.fill.grams):g} g that fill one container.",
            "Make a bigger batch, or fill a smaller container.",
            about=batch.about,
        )
