"""A class to its batches: for whom each is made, how often, and what all of them need; the clock."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date, datetime
from fractions import Fraction
from typing import Any

import pytest

from builder.model.dates.studio_class import BatchFor, ClassDate
from builder.model.recipe.column import Role
from builder.model.recipe.quantity import sum_masses
from builder.model.recipe.size import ContainersSize, PeopleSize
from builder.model.teaching.class_plan import ClassPlan, MadeProduct, PlannedBatch
from builder.reckon import dates_to_prepare, reckon_classes, reckon_recipe
from builder.reckon.teaching.classes import reckon_class
from tests.making import grams, share, sure
from tests.studios import sound_studio

STUDIO, FINDINGS = sound_studio()
LOTION = STUDIO.classes["one-lotion"]


def lotion(students: int, group_size: int = 1, **make: Any) -> ClassPlan:
    made = replace(LOTION.makes[0], **make)
    return reckon_class(
        STUDIO, replace(LOTION, makes=(made,), group_size=group_size), ClassDate(datetime(2027, 3, 6, 10), enrolled=students)
    )[0]


def people_size(one: PlannedBatch) -> PeopleSize:
    assert isinstance(one.batch.size, PeopleSize)
    return one.batch.size


def test_the_studio_is_sound() -> None:
    assert FINDINGS == []


@pytest.mark.parametrize(
    ("batch_for", "students", "size", "spare", "plan"),
    [
        (BatchFor.CLASS, 9, 1, 1, [("class", 10, 1)]),
        (BatchFor.GROUP, 9, 2, 0, [("group", 2, 5)]),
        (BatchFor.GROUP, 8, 2, 3, [("group", 2, 4), ("teacher", 3, 1)]),
        (BatchFor.STUDENT, 7, 1, 0, [("student", 1, 7)]),
        (BatchFor.STUDENT, 7, 3, 2, [("student", 1, 7), ("teacher", 2, 1)]),
    ],
)
def test_who_makes_which_batch(batch_for: BatchFor, students: int, size: int, spare: int, plan: Sequence[tuple[str, int, int]]) -> None:
    sheet = lotion(students, size, batch_for=batch_for, spare=spare)
    batches = sheet.made[0].batches
    assert [(one.purpose, people_size(one).counts[0][1], one.copies) for one in batches] == plan
    assert sheet.made[0].containers[0].in_all == students + spare
    assert sum(one.copies * one.batch.own.portions.yields for one in batches) >= sheet.made[0].containers[0].in_all


def test_the_last_group_may_be_smaller() -> None:
    sheet = lotion(9, 2, batch_for=BatchFor.GROUP)
    assert (sheet.groups, sheet.last_group) == (5, 1)
    assert lotion(8, 2).last_group == 2


# Every container that a batch fills is somebody's, spare, or left over by a smaller last group.
@pytest.mark.parametrize("students", range(1, 9))
@pytest.mark.parametrize("group_size", [1, 2, 3, 4])
def test_every_container_of_the_groups_is_accounted_for(students: int, group_size: int) -> None:
    sheet = lotion(students, group_size, batch_for=BatchFor.GROUP, each_student=2, spare=0)
    (group,) = sheet.made[0].batches
    assert group.batch.own.portions.yields * group.copies == sheet.made[0].containers[0].in_all + sheet.unclaimed(2)


def test_what_is_needed_is_what_all_batches_weigh() -> None:
    made = lotion(9, 2, batch_for=BatchFor.GROUP, spare=2, demo=grams(50), left_in_the_pot=grams(20)).made[0]
    for need in made.needed:
        weighed = [w.mass * one.copies for one in made.batches for w in one.batch.grams.weighed if w.line.name == need.ingredient]
        assert need.mass == sum_masses(weighed)
    total = sum_masses(need.mass for need in made.needed)
    assert total == sum_masses(one.batch.grams.total * one.copies for one in made.batches)
    assert people_size(made.batches[1]).demo == grams(50)


def test_twice_the_students_take_about_twice_as_much() -> None:
    one, two = (sum_masses(need.mass for need in lotion(number, spare=0).made[0].needed) for number in (6, 12))
    assert abs((two - one * 2).grams) < 1


def test_a_full_class_where_there_is_no_date() -> None:
    assert reckon_class(STUDIO, LOTION)[0].students == LOTION.seats


def test_only_dates_to_come_with_people_are_prepared() -> None:
    days = [ClassDate(datetime(2027, 1, day, 10), enrolled) for day, enrolled in ((5, 3), (9, 0), (20, 4))]
    studio_class = replace(LOTION, dates=tuple(days))
    assert [when.on.day for when in dates_to_prepare(studio_class, date(2027, 1, 5))] == [5, 20]
    assert [when.on.day for when in dates_to_prepare(studio_class, date(2027, 1, 6))] == [20]
    sheets = reckon_classes(STUDIO, [studio_class], on=date(2028, 1, 1))
    assert [(sheet.date, sheet.students) for sheet in sheets] == [(None, LOTION.seats)]


def test_the_clock_counts_what_is_done_in_class() -> None:
    sheet = reckon_class(STUDIO, LOTION)[0]
    assert [(timed.number, timed.begins, timed.ends) for timed in sheet.timeline] == [(1, 0, 30), (2, 30, 60)]
    assert sheet.ahead == ()


def ready_mixed(strength: int = 35, copies: BatchFor = BatchFor.GROUP, students: int = 8) -> MadeProduct:
    recipe = STUDIO.recipes["plain-bar"]
    plan = replace(sure(recipe.lye), ready_mixed=share(strength))
    studio = replace(STUDIO, recipes={**STUDIO.recipes, "plain-bar": replace(recipe, lye=plan)})
    bar = STUDIO.classes["one-bar"]
    made = replace(bar.makes[0], batch_for=copies, spare=2)
    return reckon_class(studio, replace(bar, makes=(made,), group_size=2), ClassDate(datetime(2027, 3, 6), students))[0].made[0]


# The solid may be so little that a finer scale holds it than holds the solution, in whose vessel the water is weighed.
@pytest.mark.parametrize("students", [2, 4, 8])
def test_all_that_a_ready_mixed_lye_is_made_of_can_be_read_on_the_scale_that_holds_it(students: int) -> None:
    (ahead,) = ready_mixed(students=students).ready_mixed
    held = ahead.solution.grams * Fraction("1.4") + 10
    division = min(one.division.grams for one in STUDIO.profile.scales if one.up_to.grams >= held)
    weights = [mass.grams for _, mass in (*ahead.alkalis, *ahead.liquids)]
    assert all(weight % division == 0 for weight in weights)


def test_ready_mixed_lye_for_all_batches_is_mixed_from_solid() -> None:
    made = ready_mixed()
    (ahead,) = made.ready_mixed
    ((_, solid),), ((_, water),) = ahead.alkalis, ahead.liquids
    solution = sum_masses(w.mass * one.copies for one in made.batches for w in one.batch.grams.weighed if w.line.role is Role.ALKALI)
    assert ahead.times == 1  # One vessel for all batches.
    assert ahead.solution == solid + water
    assert abs(ahead.solution.grams - solution.grams * Fraction("1.1")) <= Fraction("0.05")
    solution = ahead.solution
    purity = sure(made.batch.grams.lye).purities[0].typical
    assert solid.grams * purity <= solution.grams * Fraction("0.35")
    assert float(solid.grams * purity / solution.grams) == pytest.approx(0.35, abs=2e-4)
    assert all("solution, 35 %" in w.line.name for w in made.batch.grams.weighed if w.line.role is Role.ALKALI)


def test_at_home_the_lye_is_mixed_from_the_solid() -> None:
    home = ready_mixed().home[0].batch
    assert [line.strength for line in home.lines if line.role is Role.ALKALI] == [None]
    assert sure(home.grams.lye).concentration == pytest.approx(0.33, abs=0.001)
    assert [column.unit for column in home.columns] == ["g", "oz"]


# Grams and ounces are two weighings of one batch: what is rounded differs, what is meant does not.
def test_the_unit_system_does_not_change_the_superfat() -> None:
    for column in ready_mixed().home[0].batch.columns:
        assert float(sure(column.lye).superfat) == pytest.approx(0.08, abs=0.003)


def test_one_recipe_at_one_size() -> None:
    sheet = reckon_recipe(STUDIO, STUDIO.recipes["plain-lotion"], ContainersSize(5))
    assert [column.unit for column in sheet.columns] == ["g"]
    assert sheet.own.portions.yields == 5
