"""What a roster comes to where a class is not simple: packages, several kinds of container, two times on a day, people who wait."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime

from builder.model.dates.studio_class import ClassDate, StudioClass
from builder.model.place import Name
from builder.model.recipe.quantity import Mass
from builder.model.recipe.recipe import Fill
from builder.model.recipe.size import ToFill
from builder.model.roster.roster import Roster, RosterRow
from builder.model.teaching.class_plan import ClassPlan, MadeProduct, OptionTotal
from builder.reckon.teaching.classes import reckon_class
from tests.making import grams
from tests.reckon.test_guests import LOTION, QUICK, STUDIO, at, no_spare, people

DAY = datetime(2027, 6, 5)
# Three of six have chosen lavender, one cedarwood, and two nothing yet.
SIX = [("lavender oil",)] * 3 + [("cedarwood essential oil",)] + [("",)] * 2


def in_fill(units: int, rows: Sequence[tuple[str, ...]], each_student: int = 1, *also: ToFill) -> MadeProduct:
    """Work out the lotion for as many students as there are rows, without spare containers."""
    recipe = STUDIO.recipes["meadow-lotion"]
    recipes = {**STUDIO.recipes, recipe.key: replace(recipe, fill=replace(recipe.fill, units=units))}
    makes = (replace(QUICK.makes[0], each_student=each_student, spare=0, also=also),)
    when = ClassDate(DAY, len(rows))
    a_class = replace(QUICK, makes=makes, dates=(when,))
    studio = replace(STUDIO, recipes=recipes, rosters={a_class.key: people(["scent"], rows)})
    (made,) = reckon_class(studio, a_class, when)[0].made
    return made


def option(made: MadeProduct, name: str) -> OptionTotal:
    return next(one for one in made.choices[0].options if one.option == name)


def most(made: MadeProduct, name: str, filling: int = 0) -> Mass:
    """Return what has to be ready of an option of the scent for one container."""
    each = made.containers[filling].filling.doses[0].each
    return next(one for one in each if one.option == name).to_have_ready


def test_what_is_chosen_is_expected_too_and_what_is_open_on_top_of_it() -> None:
    made = in_fill(1, SIX)
    lavender, cedarwood = (option(made, f"{name} essential oil") for name in ("Lavender", "Cedarwood"))
    assert (lavender.chosen, cedarwood.chosen, made.choices[0].open, made.choices[0].portions) == (3, 1, 2, 6)
    # Two open portions over lavender, cedarwood and no scent: one more of each at most.
    assert lavender.expected == most(made, lavender.option) * (3 + 1)
    assert cedarwood.expected == most(made, cedarwood.option) * (1 + 1)
    assert lavender.worst == most(made, lavender.option) * 6


def test_a_package_counts_with_all_that_is_in_it() -> None:
    made = in_fill(2, SIX, 4)
    assert [jar.units for jar in made.containers[0].jars] == [2] * 12
    lavender = option(made, "Lavender essential oil")
    assert (lavender.chosen, made.choices[0].open, made.choices[0].portions) == (3 * 4, 2 * 4, 6 * 4)
    assert lavender.for_chosen == most(made, lavender.option) * 12


def test_what_other_containers_need_is_added_to_the_same_option() -> None:
    small = ToFill(Fill(Name("2 fl oz bottle"), grams(50)), 2, 1)
    made = in_fill(1, SIX, 1, small)
    assert [one.in_all for one in made.containers] == [6, 13]
    assert made.choices[0].portions == 19
    for name, students in (("Lavender essential oil", 3), ("Cedarwood essential oil", 1)):
        found, own, other = option(made, name), most(made, name), most(made, name, 1)
        assert own > other
        assert found.chosen == students * 3
        assert found.for_chosen == own * students + other * 2 * students
        assert found.worst == own * 6 + other * 13


def test_what_a_container_is_too_small_for_stays_open_on_its_labels() -> None:
    tiny = ToFill(Fill(Name("2 fl oz bottle"), grams(1)), 1, 0)
    made = in_fill(1, SIX, 1, tiny)
    own, small = made.containers
    lavender = "Lavender essential oil"
    assert lavender in own.filling.doses[0].offered and lavender not in small.filling.doses[0].offered
    assert [dict(jar.variant.chosen)["scent"] for jar in own.jars[:3]] == [lavender] * 3
    assert all(jar.is_open for jar in small.jars)
    assert lavender not in {dict(jar.variant.chosen)["scent"] for jar in small.jars}


def rows_at(*rows: tuple[str, datetime, bool]) -> Roster:
    return Roster((), tuple(RosterRow(Name(name), at, None, "", {}, waiting=waits) for name, at, waits in rows))


def on_two_times(roster: Roster) -> tuple[ClassPlan, ...]:
    dates = tuple(ClassDate(DAY.replace(hour=hour), 3) for hour in (10, 14))
    a_class: StudioClass = replace(QUICK, dates=dates)
    return reckon_class(replace(STUDIO, rosters={a_class.key: roster}), a_class, *dates)


def test_on_a_day_with_two_times_everybody_comes_to_their_own() -> None:
    morning, afternoon = DAY.replace(hour=10), DAY.replace(hour=14)
    plans = on_two_times(rows_at(("Ada", afternoon, False), ("Bo", morning, False), ("Cy", afternoon, False), ("Di", DAY, False)))
    # Of Di the time is not known, so that she is nowhere; a finding asks for it.
    assert [[guest.name for guest in plan.guests] for plan in plans] == [["Bo"], ["Ada", "Cy"]]


def test_who_is_written_down_for_an_hour_without_a_class_comes_to_no_other() -> None:
    date = ClassDate(DAY.replace(hour=10), 3)
    a_class = replace(QUICK, dates=(date,))
    roster = rows_at(("Ada", DAY, False), ("Bo", DAY.replace(hour=12), False))
    (plan,) = reckon_class(replace(STUDIO, rosters={a_class.key: roster}), a_class, date)
    assert [guest.name for guest in plan.guests] == ["Ada"]


def test_who_waits_for_a_seat_has_no_jar_and_is_on_a_list_of_their_own() -> None:
    morning = DAY.replace(hour=10)
    plan, other = on_two_times(rows_at(("Ada", morning, True), ("Bo", morning, False), ("Cy", morning, True)))
    assert [guest.name for guest in plan.guests] == ["Bo"]
    assert [guest.name for guest in plan.waiting] == ["Ada", "Cy"]
    assert (other.guests, other.waiting) == ((), ())
    assert [jar.guest and jar.guest.name for jar in plan.made[0].containers[0].jars[:3]] == ["Bo", None, None]


def test_a_date_with_staff_of_its_own_has_those() -> None:
    usual, more = ClassDate(DAY, 3), ClassDate(DAY.replace(day=6), 3, staff=(2, 3))
    first, second = reckon_class(STUDIO, replace(QUICK, dates=(usual, more)), usual, more)
    assert first.staff == (QUICK.teachers, QUICK.assistants) != second.staff == (2, 3)
    assert second.supervision.staff == 5


def test_what_the_last_group_does_not_fill_is_what_it_lacks_in_people() -> None:
    lab = replace(STUDIO.classes["soap-lab-in-pairs"], group_size=5)
    plan = at(no_spare(lab), 7)
    assert (plan.groups, plan.last_group) == (2, 2)
    assert (plan.unclaimed(2), plan.unclaimed(1)) == (6, 3)
    assert at(no_spare(LOTION), 0).unclaimed(2) == 0
