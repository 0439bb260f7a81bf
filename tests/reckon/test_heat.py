"""Heat against worked values: mixing, setting, dissolving, cooling.

The worked values are those of the studio's reference of heat and of constants, recomputed by hand; beside each stands how it is known.
The heats of dissolving are those of the CRC Handbook (table after Parker, NSRDS-NBS 2, 1965), read.
"""

from collections.abc import Sequence
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.model.formula.warmth import Warm
from builder.model.recipe.figure import Figure, Known
from builder.reckon.formula.heat import cooling, minutes_to_cool, mixed, rate, surface, warmed_by_setting
from tests.making import SOURCE, Number, grams, sure

FAT, LYE, LOTION, WATER = Fraction(2), Fraction("3.5"), Fraction("3.9"), Fraction("4.184")


def warm(weight: int, celsius: int, specific_heat: Number = FAT) -> Warm:
    return Warm(Fraction(str(weight)), Fraction(str(specific_heat)), Fraction(str(celsius)))


def figure(low: Number, high: Number | None = None) -> Figure:
    return Figure(Fraction(str(low)), Fraction(str(low if high is None else high)), "1", SOURCE, "here", Known.READ)


CONSTANTS = {
    "room": figure(21),
    "heat that a bare vessel gives off": figure(6, 20),
    "heat that a vessel in cold water gives off": figure(200, 500),
    "depth of a vessel to its width": figure("0.1", "0.5"),
}

# Each row: the parts, and the temperature worked out by hand (computed: sum(m c T) / sum(m c)).
MIXTURES = [
    ([warm(165, 52), warm(335, 21)], "31.2"),  # 15 615 / 500
    ([warm(165, 52, "2.1"), warm(335, 21, "1.95")], "31.7"),
    ([warm(213, 35, LYE), warm(500, 40)], "37.9"),
    ([warm(213, 60, LYE), warm(500, 45)], "51.4"),  # the plain mean by weight would say 49.5
    ([warm(700, 75, WATER), warm(250, 75, "2.1"), warm(50, 21, WATER)], "71.9"),  # cold additions that are mostly water
]


@pytest.mark.parametrize(("parts", "expected"), MIXTURES)
def test_mixing_gives_the_worked_temperature(parts: Sequence[Warm], expected: str) -> None:
    assert float(mixed(parts)) == pytest.approx(float(expected), abs=0.06)


def test_cocoa_butter_just_melts_in_warm_oil() -> None:
    # 100 g of cocoa butter at 21 degC needs 100 * (2.0 * 13 + 150) J = 17 600 J to melt at 34 degC.
    # From 400 g of oil at 60 degC it ends at 37.2 degC.
    melted = [warm(100, 21), warm(400, 60)]
    assert float(warmed_by_setting(melted, Fraction(-100), Fraction(150))) == pytest.approx(37.2, abs=0.05)


def test_a_fat_that_sets_gives_back_at_most_its_heat_of_fusion() -> None:
    # 165 g of coconut oil, 105 J/g (Kahwaji and White 2019, read): 17.3 K more, at most 48.6 degC.
    assert float(warmed_by_setting([warm(165, 52), warm(335, 21)], Fraction(165), Fraction(105))) == pytest.approx(48.6, abs=0.05)


@pytest.mark.parametrize(
    ("weight", "width_cm", "given_off", "expected"),
    # Worked table: minutes from 75 to 45 degC in a room of 21 degC, specific heat 3.9, wetted wall and open top.
    [(600, 10, 20, 50), (600, 10, 12, 83), (600, 10, 6, 165), (2000, 20, 20, 74), (2000, 20, 12, 123), (2000, 20, 6, 246)],
)
def test_a_vessel_cools_in_the_worked_time(weight: int, width_cm: int, given_off: int, expected: int) -> None:
    depth = weight / (3.14159265 * width_cm**2 / 4) / width_cm
    k = rate(weight, 3.9, surface(weight, depth), given_off)
    assert minutes_to_cool(75, 45, 21, k) == pytest.approx(expected, rel=0.015)


def test_one_measured_pair_gives_the_worked_time() -> None:
    # From 75 to 61 degC in 30 min in a room of 21: k = ln(54/40)/30 = 0.0100 per min, and 45 degC after 81 min.
    assert minutes_to_cool(75, 45, 21, 0.0100) == pytest.approx(81, abs=0.5)


def test_the_bounds_hold_what_the_worked_vessels_do() -> None:
    bounds = cooling(grams(600), LOTION, (Fraction(75), Fraction(75)), Fraction(45), CONSTANTS)
    assert sure(bounds).least <= 50
    assert sure(bounds).most >= 165


def test_cold_water_cuts_the_time_by_ten() -> None:
    in_air = cooling(grams(600), LYE, (Fraction(85), Fraction(85)), Fraction(40), CONSTANTS)
    in_water = cooling(grams(600), LYE, (Fraction(85), Fraction(85)), Fraction(40), CONSTANTS, in_water=True)
    assert sure(in_water).least < sure(in_air).least / 10
    assert sure(in_water).most < sure(in_air).most / 10


def test_nothing_cools_below_the_room() -> None:
    assert cooling(grams(600), LYE, (Fraction(85), Fraction(85)), Fraction(21), CONSTANTS) is None
    assert cooling(grams(600), LYE, (Fraction(30), Fraction(30)), Fraction(40), CONSTANTS) is None


def test_what_may_be_cool_already_takes_no_time_at_the_least() -> None:
    for begins, takes_time in ((30, False), (40, False), (41, True)):
        bounds = sure(cooling(grams(600), LOTION, (Fraction(begins), Fraction(75)), Fraction(40), CONSTANTS))
        assert (bounds.least > 0) is takes_time and bounds.most > 165


def test_nothing_cools_that_is_cool_or_is_nothing() -> None:
    assert cooling(grams(600), LYE, (Fraction(30), Fraction(40)), Fraction(40), CONSTANTS) is None
    assert cooling(grams(0), LYE, (Fraction(85), Fraction(85)), Fraction(40), CONSTANTS) is None
    # What may be cool enough from the beginning needs no time at the least.
    assert sure(cooling(grams(600), LYE, (Fraction(30), Fraction(41)), Fraction(40), CONSTANTS)).least == 0


WARM = st.builds(warm, st.integers(1, 5000), st.integers(-5, 100), st.sampled_from([2, "3.5", "3.9", "4.184"]))


@given(st.lists(WARM, min_size=1, max_size=6))
def test_a_mixture_lies_between_its_coldest_and_its_hottest_part(parts: Sequence[Warm]) -> None:
    assert min(one.celsius for one in parts) <= mixed(parts) <= max(one.celsius for one in parts)


@given(st.integers(1, 20000), st.integers(41, 100), st.integers(22, 40))
def test_more_takes_longer_to_cool_and_the_least_is_less_than_the_most(weight: int, begins: int, ends: int) -> None:
    one, two = (cooling(grams(m), LYE, (Fraction(begins), Fraction(begins)), Fraction(ends), CONSTANTS) for m in (weight, 2 * weight))
    assert sure(one).least < sure(two).least
    assert sure(one).most < sure(two).most
    assert sure(one).least < sure(one).most
