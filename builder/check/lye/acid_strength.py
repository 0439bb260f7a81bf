"""Strength-missing: an acid of unknown strength that counts towards a limit, or for which a row asks for a pH or a label."""

from collections.abc import Iterator

from builder.check.batches import Batch, BatchFinding
from builder.check.places import place_of_counted
from builder.check.recipe.figures_missing import STRENGTH_MISSING, strength_missing
from builder.check.rule import BATCH, rule_on
from builder.model.dose.towards import Counted
from builder.model.recipe.ingredient import CountsAs, Ingredient
from builder.model.recipe.ingredient_kind import IngredientKind


@rule_on(BATCH, STRENGTH_MISSING)
def find_acids_of_unknown_strength(batch: Batch) -> Iterator[BatchFinding]:
    """Look at what counts towards a limit; an acid that takes up lye is a finding of its own."""
    if batch.worked.recipe.lye:
        return
    counted = (one for towards in (*batch.filling.towards, *batch.filling.asked) for one in towards.counted)
    unknown: dict[str, Counted] = {one.card.key: one for one in counted if _is_of_unknown_strength(one.card)}
    for one in unknown.values():
        found = strength_missing(place_of_counted(one, batch.worked.recipe), one.card, "a limit asks for it")
        yield batch.stop(found.name, found.place, found.wrong, found.remedy, "")


def _is_of_unknown_strength(card: Ingredient) -> bool:
    stated = card.label_name is not None and bool(card.label_name.shares)
    return (card.kind is IngredientKind.ACID or card.counts_as is CountsAs.ACID) and card.figure("purity") is None and not stated
