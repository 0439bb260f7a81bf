"""A scent that is known to burn or to sensitise, or of which nothing is known, and no limit for this use is published.

A mild oil without a published limit is only named on the teacher's sheet.
"""

from collections.abc import Iterator

from builder.check.batches import Batch, BatchFinding
from builder.check.dose.limit_words import DEFER
from builder.check.places import place_of_choice, place_of_line
from builder.check.rule import BATCH, rule_on
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.hazard import Hazard
from builder.model.place import Place
from builder.model.recipe.ingredient import Ingredient
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.words.fold import fold

_OIL = IngredientKind.ESSENTIAL_OIL


@rule_on(
    BATCH,
    FindingKind("scent-without-limit", CAUTION, "No limit for a scent is known that may burn or sensitise, or of which nothing is known."),
)
def find_scents_without_limit(batch: Batch) -> Iterator[BatchFinding]:
    """Look at the scents of which no limit for this use speaks but those on all scent together."""
    for card in batch.worked.unlimited:
        if card.kind is not _OIL or (card.oils and Hazard.SENSITISER not in card.hazards):
            continue  # What a made scent allows stands in its certificate, which its own card asks for.
        if Hazard.PHOTOTOXIC in card.hazards and batch.worked.product.contact.stays_on:
            continue  # phototoxic-unlimited says so.
        known = "can make skin sensitive" if card.oils else "is in no table here, so that nothing is known of what it holds"
        yield batch.caution(
            "scent-without-limit",
            _place_of(card, batch),
            f"{card.name} {known}, and no limit for this use ({batch.worked.product.contact}) stands in the tables. That is a gap, and no "
            "permission.",
            "Ask your supplier for the certificate, and write its figure on the card: `certificate: {at most: "
            f"{{{batch.worked.product.contact}: ... %}}, ...}}`. {DEFER}",
            "",
        )


def _place_of(card: Ingredient, batch: Batch) -> Place:
    worked = batch.worked
    for weighed in worked.grams.weighed:
        if weighed.line.ingredient.key == card.key:
            return place_of_line(weighed.line, worked.recipe)
    what = next(
        dose.what for dose in batch.filling.doses if any(one.option is not None and fold(one.option) == card.key for one in dose.each)
    )
    return place_of_choice(what, worked.recipe)
