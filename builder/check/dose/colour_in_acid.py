"""A colour from which acid sets something free, in one product with an acid."""

from collections.abc import Iterator

from builder.check.batches import Batch, BatchFinding
from builder.check.dose.colours import colours_in
from builder.check.rule import BATCH, rule_on
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.recipe.ingredient import CountsAs, Ingredient
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.words.within import within


@rule_on(BATCH, FindingKind("colour-in-acid", CAUTION, "A colour stands in a product with an acid, where it fades and sets free a gas."))
def find_colours_in_acid(batch: Batch) -> Iterator[BatchFinding]:
    """Look for such colours, in the batch or on offer, beside an acid that no lye has made a salt of."""
    if batch.worked.recipe.lye:
        return
    acids = [within(one.line.ingredient.name) for one in batch.worked.grams.weighed if _is_sour(one.line.ingredient) and one.mass]
    for card, place in colours_in(batch):
        if card.acid_frees and acids:
            yield batch.caution(
                "colour-in-acid",
                place,
                f"{card.name} does not stand acid, and {acids[0]} is in this product: where it gets wet the colour fades and sets free "
                f"{card.acid_frees}.",
                "Take a colour that stands acid, such as an iron oxide or a mica without ultramarine.",
                "",
            )


def _is_sour(card: Ingredient) -> bool:
    """Tell whether something is an acid by itself. Bicarbonate takes up lye as one does, and is none."""
    return card.counts_as is CountsAs.ACID and card.kind is IngredientKind.ACID
