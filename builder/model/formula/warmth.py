"""What is warm: a mass with its specific heat and its temperature; and how long a vessel takes to cool, as bounds."""

from dataclasses import dataclass, field
from enum import StrEnum
from fractions import Fraction

from builder.model.place import NOWHERE, Place


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


class Cools(StrEnum):
    """What has to cool."""

    LYE = "lye"
    BATCH = "batch"


@dataclass(frozen=True)
class CoolsTo:
    """How long the lye, or the whole batch, takes to be cool enough: in the open, and in cold water."""

    what: Cools
    in_air: Cooling
    in_water: Cooling


@dataclass(frozen=True)
class MixedTooCool:
    """Cool oils poured into melted fats: what a step says that comes of it, and what does, in degC.

    `hot` and `cold` are in grams. `low` and `high` are what mixing gives, `set` the most it can be if what may set does; the melted fats
    would have to be at `needed`.
    """

    says: Fraction
    hot: Fraction
    cold: Fraction
    low: Fraction
    high: Fraction
    set: Fraction
    needed: Fraction
    place: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True)
class MixedTooWarm:
    """Lye at `lye` degC poured into oils at `oils` degC: what a step says that the pot is at, and the `least` that mixing gives."""

    says: Fraction
    lye: Fraction
    oils: Fraction
    least: Fraction
    place: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True)
class CooledTooSoon:
    """A step that wants the lye or the batch (`what`) at `ends` degC, `given` minutes at most after it was hot; it takes the `least`."""

    what: Cools
    ends: Fraction
    given: int
    least: Fraction
    in_water: bool
    place: Place = field(default=NOWHERE, compare=False)
