"""Quantities that refuse to be mixed up, held as exact fractions.

A number goes from text to an exact fraction and never passes through a binary float; a third stays a third until
`reckon/recipe/rounding.py` rounds it to a scale. Fractions rather than decimals, since lye is rounded down and a quotient cut to
28 digits has already been rounded once.

Decided: quantities are fractions, those of the standard library. Why: those of gmpy2 were tried, and a check took a tenth less, which is
too little for a compiled library and a second kind of whole number beside Python's.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal, overload

Number = Fraction | int
# The unit in which a scale reads, and with it a column of weighings.
WeighingUnit = Literal["g", "oz"]


@dataclass(frozen=True, order=True)
class Mass:
    """A mass in grams."""

    grams: Fraction

    def __add__(self, other: Mass) -> Mass:
        return Mass(self.grams + other.grams)

    def __sub__(self, other: Mass) -> Mass:
        return Mass(self.grams - other.grams)

    def __mul__(self, factor: Number) -> Mass:
        return Mass(self.grams * factor)

    __rmul__ = __mul__

    @overload
    def __truediv__(self, other: Mass) -> Fraction: ...
    @overload
    def __truediv__(self, other: Number) -> Mass: ...
    def __truediv__(self, other: Mass | Number) -> Fraction | Mass:
        if isinstance(other, Mass):
            return self.grams / other.grams
        return Mass(self.grams / other)

    def __bool__(self) -> bool:
        return self.grams != 0


NO_MASS = Mass(Fraction(0))


def sum_masses(masses: Iterable[Mass]) -> Mass:
    """Add masses; the sum of none is 0 g."""
    return sum(masses, start=NO_MASS)


@dataclass(frozen=True, order=True)
class Volume:
    """A volume in millilitres."""

    millilitres: Fraction

    def __mul__(self, factor: Number) -> Volume:
        return Volume(self.millilitres * factor)


@dataclass(frozen=True, order=True)
class Density:
    """A density in grams per millilitre."""

    grams_per_millilitre: Fraction

    def mass_of(self, volume: Volume) -> Mass:
        """Return the mass of a volume."""
        return Mass(volume.millilitres * self.grams_per_millilitre)


@dataclass(frozen=True, order=True)
class Share:
    """A part of a whole as a fraction of one: 3 % is 3/100."""

    fraction: Fraction


@dataclass(frozen=True, order=True)
class Parts:
    """A number of parts by weight."""

    number: Fraction


@dataclass(frozen=True, order=True)
class Drops:
    """A number of drops; a mass only through the measured mass of a drop."""

    number: Fraction


@dataclass(frozen=True, order=True)
class Count:
    """A number of things: containers, bars, cups."""

    number: int
    what: str = ""


@dataclass(frozen=True)
class Rest:
    """Whatever brings the total to 100 %."""


@dataclass(frozen=True, order=True)
class Temperature:
    """A temperature in degrees Celsius."""

    celsius: Fraction

    @classmethod
    def of_fahrenheit(cls, degrees: Fraction) -> Temperature:
        """Return it by its degrees Fahrenheit; exact."""
        return cls((degrees - 32) * 5 / 9)

    @property
    def fahrenheit(self) -> Fraction:
        """Return its degrees Fahrenheit; exact."""
        return self.celsius * 9 / 5 + 32


@dataclass(frozen=True, order=True)
class Duration:
    """A length of time in minutes."""

    minutes: Fraction


@dataclass(frozen=True, order=True)
class Length:
    """A length in millimetres."""

    millimetres: Fraction


@dataclass(frozen=True)
class Box:
    """The inside of a rectangular mould, each edge in millimetres."""

    edges: tuple[Length, Length, Length]

    @property
    def volume(self) -> Volume:
        """Return the volume; 1 mL is 1000 cubic millimetres."""
        a, b, c = (edge.millimetres for edge in self.edges)
        return Volume(a * b * c / 1000)


Amount = Mass | Volume | Share | Parts | Drops | Rest
