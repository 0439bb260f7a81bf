"""What a label warns of: the recipe's own cautions, then what a law, guidance or good practice asks for its product and ingredients.

Decided: soap, and not only a surfactant, calls for the caution of 21 CFR 740.17 in what goes into a bath. Why: a caution too many hurts
nobody.
"""

from collections.abc import Iterator

from builder.model.label.ingredient_list import Variant
from builder.model.label.label_warning import Because, WarningRule
from builder.model.label.language import ENGLISH, OWN, Language
from builder.model.recipe.ingredient import Ingredient
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.words.fold import fold


def warnings_of(studio: Studio, batch: WorkedBatch, variant: Variant, language: Language = ENGLISH) -> tuple[str, ...]:
    """Return the warnings of one variant in a language, prescribed ones first and each once. What is said already is seen in English."""
    own = batch.recipe.told_in(language.name).label_cautions
    english = batch.recipe.told_in(OWN)
    said = (*english.label_cautions, english.directions)
    called_for = [rule for rule in studio.label_warnings if _holds(rule, studio, batch, variant) and not rule.is_said_in(said)]
    prescribed = [language.text(rule.wording) for rule in called_for if rule.because is Because.LAW]
    others = [language.text(rule.wording) for rule in called_for if rule.because is not Because.LAW]
    return tuple(dict.fromkeys((*prescribed, *own, *others)))


def _holds(rule: WarningRule, studio: Studio, batch: WorkedBatch, variant: Variant) -> bool:
    product = batch.product
    if (
        (rule.regions and studio.profile.region not in rule.regions)
        or (rule.products and not product.is_any_of(rule.products))
        or (rule.contact and product.contact not in rule.contact)
        or (product.made_with_lye and not rule.made_with_lye)
    ):
        return False
    if not (rule.kinds or rule.names or rule.hazards):
        return True
    return any(_calls_for(rule, card) for card in _cards(studio, batch, variant))


def _cards(studio: Studio, batch: WorkedBatch, variant: Variant) -> Iterator[Ingredient]:
    yield from (line.ingredient for line in batch.lines)
    chosen = (studio.ingredient(option) for _, option in variant.chosen if option is not None)
    yield from (card for card in chosen if card is not None)


def _calls_for(rule: WarningRule, card: Ingredient) -> bool:
    names = {fold(name) for name in card.label_name.inci} if card.label_name else set()
    return card.kind in rule.kinds or bool(names & set(rule.names)) or bool(set(card.hazards) & set(rule.hazards))
