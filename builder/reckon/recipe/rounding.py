"""The one place where a number loses digits: exact masses to whole divisions of a scale, each direction with a name."""

from fractions import Fraction
from math import ceil, floor

from builder.model.recipe.quantity import Mass


def round_down(mass: Mass, division: Mass) -> Mass:
    """Return the most whole divisions that the mass holds. Lye and doses are rounded this way, never up."""
    return division * floor(mass / division)


def round_up(mass: Mass, division: Mass) -> Mass:
    """Return the fewest whole divisions that hold the mass."""
    return division * ceil(mass / division)


def round_near(mass: Mass, division: Mass) -> Mass:
    """Return the nearest whole division; a half goes up."""
    return division * floor(mass / division + Fraction(1, 2))
