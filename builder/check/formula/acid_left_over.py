"""More acid in what fizzes than its bicarbonate takes up.

Decided: a little acid over is silent. Why: scales and purities leave that much open, and it is weaker than lemonade.
"""

from collections.abc import Iterator

from builder.check.batches import Batch, BatchFinding
from builder.check.rule import BATCH, rule_on
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.rules.fizz import acid_left
from builder.words.percent import percent

OPEN = "acid that may be left over in what fizzes"


@rule_on(BATCH, FindingKind("acid-left-over", CAUTION, "More acid is in what fizzes than its bicarbonate takes up, and it stings."))
def find_acid_left_over(batch: Batch) -> Iterator[BatchFinding]:
    """Look at what goes into water: what is left of the acid is then in the bath."""
    worked = batch.worked
    left = acid_left(worked.lines)
    if worked.recipe.lye or worked.product.contact.stays_on or left is None:
        return
    if left * 100 <= batch.constants[OPEN].typical:
        return
    acid = max((line for line in worked.lines if line.ingredient.kind is IngredientKind.ACID), key=lambda line: line.share)
    yield batch.caution(
        "acid-left-over",
        acid.place,
        f"There is more acid than the bicarbonate takes up: {percent(left)} of it is left over when the fizz has ended. Acid "
        "stings eyes and tender skin, that of children first (worked out from molar masses: 1 g of citric acid takes 1.31 g of "
        "sodium bicarbonate).",
        "Use less of the acid; twice as much bicarbonate as citric acid, by weight, is usual (common practice, no source).",
        "",
    )
