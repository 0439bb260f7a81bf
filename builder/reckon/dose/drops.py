"""The mass of a drop: as the studio weighed it, or estimated so that it is no less than what a pharmacopoeial dropper lets fall.

Estimate: the density of the liquid divided by the fewest drops of water that a pharmacopoeia allows in a millilitre (USP <1101>: 20, and
10 % either way). Scents give lighter drops than water from the same tip, so that the estimate allows too few drops rather than too many.

Decided: a drop that nobody has weighed is the density over 18 to the mL, the fewest of the pharmacopoeia. Why: an estimate allows too few
drops, never too many.
"""

from collections.abc import Mapping

from builder.model.dose.dose import Drop
from builder.model.recipe.figure import Figure
from builder.model.recipe.ingredient import Ingredient
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.recipe.quantity import Mass
from builder.model.recipe.working import Given, SumRule, Working
from builder.words.say import message

DROPS = "drops of water in a millilitre"
DENSITY = "density of a liquid whose card states none"
DRIPS = (
    IngredientKind.ESSENTIAL_OIL,
    IngredientKind.FRAGRANCE,
    IngredientKind.FLAVOUR,
    IngredientKind.OIL,
    IngredientKind.LIQUID,
    IngredientKind.WATER,
    IngredientKind.MILK,
)


def reckon_drop(card: Ingredient, constants: Mapping[str, Figure]) -> tuple[Drop | None, tuple[Working, ...]]:
    """Return the mass of one drop and how an estimate came about; None for what does not drip."""
    if card.drop_mass:
        return Drop(card.drop_mass.one, measured=True), ()
    if card.kind not in DRIPS:
        return None, ()
    fewest, stated = constants[DROPS], card.figure("density")
    density = stated or constants[DENSITY]
    # A relative density is taken as it is, which is a little more than in g/mL.
    grams = density.highest / fewest.low
    name = message("density") if stated else message("density, none on the card")
    given = (
        Given(name, density.highest, "g/mL", f"{density.source.title}, {density.at}"),
        Given("drops in a millilitre, the fewest", fewest.low, "", f"{fewest.source.title}, {fewest.at}"),
    )
    return Drop(Mass(grams), measured=False), (Working(SumRule.DROP_ESTIMATED, card.name, given, grams, "g"),)
