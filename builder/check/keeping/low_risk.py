"""Products of low risk, in which nothing grows though nothing preserves them: the criteria of ISO 29621:2017."""

from builder.check.keeping.alcohol import least_alcohol
from builder.model.recipe.recipe import Recipe
from builder.model.studio import Studio
from builder.words.plain_number import plain_number

_BELOW, _ABOVE = "low risk below this pH", "low risk above this pH"
_ALCOHOL, _ACTIVITY, _FILLED = (
    "low risk above this share of alcohol",
    "low risk below this water activity",
    "low risk where it is filled above",
)


def has_extreme_ph(recipe: Recipe, studio: Studio) -> bool:
    """Tell whether the pH that was measured lets nothing grow."""
    low, high = studio.constants[_BELOW].typical, studio.constants[_ABOVE].typical
    return recipe.ph is not None and (recipe.ph.high < low or recipe.ph.low > high)


def grows_nothing(recipe: Recipe, studio: Studio) -> bool:
    """Tell whether its measured pH or its alcohol lets nothing grow. Alcohol is counted by weight, which is stricter than by volume."""
    return has_extreme_ph(recipe, studio) or 100 * least_alcohol(recipe, studio) > studio.constants[_ALCOHOL].typical


def least_activity(studio: Studio) -> str:
    """Return the water activity below which nothing grows."""
    return plain_number(studio.constants[_ACTIVITY].typical)


def measurable(studio: Studio) -> str:
    """Name what a studio can measure of a product with water that shows low risk at any pH."""
    return f"more than {plain_number(studio.constants[_ALCOHOL].typical)} % of alcohol, a water activity below {least_activity(studio)}"


def only_low_risk(studio: Studio) -> str:
    """Return in words which products need no preservative, and what to do about one of them."""
    low, high, filled = (plain_number(studio.constants[key].typical) for key in (_BELOW, _ABOVE, _FILLED))
    return (
        f"Only a product of low risk needs none: pH below {low} or above {high}, {measurable(studio)}, filled above {filled} °C, or free "
        "of water (ISO 29621:2017). If a measurement of yours shows one of these, accept this and name it."
    )
