"""The allergen families of some batches, from the cards of what goes in and of what students may choose, and what they leave open."""

from collections.abc import Iterable

from builder.compose.recipe.wording import listed, sentence, within
from builder.model.recipe.ingredient import CountsAs, Ingredient
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.words.say import say


def allergens_of(studio: Studio, batches: Iterable[WorkedBatch]) -> str:
    """Return the families in words, each once; empty where there are none."""
    return sentence(listed(sorted({say(allergen) for card in _cards(studio, batches) for allergen in card.allergens})))


def allergens_open_in(studio: Studio, batches: Iterable[WorkedBatch]) -> str:
    """Name the bases, fragrances and flavours, of whose parts only the supplier knows all; empty where there are none."""
    kinds = (IngredientKind.FRAGRANCE, IngredientKind.FLAVOUR)
    return listed(sorted({within(card.name) for card in _cards(studio, batches) if card.counts_as is CountsAs.BASE or card.kind in kinds}))


def _cards(studio: Studio, batches: Iterable[WorkedBatch]) -> list[Ingredient]:
    batches = list(batches)
    cards = [line.ingredient for batch in batches for line in batch.lines]
    options = (option for batch in batches for dose in batch.own.doses for option in dose.offered if option is not None)
    return [*cards, *(card for card in map(studio.ingredient, options) if card is not None)]
