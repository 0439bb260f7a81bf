"""What a batch adds towards a limit, at least and at most."""

from dataclasses import dataclass
from fractions import Fraction

from builder.model.dose.limit import Limit
from builder.model.recipe.column import Line
from builder.model.recipe.ingredient import Ingredient
from builder.model.recipe.quantity import WeighingUnit


@dataclass(frozen=True)
class Counted:
    """What one card adds towards a limit, at least and at most, as shares of the product or of its oils.

    `line` is where the batch holds it; None for what students add, whose choice is `what`.
    """

    card: Ingredient
    line: Line | None
    what: str
    least: Fraction
    most: Fraction


@dataclass(frozen=True)
class TowardsLimit:
    """What a batch, with the students' choices at their worst, adds towards one limit; the most first. `unit` is that of the weighings."""

    limit: Limit
    own_law: bool
    counted: tuple[Counted, ...]
    unit: WeighingUnit = "g"

    @property
    def least(self) -> Fraction:
        """Return what counts for certain."""
        return sum((one.least for one in self.counted), Fraction(0))

    @property
    def most(self) -> Fraction:
        """Return what may count."""
        return sum((one.most for one in self.counted), Fraction(0))
