"""allergens-not-stated: scents, and bases with scent, whose allergens nobody has stated, where the region wants them named."""

from collections.abc import Iterator

from builder.check.batches import Batch, BatchFinding

_ASK = {
    "original list": "the 24 fragrance allergens of the original list",
    "extended list": "the fragrance allergens of the extended list (Regulation (EU) 2023/1545)",
}


def find_allergens_not_stated(batch: Batch) -> Iterator[BatchFinding]:
    """Look at what is scented in all variants; a recipe is reported once, with all of them."""
    named = dict.fromkeys(name for variant in batch.sheet.variants for name in variant.ingredients.without_statement)
    if not named:
        return
    region, which = batch.labelling.region, batch.labelling.region.says("allergens")
    rule = region.rules["allergens"]
    scents = ", ".join(sorted(named))
    wrong = (
        f"A label in this region ({region.name}) names each fragrance allergen of which there is more than a threshold "
        f"({rule.source.title}, {rule.at}), and nothing says how much of them there is in {scents}. "
        "The list may be short of names."
    )
    remedy = f"Ask the supplier of each for its allergen statement, which gives the shares of {_ASK[which]}, and copy it to the card."
    yield batch.caution("allergens-not-stated", batch.sheet.recipe.place, wrong, f"{remedy} It stands there as `allergen statement:`.", "")
