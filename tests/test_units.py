"""Unit factors against the published ones, and temperatures against the fixed points that define both scales."""

from fractions import Fraction
from pathlib import Path

import pytest
import yaml

from builder import units

PUBLISHED = yaml.safe_load((Path(__file__).parent / "authorities" / "units.yaml").read_text(encoding="utf-8"))


@pytest.mark.parametrize(("unit", "grams"), PUBLISHED["mass in grams"].items())
def test_mass_units_are_exact(unit, grams):
    assert units.grams_in(unit) == Fraction(grams)


@pytest.mark.parametrize(("unit", "millilitres"), PUBLISHED["volume in millilitres"].items())
def test_volume_units_are_exact(unit, millilitres):
    assert units.millilitres_in(unit) == Fraction(millilitres)


@pytest.mark.parametrize(("unit", "millimetres"), PUBLISHED["length in millimetres"].items())
def test_length_units_are_exact(unit, millimetres):
    assert units.millimetres_in(unit) == Fraction(millimetres)


@pytest.mark.parametrize(("celsius", "fahrenheit"), [(0, 32), (100, 212), (-40, -40), (37, Fraction("98.6"))])
def test_temperatures_at_fixed_points(celsius, fahrenheit):
    assert units.celsius(Fraction(fahrenheit), "degf") == celsius
    assert units.fahrenheit(Fraction(celsius)) == fahrenheit


def test_every_unit_a_studio_may_write_is_known():
    assert all(units.grams_in(unit) > 0 for unit in units.MASS_UNITS)
    assert all(units.millilitres_in(unit) > 0 for unit in units.VOLUME_UNITS)
    assert all(units.minutes_in(unit) > 0 for unit in units.TIME_UNITS)
