"""The allergen families of some batches, from the cards of what goes in and of what students may choose."""

from collections.abc import Iterable

from builder.compose.wording import listed, sentence
from builder.model.batch_sheet import BatchSheet
from builder.model.studio import Studio


def allergens_of(studio: Studio, batches: Iterable[BatchSheet]) -> str:
    """Give the families in words, each once; empty where there are none."""
    sheets = list(batches)
    cards = [line.ingredient for sheet in sheets for line in sheet.lines]
    options = (option for sheet in sheets for dose in sheet.doses for option in dose.offered if option is not None)
    cards += [card for card in map(studio.ingredient, options) if card is not None]
    return sentence(listed(sorted({allergen for card in cards for allergen in card.allergens})))
