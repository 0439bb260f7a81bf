"""Temperatures against the fixed points that define both scales; the published factors of units stand in `cases/units.csv`."""

from fractions import Fraction

import pytest

from builder import units
from builder.model.recipe.quantity import Temperature


@pytest.mark.parametrize(("celsius", "fahrenheit"), [(0, 32), (100, 212), (-40, -40), (37, Fraction("98.6"))])
def test_temperatures_at_fixed_points(celsius: int, fahrenheit: int | Fraction) -> None:
    assert units.celsius(Fraction(fahrenheit), "degf") == celsius
    assert Temperature(Fraction(celsius)).fahrenheit == fahrenheit


def test_every_unit_a_studio_may_write_is_known() -> None:
    assert all(units.grams_in(unit) > 0 for unit in units.MASS_UNITS)
    assert all(units.millilitres_in(unit) > 0 for unit in units.VOLUME_UNITS)
    assert all(units.minutes_in(unit) > 0 for unit in units.TIME_UNITS)
