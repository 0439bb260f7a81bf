"""What is warm: a mass with its specific heat and its temperature; and how long a vessel takes to cool, as bounds."""

from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True)
class Warm:
    """So many grams at a temperature in degC, each of them taking `specific_heat` J for a degree."""

    grams: Fraction
    specific_heat: Fraction
    celsius: Fraction


@dataclass(frozen=True)
class Cooling:
    """From one temperature to another, in degC, in a room: at least and at most so many minutes. Neither end is a promise."""

    begins: Fraction
    ends: Fraction
    least: Fraction
    most: Fraction


@dataclass(frozen=True)
class Dissolving:
    """What the heat of dissolving brings lye to from water at the temperature of the room: `most` degC if none of it is lost.

    `least` is what an open vessel and slow stirring leave of it; `strength` is the hydroxide by weight in the solution.
    `near_boiling`: the most is so near to boiling that no figure is printed.
    """

    strength: Fraction
    least: Fraction
    most: Fraction
    near_boiling: bool


@dataclass(frozen=True)
class CoolsTo:
    """How long the lye, or the whole batch, takes to be cool enough: in the open, and in cold water. `what` is `lye` or `batch`."""

    what: str
    in_air: Cooling
    in_water: Cooling
