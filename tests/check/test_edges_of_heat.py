"""Heat, flash points and melting points at the very figure, and the time that cooling takes: the worked times are those of test_heat.py."""

from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest

from builder.check.formula.heat import find_what_is_heated_too_far
from builder.model.place import Name
from builder.model.recipe.quantity import Temperature
from builder.model.recipe.recipe import Choice, Recipe
from tests.check.test_at_the_edge import levels
from tests.check.test_seen_from_elsewhere import studio_of
from tests.making import card, phase, recipe, share
from tests.reckon.test_guests import STUDIO
from tests.test_findings import check

HOT, WARM, HARD = card("quick", flash_point=(60, 65)), card("tender", add_below=(40, 45)), card("hard", melting_point=(62, 65))
BURNT = card("burnt", heat_at_most=70)


def found_of(formula: Recipe) -> list[str]:
    shelf = {**STUDIO.ingredients, **{one.key: one for one in (HOT, WARM, HARD, BURNT)}}
    return levels(find_what_is_heated_too_far(replace(STUDIO, ingredients=shelf, recipes={"one": formula})))


def heated(name: str, celsius: str, *, beside: str = "sea salt") -> Recipe:
    return recipe(phase("warm", {beside: share(90), name: share(10)}, heat_to=Temperature(Fraction(celsius))))


# At its flash point the vapour burns (the definition of it: the lowest temperature at which it does); what is added below 45 °C bears that.
@pytest.mark.parametrize(
    ("name", "celsius", "found"),
    [
        ("quick", "59.9", []),
        ("quick", "60", ["heated-to-flash-point caution"]),
        ("tender", "45", []),
        ("tender", "45.1", ["added-too-hot caution"]),
        ("burnt", "70", []),
        ("burnt", "70.1", ["heated-too-far caution"]),
        ("hard", "62", []),
        ("hard", "61.9", ["not-melted caution"]),
    ],
)
def test_each_figure_of_heat_holds_what_stands_at_it(name: str, celsius: str, found: list[str]) -> None:
    assert found_of(heated(name, celsius)) == found


# Nothing asks for more than 85 °C, but a wax that melts higher, and then for 10 K above that (common practice, no source).
@pytest.mark.parametrize(
    ("fat", "name", "celsius", "found"),
    [
        ("sunflower oil", "sea salt", "85", []),
        ("sunflower oil", "sea salt", "85.1", ["heated-too-far caution"]),
        ("water", "sea salt", "95", []),
        ("sunflower oil", "wax", "100", []),
        ("sunflower oil", "wax", "100.1", ["heated-too-far caution"]),
    ],
)
def test_fat_is_heated_to_what_it_needs(fat: str, name: str, celsius: str, found: list[str]) -> None:
    wax = card("wax", melting_point=(85, 90))
    shelf = {**STUDIO.ingredients, "wax": wax}
    here = replace(STUDIO, ingredients=shelf, recipes={"one": heated(name, celsius, beside=fat)})
    assert levels(find_what_is_heated_too_far(here)) == found


@pytest.mark.parametrize(("celsius", "cool", "beside", "found"), [
    ("59.9", False, "sea salt", 0),
    ("60", False, "sea salt", 1),
    ("60", True, "sea salt", 0),
    ("60", False, "water", 0),  # an emulsion, which is portioned cold
])  # fmt: skip
def test_what_students_stir_in_is_as_hot_as_the_coolest_phase(celsius: str, beside: str, found: int, *, cool: bool) -> None:
    lines = {beside: share(50)}
    second = phase("second", lines) if cool else phase("second", lines, heat_to=Temperature(Fraction(celsius)))
    phases = (phase("first", {"sea salt": share(50)}, heat_to=Temperature(Fraction(70))), second)
    assert found_of(recipe(*phases, choices=(Choice("scent", (Name("quick"),), share(1)),))) == ["heated-to-flash-point caution"] * found


# By hand, for 791 g of a lotion from 70 to 40 °C in a room of 21 °C, 3.9 J/(g K), a pot ten times as wide as deep, 20 W/(m2 K): it is
# 0.216 m wide with a surface of 0.0513 m2, k = 20 x 0.0513 / (791 x 3.9) x 60 = 0.01995 a minute, and ln(49 / 19) / k = 47.5 minutes.
EMULSION, LESSON, MIXED = "cooled-too-soon--emulsion", "classes/one-lotion/lesson.md", "## Mix and fill (together, 30 min)"
HEATED, COOL = "3. Heat both to 70 °C, and hold them there.", "2. Wait until it is below 40 °C."


@pytest.mark.parametrize(
    ("changes", "found"),
    [
        (((MIXED, "## Mix and fill (together, 47 min)"),), True),
        (((MIXED, "## Mix and fill (together, 48 min)"),), False),
        # What is only held back from boiling has not been asked to cool.
        (((HEATED, f"{HEATED} Keep them below 70 °C."),), True),
        # Once it has been told of, it is cool.
        (((COOL, f"{COOL} Keep it below 40 °C."),), True),
        # In the part that heats, all of that part is there to cool in.
        (((HEATED, f"{HEATED}\n4. Wait until it is below 40 °C."), ("melt (together, 30 min)", "melt (together, 48 min)")), False),
        (((HEATED, f"{HEATED}\n4. Wait until it is below 40 °C."), ("melt (together, 30 min)", "melt (together, 47 min)")), True),
    ],
)
def test_a_lotion_has_the_least_time_that_cooling_takes(tmp_path: Path, changes: tuple[tuple[str, str], ...], *, found: bool) -> None:
    err = check(studio_of(EMULSION, tmp_path, LESSON, *changes))[2]
    assert err.count("cooled-too-soon (caution)") == found


