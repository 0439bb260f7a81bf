"""label-name-missing, label-order-open: an ingredient list that cannot be printed truthfully."""

from collections.abc import Iterator

from builder.check.batches import Batch
from builder.model.finding import Finding, stop


def find_open_label_orders(batch: Batch) -> Iterator[Finding]:
    """Look at the ingredient lists of all variants; each name or pair is reported once."""
    place = batch.sheet.recipe.place
    nameless = sorted({name for variant in batch.sheet.variants for name in variant.ingredients.nameless})
    for name in nameless:
        line = next((line for line in batch.sheet.recipe.lines if line.ingredient.key == name.casefold()), None)
        yield stop(
            "label-name-missing",
            line.ingredient.place if line else place,
            f"The card of {name} does not say how an ingredient list declares it, so no label of this recipe can be true.",
            "Copy the list that the supplier declares to a card in shelf/ingredients/, as `label name:`.",
            about=batch.about,
        )
    pairs = sorted({pair for variant in batch.sheet.variants for pair in variant.ingredients.open_pairs})
    for first, second in pairs:
        yield stop(
            "label-order-open",
            place,
            f"Nothing proves whether there is more {first} or more {second} in this product, so the order on its label would be a guess.",
            f"Ask the supplier of the base how much {first} it holds, or add less than 1 % of what is open.",
            about=batch.about,
        )
