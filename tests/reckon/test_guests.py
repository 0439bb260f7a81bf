"""What choices come to for a class: by the roster the sum over its rows, otherwise an even share, and the worst if all take the same."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date, datetime
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.model.dates.studio_class import ClassDate, StudioClass
from builder.model.place import Name
from builder.model.recipe.quantity import NO_MASS, Mass
from builder.model.recipe.size import ToFill
from builder.model.roster.roster import Roster, RosterRow
from builder.model.teaching.class_plan import ClassPlan
from builder.reckon import reckon_classes
from builder.reckon.teaching.classes import reckon_class
from builder.words.fold import fold
from tests.studios import example_studio

STUDIO, _ = example_studio()
LOTION, PARTY = STUDIO.classes["lotion-from-scratch"], STUDIO.classes["salts-and-scrub-party"]
# Nothing but the lotion of that class, in class: quick to work out again and again.
QUICK = replace(LOTION, makes=(replace(LOTION.makes[0], at_home=()),))


def at(studio_class: StudioClass, students: int, roster: Roster | None = None) -> ClassPlan:
    when = ClassDate(datetime(2027, 6, 5, 10), students)
    studio = replace(STUDIO, rosters={studio_class.key: roster} if roster else {})
    return reckon_class(studio, replace(studio_class, dates=(when,)), when)[0]


def no_spare(studio_class: StudioClass) -> StudioClass:
    return replace(studio_class, makes=tuple(replace(make, spare=0) for make in studio_class.makes))


def people(columns: Sequence[str], rows: Sequence[tuple[str, ...]]) -> Roster:
    return Roster(
        tuple(Name(column) for column in columns),
        tuple(
            RosterRow(Name(f"Person {number}"), None, None, "", {column: Name(cell) for column, cell in zip(columns, cells, strict=True)})
            for number, cells in enumerate(rows)
        ),
    )


@pytest.mark.parametrize("studio_class", [LOTION, PARTY], ids=lambda one: one.key)
def test_twice_as_many_students_need_twice_as_much(studio_class: StudioClass) -> None:
    once, twice = at(no_spare(studio_class), 5), at(no_spare(studio_class), 10)
    pairs = [
        (one, two)
        for first, second in zip(once.made, twice.made, strict=True)
        for total, other in zip(first.choices, second.choices, strict=True)
        for one, two in zip(total.options, other.options, strict=True)
    ]
    assert len(pairs) > 2
    assert all(one.worst and two.worst == one.worst * 2 for one, two in pairs)


CELLS = st.sampled_from(["lavender essential oil", "lavender oil", "Cedarwood essential oil", "no scent", "none", ""])


@given(st.lists(st.tuples(CELLS, st.sampled_from(["mica", "no colour", ""])), min_size=1, max_size=12))
def test_what_was_chosen_is_the_sum_over_the_rows(rows: Sequence[tuple[str, str]]) -> None:
    sheet = at(QUICK, 12, people(["scent", "meadow-lotion colour"], rows))
    (lotion,) = sheet.made
    for number, total in enumerate(lotion.choices):
        most = {fold(one.option): one.weight for one in lotion.batch.own.doses[number].each}
        alias = {"lavender oil": "lavender essential oil"}
        taken = [alias.get(fold(row[number]), fold(row[number])) for row in rows]
        for option in total.options:
            mine = [most[cell] for cell in taken if cell == fold(option.option)]
            assert option.chosen == len(mine)
            assert option.for_chosen == sum(mine, start=NO_MASS)
        assert total.left_out == sum(cell.startswith("no") for cell in taken)
        assert sum(option.chosen for option in total.options) + total.left_out + total.open == total.portions == 14


def test_without_a_roster_the_portions_fall_evenly_on_what_is_offered() -> None:
    sheet = at(no_spare(LOTION), 9)
    scent = sheet.made[0].choices[0]
    # Nine portions over lavender, cedarwood and no scent: three of each.
    assert [option.expected for option in scent.options] == [option.worst * Fraction(1, 3) for option in scent.options]
    assert (scent.open, scent.left_out, sheet.guests) == (9, 0, ())


# By hand: of nine bottles and 18 small ones lavender, cedarwood and no scent have three and six, and at the worst all 27 are of one. Who
# has chosen has done so for one bottle and two small ones.
def test_what_is_filled_in_two_sizes_is_chosen_for_both() -> None:
    make = QUICK.makes[0]
    fill = STUDIO.recipes[make.recipe.text].fill
    small = ToFill(replace(fill, weight=Mass(fill.weight.grams / 2)), 2, 0)
    both = no_spare(replace(QUICK, makes=(replace(make, also=(small,)),)))
    (lotion,) = at(both, 9).made
    scent, (large, little) = lotion.choices[0], (one.filling.doses[0].each for one in lotion.containers)
    assert (scent.portions, scent.open, scent.left_out) == (27, 27, 0)
    for option, one, two in zip(scent.options, large, little, strict=True):
        assert (option.chosen, option.for_chosen) == (0, NO_MASS)
        assert option.expected == one.to_have_ready * 3 + two.to_have_ready * 6
        assert option.worst == one.to_have_ready * 9 + two.to_have_ready * 18
    (listed,) = at(both, 9, people(["scent"], [("lavender essential oil",)] * 3 + [("no scent",)])).made
    lavender = listed.choices[0].options[0]
    assert (lavender.chosen, lavender.for_chosen) == (9, large[0].to_have_ready * 3 + little[0].to_have_ready * 6)
    assert (listed.choices[0].left_out, listed.choices[0].open) == (3, 15)


def test_where_all_have_chosen_nothing_more_is_expected() -> None:
    rows = [("lavender essential oil", "mica")] * 4 + [("no scent", "no colour")] * 2
    (lotion,) = at(no_spare(QUICK), 6, people(["scent", "meadow-lotion colour"], rows)).made
    for choice in lotion.choices:
        assert choice.open == 0
        assert [option.expected for option in choice.options] == [option.for_chosen for option in choice.options]


def test_the_rosters_of_the_example_reach_their_dates() -> None:
    sheets = reckon_classes(STUDIO, [LOTION, PARTY], on=date(2027, 1, 2))
    assert [len(sheet.guests) for sheet in sheets] == [9, 12, 9, 0, 0]
    first = sheets[0].guests[1]
    assert first.chosen == {("meadow-lotion", "scent"): "Cedarwood essential oil", ("meadow-lotion", "colour"): None}
    assert all(sheet.without_names().guests == () for sheet in sheets)