# By hand, with 0.426 of lye to one of oils, at least (0.426 x 2.7 x 60 + 2.24 x 40) / (0.426 x 2.7 + 2.24) = 46.8 °C.
@pytest.mark.parametrize(
    ("says", "found"),
    [
        ("The lye is at 60 °C and the oils are at 40 °C.", "Lye at 60 °C and oils at 40 °C come to 46 °C"),
        ("The oils are at 40 °C and the lye is at 60 °C.", "Lye at 60 °C and oils at 40 °C come to 46 °C"),
        ("The oils are at 40 °C. The lye is at 60 °C / 140 °F.", "Lye at 60 °C and oils at 40 °C come to 46 °C"),
        # Which of two it is in the end, nobody knows; nor what the others are at.
        ("The oils are at 40 °C. The lye falls from 90 °C to 60 °C.", ""),
        ("The lye is at 60 °C. The oils come from 60 °C to 40 °C.", ""),
        ("The lye is at 60 °C.", ""),
        ("The oils are at 40 °C.", ""),
        ("The lye is below 60 °C and the oils are at 40 °C.", ""),
    ],
)
def test_lye_and_oils_meet_at_what_is_said_of_each(tmp_path: Path, says: str, found: str) -> None:
    changes = ("Check that the oils and the lye are both at 40 °C / 104 °F.", says)
    err = check(studio_of("mixed-too-warm", tmp_path, "classes/one-bar/lesson.md", changes))[2]
    assert found in err and ("mixed-too-warm" in err) is bool(found)


# By hand: 30 parts of coconut oil at T and 70 of olive oil at 21 °C come to 0.3 T + 14.7 °C; 40 °C less 3 K for two thermometers are 37 °C,
# which takes 74.3 °C. For 40 °C it takes (40 - 14.7) / 0.3 = 84.3 °C, and for 45 °C it takes 101 °C.
@pytest.mark.parametrize(
    ("celsius", "says", "found"),
    [
        (74, 40, "For 40 °C the melted fat would have to be at 85 °C."),
        (74, 45, "For 45 °C the melted fat would have to be at 101 °C."),
        (75, 40, ""),
        # 0.3 x 71 + 14.7 = 36 °C, which is 3 K below 39 °C; from 70 °C it is 35.7 °C, and for 39 °C it takes 81 °C.
        (71, 39, ""),
        (70, 39, "For 39 °C the melted fat would have to be at 81 °C."),
    ],
)
def test_what_is_mixed_is_within_two_thermometers_of_what_is_said(tmp_path: Path, celsius: int, says: int, found: str) -> None:
    changes = (("and melt it.", f"and heat it to {celsius} °C."), ("The pot is now at 40 °C.", f"The pot is now at {says} °C."))
    err = check(studio_of("mixed-too-cool", tmp_path, "classes/one-bar/lesson.md", *changes))[2]
    assert found in err and ("mixed-too-cool" in err) is bool(found)
    # At 36.9 °C coconut oil has not begun to set: it melts at 26 °C at the most.
    assert "If all sets that may" not in err


# By hand: 800 g of soap hold about 240 g of lye of 32 % as hydroxide. It warms to 55 °C at the least, and in the widest pot, 0.145 m wide
# with 0.0231 m2, k = 20 x 0.0231 / (240 x 3.5) x 60 = 0.033 a minute: about 27 minutes to 35 °C, from where it is made to where it is used.
@pytest.mark.parametrize(("making", "using", "found"), [(5, 21, True), (5, 24, False), (8, 18, True), (10, 19, False)])
def test_lye_has_the_least_time_that_cooling_takes(tmp_path: Path, making: int, using: int, *, found: bool) -> None:
    changes = (("(teacher, 5 min)", f"(teacher, {making} min)"), ("(teacher, 15 min)", f"(teacher, {using} min)"))
    assert ("cooled-too-soon" in check(studio_of("cooled-too-soon", tmp_path, "classes/one-bar/lesson.md", *changes))[2]) is found


# The same where the lye is made and poured in one part.
@pytest.mark.parametrize(("minutes", "found"), [(26, True), (29, False)])
def test_lye_that_is_made_and_used_in_one_part_has_the_time_of_that_part(tmp_path: Path, minutes: int, *, found: bool) -> None:
    changes = (
        ("(teacher, 5 min)", f"(teacher, {minutes} min)"),
        ("## Make soap (teacher, 15 min)\n\n1. Weigh", "3. Weigh"),
        ("2. Pour the lye", "4. Pour the lye"),
    )
    assert ("cooled-too-soon" in check(studio_of("cooled-too-soon", tmp_path, "classes/one-bar/lesson.md", *changes))[2]) is found
