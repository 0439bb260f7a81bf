"""Percentages that make a whole, and what a container holds by the density that the studio measured: at the very edge, by hand."""

from dataclasses import replace
from fractions import Fraction

import pytest

from builder.check.keeping.alcohol import least_alcohol
from builder.check.recipe.fill_and_container import find_fills_that_do_not_fit
from builder.check.recipe.shares_not_whole import find_shares_not_whole
from builder.model.place import Name
from builder.model.recipe.quantity import Density, Rest, Share, Volume
from builder.model.recipe.recipe import AmountsAs, Fill, MeasuredDensity
from tests.check.test_at_the_edge import levels, mixed
from tests.making import card, grams, phase, recipe, share
from tests.reckon.test_guests import STUDIO


@pytest.mark.parametrize(
    ("percent", "rests", "found"),
    [
        (["60", "40"], 0, []),
        (["60", "39.9"], 0, ["shares-not-whole stop"]),
        (["60", "40.1"], 0, ["shares-not-whole stop"]),
        (["60", "39.9"], 1, []),
        (["60", "40"], 1, ["rest-not-positive stop"]),
        (["60", "40.1"], 1, ["rest-not-positive stop"]),
        (["60"], 2, ["rest-twice stop"]),
        (["60", "40"], 2, ["rest-not-positive stop", "rest-twice stop"]),
        ([], 1, []),
    ],
)
def test_percentages_make_a_whole_or_leave_a_rest(percent: list[str], rests: int, found: list[str]) -> None:
    lines: dict[str, Share | Rest] = {f"part {number}": share(one) for number, one in enumerate(percent)}
    lines |= {f"rest {number}": Rest() for number in range(rests)}
    of = recipe(phase("all", lines))
    assert sorted(levels(find_shares_not_whole(replace(STUDIO, recipes={"one": of})))) == found


# Fats, butters and waxes are the whole; all else is percent of them on top.
@pytest.mark.parametrize(("olive", "wax", "clay", "found"), [("90", "10", "3", 0), ("90", "9", "1", 1), ("100", "1", "0", 1)])
def test_oils_make_a_whole_with_butters_and_waxes(olive: str, wax: str, clay: str, found: int) -> None:
    lines = {"olive oil": share(olive), "beeswax": share(wax), "kaolin clay": share(clay)}
    of = recipe(phase("all", lines), amounts_as=AmountsAs.PERCENT_OF_OILS)
    assert levels(find_shares_not_whole(replace(STUDIO, recipes={"one": of}))) == ["shares-not-whole stop"] * found


# Of 100 mL a tenth stays empty: 90 mL of 1.02 g/mL are 91.8 g.
@pytest.mark.parametrize(
    ("weight", "density", "measured", "found"),
    [
        ("91.8", "1.02", "", []),
        ("91.9", "1.02", "", ["fill-does-not-fit stop"]),
        ("91.9", "1.02", "one filled and weighed", []),
        ("91.8", "", "", ["fill-not-measured caution"]),
    ],
)
def test_a_jar_holds_what_its_volume_weighs(weight: str, density: str, measured: str, found: list[str]) -> None:
    jar = next(one for one in STUDIO.containers.values() if one.capacity)
    ours = replace(jar, name="our jar", capacity=Volume(Fraction(100)), head_space=share(10), inside=None)
    known = MeasuredDensity(Density(Fraction(density)), "weighed") if density else None
    of = replace(mixed(), fill=Fill(Name("our jar"), grams(weight), measured=measured), density=known)
    here = replace(STUDIO, containers={"our jar": ours}, recipes={"one": of}, classes={})
    assert levels(find_fills_that_do_not_fit(here)) == found


# Half of it is alcohol with 4 % of water: 48 %, whatever the other half is, and be it nothing that is known.
@pytest.mark.parametrize("other", ["water", "no such thing"])
def test_what_has_no_card_holds_no_alcohol(other: str) -> None:
    here = replace(STUDIO, ingredients={**STUDIO.ingredients, "alcohol": card("alcohol", water_content=4)})
    assert least_alcohol(recipe(phase("all", {"alcohol": share(50), other: share(50)})), here) == Fraction("0.48")
    assert least_alcohol(recipe(phase("all", {"alcohol": share(50), other: Rest()})), here) == Fraction("0.48")
