"""Which scale weighs what: the finest that holds an amount with the vessel that it is weighed in.

Decided: an amount is weighed on the finest scale that holds it. Why: lye is small and gets the fine scale by itself.

Decided: a vessel is taken to weigh what usual ones do that hold as much (`constants.yaml`). Why: whether the scale in somebody's hand holds
her jug nobody can know beforehand; one that holds the amount alone holds no jug with it.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from builder.model.recipe.column import Role, Weighed
from builder.model.recipe.figure import Figure
from builder.model.recipe.quantity import NO_MASS, Mass
from builder.model.studio import Scale


@dataclass(frozen=True)
class Vessel:
    """What stands on a scale beside what is weighed in it: `least` at all events, and `share` (of 1) of what it holds."""

    least: Mass
    share: Fraction

    def holding(self, mass: Mass) -> Mass:
        """Return what a scale has to hold: an amount, and a vessel for it."""
        return mass + self.least + mass * self.share


def vessel_by(constants: Mapping[str, Figure]) -> Vessel:
    """Return the usual vessel."""
    return Vessel(Mass(constants["lightest weighing cup"].typical), constants["weighing vessel to what it holds"].typical / 100)


def pick_scale(mass: Mass, scales: Sequence[Scale], vessel: Vessel) -> tuple[Scale, bool]:
    """Return the finest scale that can hold the mass in its vessel, and whether one can; if none can, the one that holds most."""
    held = vessel.holding(mass)
    able = [scale for scale in scales if scale.up_to >= held]
    if able:
        return min(able, key=lambda scale: (scale.division, scale.up_to)), True
    return max(scales, key=lambda scale: scale.up_to), False


def one_at_a_time(weighed: Iterable[Weighed], vessel: Vessel) -> Iterator[tuple[str, Scale]]:
    """Yield the phases whose weighings a scale holds each alone and not all in one vessel, with that scale.

    Lye is left out: it has a cup of its own in any case.
    """
    sums: dict[tuple[str, Scale], Mass] = {}
    for w in weighed:
        if w.fits and w.line.role is not Role.ALKALI:
            sums[w.line.phase, w.scale] = sums.get((w.line.phase, w.scale), NO_MASS) + w.mass
    for (phase, scale), together in sums.items():
        if vessel.holding(together) > scale.up_to:
            yield phase, scale
