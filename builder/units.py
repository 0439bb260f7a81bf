"""The one door to pint: units by name to exact factors, and back to the units that a sheet prints.

Only the factor of a unit comes from pint: its parser never sees a studio's text, since it reads `1 1/2 cups` as half a cup and
`3 fl oz` as femtolitre ounces. The registry is built on fractions (with decimals a quart is not exact). Spoons and cups have the
values of the US labelling rule 21 CFR 101.9(b)(5)(viii): 5, 15 and 240 mL.

Decided: pint's registry is built on fractions. Why: with decimals a quart is 9463529459999999999999999999/10^25.
"""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from pathlib import Path

from builder.cache import made_once
from builder.model.recipe.quantity import Temperature

# What a studio may write, folded, and pint's name for it.
MASS_UNITS = {
    "g": "gram", "gram": "gram", "grams": "gram", "gramme": "gram", "grammes": "gram",
    "mg": "milligram", "kg": "kilogram", "kilo": "kilogram", "kilos": "kilogram", "kilogram": "kilogram", "kilograms": "kilogram",
    "oz": "ounce", "ounce": "ounce", "ounces": "ounce", "lb": "pound", "lbs": "pound", "pound": "pound", "pounds": "pound",
}  # fmt: skip
# The word by which each of them is known, the first of its words above.
MASS_UNIT_OF = {word: next(first for first, other in MASS_UNITS.items() if other == unit) for word, unit in MASS_UNITS.items()}
VOLUME_UNITS = {
    "ml": "milliliter", "millilitre": "milliliter", "millilitres": "milliliter", "milliliter": "milliliter", "milliliters": "milliliter",
    "cl": "centiliter", "l": "liter", "litre": "liter", "litres": "liter", "liter": "liter", "liters": "liter",
    "fl oz": "fluid_ounce", "fluid ounce": "fluid_ounce", "fluid ounces": "fluid_ounce",
    "pint": "pint", "pints": "pint", "quart": "quart", "quarts": "quart", "gal": "gallon", "gallon": "gallon", "gallons": "gallon",
    "imperial fl oz": "imperial_fluid_ounce", "imperial pint": "imperial_pint", "imperial gallon": "imperial_gallon",
    "tsp": "label_teaspoon", "teaspoon": "label_teaspoon", "teaspoons": "label_teaspoon",
    "tbsp": "label_tablespoon", "tablespoon": "label_tablespoon", "tablespoons": "label_tablespoon",
    "cup": "label_cup", "cups": "label_cup",
}  # fmt: skip
LENGTH_UNITS = {"mm": "millimeter", "cm": "centimeter", "m": "meter", "in": "inch", "inch": "inch", "inches": "inch"}
TIME_UNITS = {
    "min": "minute", "minute": "minute", "minutes": "minute", "h": "hour", "hour": "hour", "hours": "hour",
    "day": "day", "days": "day",
}  # fmt: skip
TEMPERATURE_UNITS = {
    "degc": "degC", "°c": "degC", "celsius": "degC", "degf": "degF", "°f": "degF", "fahrenheit": "degF",
}  # fmt: skip

_HOUSEHOLD = ("label_teaspoon = 5 milliliter", "label_tablespoon = 15 milliliter", "label_cup = 240 milliliter")


# Each group of units with the unit that we reckon in.
_BASES = ((MASS_UNITS, "gram"), (VOLUME_UNITS, "milliliter"), (LENGTH_UNITS, "millimeter"), (TIME_UNITS, "minute"))


def _from_pint() -> dict[str, Fraction]:
    """Return every factor by pint's name of the unit."""
    from pint import UnitRegistry

    registry: UnitRegistry[Fraction] = UnitRegistry(non_int_type=Fraction)
    for definition in _HOUSEHOLD:
        registry.define(definition)
    return {unit: Fraction(registry.Quantity(Fraction(1), unit).m_as(base)) for units, base in _BASES for unit in units.values()}


@cache
def _factors() -> dict[str, Fraction]:
    """Return every factor, as kept of pint's or from pint itself, whose registry takes longer to build than a recipe to weigh."""
    return made_once(dict, Path(__file__), _from_pint)


def grams_in(unit: str) -> Fraction:
    """Return the grams in one of a unit of mass, such as `oz`: 28.349523125."""
    return _factors()[MASS_UNITS[unit]]


def is_metric(unit: str) -> bool:
    """Tell whether a unit of mass is one of the gram's family."""
    return MASS_UNITS[unit].endswith("gram")


def millilitres_in(unit: str) -> Fraction:
    """Return the millilitres in one of a unit of volume, such as `fl oz`: 29.5735295625."""
    return _factors()[VOLUME_UNITS[unit]]


def millimetres_in(unit: str) -> Fraction:
    """Return the millimetres in one of a unit of length."""
    return _factors()[LENGTH_UNITS[unit]]


def minutes_in(unit: str) -> Fraction:
    """Return the minutes in one of a unit of time."""
    return _factors()[TIME_UNITS[unit]]


def celsius(number: Fraction, unit: str) -> Fraction:
    """Return a temperature in degrees Celsius; exact, unlike a float or a Decimal offset conversion."""
    return number if TEMPERATURE_UNITS[unit] == "degC" else Temperature.of_fahrenheit(number).celsius
