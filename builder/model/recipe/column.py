"""The lines of a batch, and the same as weighed on scales in one unit, with what they add up to."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from fractions import Fraction

from builder.model.lye.lye_result import LyeResult
from builder.model.place import NOWHERE, Place
from builder.model.recipe.ingredient import Ingredient, solution_name
from builder.model.recipe.quantity import Mass, WeighingUnit
from builder.model.studio import Scale

# The phase of what is in the lye.
LYE_PHASE = "lye"


class Role(StrEnum):
    """What a line is to the sums of a soap."""

    OIL = "oil"
    ALKALI = "alkali"
    LYE_WATER = "lye water"
    LATER_LIQUID = "later liquid"
    OTHER = "other"


@dataclass(frozen=True)
class Line:
    """One ingredient of a batch before rounding; `share` is its part of the whole batch, 0 while that is not known.

    `strength` is set for an alkali that is weighed as a ready-mixed solution: its hydroxide by weight, as a fraction of one.
    """

    ingredient: Ingredient
    phase: str
    role: Role
    exact: Mass
    share: Fraction = Fraction(0)
    after_the_cook: bool = False
    strength: Fraction | None = None
    place: Place = field(default=NOWHERE, compare=False)

    @property
    def name(self) -> str:
        """Return the name of what is weighed: the ingredient, or the solution of it, which must never be taken for the solid."""
        if self.strength is None:
            return self.ingredient.name
        return solution_name(self.ingredient.name, self.strength)


@dataclass(frozen=True)
class Weighed:
    """A line as it will be weighed: a whole number of the scale's divisions. `fits` is False where no scale can hold it."""

    line: Line
    mass: Mass
    scale: Scale
    fits: bool = True


@dataclass(frozen=True)
class TopUp:
    """A phase with water that is heated: what it weighs before, to which hot water brings it back afterwards.

    `lost` is what is expected to steam away, from the studio's own weighing (`measured`); None where the studio has not weighed it. `fits`
    is False where no scale can hold it in its pot.
    """

    phase: str
    weight: Mass
    lost: Mass | None
    measured: str
    fits: bool


@dataclass(frozen=True)
class Column:
    """One column of weighings, in grams or ounces, with its totals and its lye.

    `phase_totals` are by phase name. `lye` is None where the recipe has none. `one_at_a_time` are the phases of
    which a scale does not hold at once all that is weighed on it.
    """

    unit: WeighingUnit
    weighed: tuple[Weighed, ...]
    total: Mass
    oils: Mass
    alkali: Mass
    lye_water: Mass
    phase_totals: Mapping[str, Mass]
    lye: LyeResult | None
    top_ups: tuple[TopUp, ...] = ()
    one_at_a_time: tuple[tuple[str, Scale], ...] = ()
