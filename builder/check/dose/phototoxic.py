"""An oil that makes skin burn in the sun, in what stays on it, and no limit for it is known."""

from collections.abc import Iterator

from builder.check.batches import Batch, BatchFinding
from builder.check.dose.limit_words import DEFER
from builder.check.places import place_of_choice, place_of_line
from builder.check.rule import BATCH, rule_on
from builder.model.dose.limit import Limit, names_of
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.hazard import Hazard
from builder.model.place import Place
from builder.model.recipe.ingredient import Ingredient, blend_of
from builder.words.fold import fold


@rule_on(
    BATCH, FindingKind("phototoxic-unlimited", CAUTION, "An oil that makes skin burn in the sun stays on it, and no limit for it is known.")
)
def find_phototoxic_oils(batch: Batch) -> Iterator[BatchFinding]:
    """Look for such oils, in the batch or on offer to students, that no limit for oils of this hazard counts."""
    if not batch.worked.product.contact.stays_on:
        return
    rows = [row for row in batch.limits if row.hazard is Hazard.PHOTOTOXIC and row.names and row.most and row.is_for(batch.worked.product)]
    for card, place in _phototoxic(batch):
        if not any(_speaks_of(row, card) for row in rows):
            yield batch.caution(
                "phototoxic-unlimited",
                place,
                f"{card.name} makes skin burn in the sun, this product stays on the skin, and no limit for it stands in the tables.",
                "Use an oil that is free of furocoumarins, or add the limit that your supplier states to a table in shelf/tables/. "
                f"{DEFER}",
                "",
            )


def _speaks_of(row: Limit, card: Ingredient) -> bool:
    names = names_of(card)
    return any(name in row.names for name in (*names, blend_of(names)))


def _phototoxic(batch: Batch) -> Iterator[tuple[Ingredient, Place]]:
    worked = batch.worked
    for weighed in worked.grams.weighed:
        if Hazard.PHOTOTOXIC in weighed.line.ingredient.hazards and weighed.mass:
            yield weighed.line.ingredient, place_of_line(weighed.line, worked.recipe)
    for dose in batch.filling.doses:
        for option in dose.offered:
            card = batch.cards[fold(option)] if option is not None else None
            if card and Hazard.PHOTOTOXIC in card.hazards:
                yield card, place_of_choice(dose.what, worked.recipe)
