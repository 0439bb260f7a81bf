"""label-name-missing, label-order-open: an ingredient list that cannot be printed truthfully."""

from collections.abc import Iterator

from builder.check.batches import Batch, BatchFinding
from builder.model.batch_sheet import Line
from builder.model.place import Place, fold

_OPEN = "Nothing proves which of two ingredients there is more of in this product, so the order on its label would be a guess."


def find_open_label_orders(batch: Batch) -> Iterator[BatchFinding]:
    """Look at the ingredient lists of all variants; each name or pair is reported once."""
    for name in sorted({name for variant in batch.sheet.variants for name in variant.ingredients.nameless}):
        yield batch.stop(
            "label-name-missing",
            _place_of(name, batch),
            f"The card of {name} does not say how an ingredient list declares it, so no label of this recipe can be true.",
            "Copy the list that the supplier declares to a card in shelf/ingredients/, as `label name:`.",
            "",
        )
    for pair in sorted({pair for variant in batch.sheet.variants for pair in variant.ingredients.open_pairs}):
        place, remedy = _cause(pair, batch)
        yield batch.stop("label-order-open", place, _OPEN, remedy, " and ".join(pair))


def _place_of(name: str, batch: Batch) -> Place:
    """Give the place at which a recipe names an ingredient."""
    recipe = batch.sheet.recipe
    options = (option for choice in recipe.choices for option in choice.options if option)
    named = (*(line.ingredient for line in recipe.lines), *options)
    return next((one.place for one in named if one.key == fold(name)), recipe.place)


def _cause(pair: tuple[str, str], batch: Batch) -> tuple[Place, str]:
    """Give what leaves the order open, and what would close it: what students may add, or a blend that declares no amounts."""
    recipe, lines = batch.sheet.recipe, batch.sheet.lines
    blend = next((line for line in lines if len(_declared(line)) > 1 and set(pair) & set(_declared(line))), None)
    both_weighed = all(any(name in _declared(line) for line in lines) for name in pair)
    if recipe.choices and not (blend and both_weighed):
        most = max(recipe.choices, key=lambda choice: choice.at_most.fraction)
        return most.place, "Lower `at most:`, so that the order is the same whatever a student adds."
    supplier = f"the supplier of {blend.ingredient.name}" if blend else "the suppliers of the blends"
    remedy = f"Ask {supplier} how much of each it holds, or keep what else is in question below 1 %."
    return blend.place if blend else recipe.place, remedy


def _declared(line: Line) -> tuple[str, ...]:
    names = line.ingredient.label_name
    return names.plain if names else ()
