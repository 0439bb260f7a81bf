"""What `check --reading` asks of a take-home sheet on which nothing says what to do when what is made goes wrong.

Who makes it alone at home has nobody to ask, and throws away what could be mended, or keeps what is for the bin. A fixed place for it is
what standards of instructions ask for (IEC/IEEE 82079-1, from memory).

Decided: a line of the report, and no finding. Why: short lessons of usual teachers have none, and are no worse for who has seen the class.
"""

from collections.abc import Iterator

from builder.model.dates.studio_class import StudioClass
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.recipe.recipe import Recipe
from builder.model.studio import Studio
from builder.model.teaching.lesson import sentences_in
from builder.rules.hands.mended import says_how_to_mend
from builder.rules.part_recipe import home_parts

_MELTED = {IngredientKind.BUTTER, IngredientKind.WAX, IngredientKind.FATTY_ACID, IngredientKind.SOAP_BASE}
# What is mostly grains is held together by them: butter in a scrub or a bath bomb is a coat.
_GRAINS = {IngredientKind.SALT, IngredientKind.SUGAR}


def mending_lines(studio: Studio, studio_class: StudioClass, recipe: Recipe) -> Iterator[str]:
    """Yield what to say, for lye, an emulsion and what is melted; nothing where the steps for home say how something is mended."""
    asked = _asked(studio, recipe)
    said = (sentence for part in home_parts(studio_class, recipe.key) for sentence in sentences_in(part.blocks))
    if asked and not says_how_to_mend(said):
        yield f"nothing says what to do when it goes wrong: {asked}"


def _asked(studio: Studio, recipe: Recipe) -> str:
    cards = [card for card in map(studio.ingredient, recipe.names) if card]
    kinds = {card.kind for card in cards}
    if recipe.lye is not None:
        return "if the soap separates, stays thin, or turns thick at once"
    if IngredientKind.EMULSIFIER in kinds and any(card.counts_as.is_watery for card in cards):
        return "if it splits, hot or cold"
    if kinds & _MELTED and not kinds & _GRAINS:
        return "if a skin forms, or it sets too soft or too hard"
    return ""
