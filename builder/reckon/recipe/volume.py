"""The volume that a batch takes up, for its mould or its pot."""

from collections.abc import Mapping

from builder.model.recipe.figure import Figure
from builder.model.recipe.quantity import Mass, Volume
from builder.model.recipe.recipe import Recipe

FRESH_SOAP = "density of fresh soap"


def reckon_volume(recipe: Recipe, total: Mass, constants: Mapping[str, Figure]) -> Volume | None:
    """Return it by the density that the studio measured; of soap made with lye without one, at the least density of fresh soap.

    None for anything else: the density of a mixture is not the mean of its parts.
    """
    if recipe.density is not None:
        return Volume(total.grams / recipe.density.density.grams_per_millilitre)
    return Volume(total.grams / constants[FRESH_SOAP].low) if recipe.lye is not None else None
