"""The one place where a number loses digits: exact masses to whole divisions of a scale, each direction with a name.

Decided: an amount is weighed on the finest scale that holds it. Why: lye is small and gets the fine scale by itself.
"""

from collections.abc import Sequence
from fractions import Fraction
from math import ceil, floor

from builder.model.recipe.quantity import NO_MASS, Mass
from builder.model.studio import Scale


def round_down(mass: Mass, division: Mass) -> Mass:
    """Return the most whole divisions that the mass holds. Lye and doses are rounded this way, never up."""
    return division * floor(mass / division)


def round_up(mass: Mass, division: Mass) -> Mass:
    """Return the fewest whole divisions that hold the mass."""
    return division * ceil(mass / division)


def round_near(mass: Mass, division: Mass) -> Mass:
    """Return the nearest whole division; a half goes up."""
    return division * floor(mass / division + Fraction(1, 2))


def pick_scale(mass: Mass, scales: Sequence[Scale], cup: Mass = NO_MASS) -> tuple[Scale, bool]:
    """Return the finest scale that can hold the mass in its cup, and whether one can; if none can, the one that holds most."""
    able = [scale for scale in scales if scale.up_to >= mass + cup]
    if able:
        return min(able, key=lambda scale: (scale.division, scale.up_to)), True
    return max(scales, key=lambda scale: scale.up_to), False
