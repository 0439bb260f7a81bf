"""Which hazards an ingredient, a phase or a recipe brings, and which caution speaks of each.

A phase that is heated brings `hot`, or `hot fat` where fat or wax is melted in it. From which temperature that holds is a constant of
the stock, with its source; without it every heated phase counts as hot.
"""

from collections.abc import Iterable

from builder.model.batch_sheet import BatchSheet
from builder.model.caution import CautionText
from builder.model.ingredient import Ingredient
from builder.model.recipe import Phase
from builder.model.studio import Studio

BURNS_FROM = "hot enough to burn"
CAUSTIC, HOT, HOT_FAT, RAW_SOAP, SLIPPERY = "caustic", "hot", "hot fat", "raw soap", "slippery"
SEVERITY = ("danger", "warning", "caution", "notice")


def hazards_of(studio: Studio, card: Ingredient, phase: str, sheet: BatchSheet) -> tuple[str, ...]:
    """Give the hazards of an ingredient in the phase in which it stands."""
    return (*_of_card(card, sheet), *heat_of(studio, phase, sheet))


def heat_of(studio: Studio, phase_name: str, sheet: BatchSheet) -> tuple[str, ...]:
    """Give the hazard that the heat of a phase brings, if it is heated far enough to burn."""
    phase = next((phase for phase in sheet.recipe.phases if phase.name.text == phase_name), None)
    if phase is None or not _is_hot(studio, phase):
        return ()
    fat = any(line.ingredient.counts_as.is_oil for line in sheet.lines if line.phase == phase_name)
    return (HOT_FAT if fat else HOT,)


def hazards_of_recipe(studio: Studio, sheet: BatchSheet) -> tuple[str, ...]:
    """Give every hazard of a recipe, what students may choose included; soap made with lye is caustic until it has cured."""
    found = [hazard for line in sheet.lines for hazard in hazards_of(studio, line.ingredient, line.phase, sheet)]
    found += [RAW_SOAP] if sheet.product.made_with_lye else []
    return tuple(dict.fromkeys((*found, *hazards_of_choices(studio, sheet))))


def hazards_of_choices(studio: Studio, sheet: BatchSheet) -> tuple[str, ...]:
    """Give the hazards of what students may choose."""
    chosen = (studio.ingredient(option) for dose in sheet.doses for option in dose.offered if option is not None)
    return tuple(dict.fromkeys(hazard for card in chosen if card is not None for hazard in _of_card(card, sheet)))


def _of_card(card: Ingredient, sheet: BatchSheet) -> tuple[str, ...]:
    """Give the hazards of a card that hold in this product: oil makes a tub slippery only from what stays oil and is used in one."""
    in_a_tub = sheet.product.contact in ("bath", "rinse-off") and not sheet.product.made_with_lye
    return tuple(hazard for hazard in card.hazards if hazard != SLIPPERY or in_a_tub)


def cautions_for(studio: Studio, hazards: Iterable[str]) -> tuple[CautionText, ...]:
    """Give the cautions that speak of some hazards, the gravest first."""
    wanted = set(hazards)
    return tuple(sorted((text for text in studio.cautions.values() if text.hazard in wanted), key=_gravest_first))


def _gravest_first(text: CautionText) -> tuple[int, str]:
    return (SEVERITY.index(text.signal) if text.signal in SEVERITY else len(SEVERITY), text.key)


def _is_hot(studio: Studio, phase: Phase) -> bool:
    burns_from = studio.constants.get(BURNS_FROM)
    return phase.heat_to is not None and (burns_from is None or phase.heat_to.celsius >= burns_from.low)
