"""Dates, counts, people and times at the number from which on something is found: what just fits is met in silence."""

from dataclasses import replace
from datetime import date, datetime, timedelta
from fractions import Fraction
from pathlib import Path

import pytest

from builder.check.dates.dates_announced import find_announcements_amiss
from builder.check.dates.dates_changed import find_unclear_changes
from builder.check.dates.dates_out_of_order import find_dates_out_of_order
from builder.check.dates.dates_published import find_dates_that_differ
from builder.check.label.label_sheets import find_unfit_label_sheets
from builder.check.roster.roster_people import find_roster_people_out_of_place
from builder.check.supplies.inventory_counted_ahead import find_counts_ahead
from builder.check.teaching.time_does_not_fit import find_times_that_do_not_fit
from builder.model.dates.published_date import PublishedDate
from builder.model.dates.studio_class import ClassDate, StudioClass
from builder.model.label.label_sheet import LabelWishes
from builder.model.place import NOWHERE, Name, Place
from builder.model.recipe.quantity import Duration
from builder.model.roster.roster import Roster, RosterRow
from builder.model.studio import Studio
from builder.model.supplies.inventory import InventoryEntry
from builder.model.supplies.supply import SupplyKind
from builder.model.teaching.lesson import Part, Who
from tests.check.test_at_the_edge import levels
from tests.check.test_seen_from_elsewhere import studio_of
from tests.making import grams, told
from tests.reckon.test_guests import LOTION, STUDIO
from tests.test_findings import check

DAY = datetime(2027, 6, 5, 10)


def having(studio_class: StudioClass, roster: Roster | None = None) -> Studio:
    """Return the example studio with one class alone."""
    return replace(STUDIO, classes={"one": studio_class}, rosters={"one": roster} if roster else {})


@pytest.mark.parametrize(("enrolled", "found"), [(8, []), (9, ["enrolled-over-seats stop"])])
def test_every_seat_may_be_taken(enrolled: int, found: list[str]) -> None:
    one = replace(LOTION, seats=8, dates=(ClassDate(DAY, enrolled), ClassDate(DAY + timedelta(days=1))))
    assert levels(find_dates_out_of_order(having(one))) == found


@pytest.mark.parametrize(
    ("moves", "cancelled", "revision", "found"),
    [(1, None, 1, 0), (1, None, 0, 1), (2, "", 3, 0), (2, "", 2, 1), (0, None, 0, 0), (0, "", 0, 1), (1, None, 5, 0)],
)
def test_a_revision_has_risen_with_each_change(moves: int, cancelled: str | None, revision: int, found: int) -> None:
    before = tuple(DAY - timedelta(days=days) for days in range(1, moves + 1))
    date = ClassDate(DAY, moved_from=before, cancelled=cancelled, revision=revision)
    assert levels(find_unclear_changes(having(replace(LOTION, dates=(date,))))) == ["revision-too-low stop"] * found


@pytest.mark.parametrize(
    ("days", "revision", "found"),
    [
        ([], 0, []),
        ([], 2, []),
        ([0], 0, []),
        ([1], 0, ["announced-ahead caution"]),
        ([-30], 1, ["announced-too-seldom caution"]),
        ([-30, -30], 1, []),
        ([-30, -31], 1, ["announced-out-of-order caution"]),
        ([-30, 0], 0, []),
        ([-30, -20], 2, ["announced-too-seldom caution"]),
        ([1], 1, ["announced-ahead caution", "announced-too-seldom caution"]),
    ],
)
def test_each_revision_has_a_day_that_has_come(days: list[int], revision: int, found: list[str]) -> None:
    on = ClassDate(DAY, revision=revision, announced=tuple(DAY.date() + timedelta(days=one - 60) for one in days))
    studio = having(replace(LOTION, dates=(on,)))
    assert levels(find_announcements_amiss(studio, DAY.date() - timedelta(days=60))) == found
    # Nothing is said of a date that is past, and calendars have none.
    assert levels(find_announcements_amiss(studio, DAY.date() + timedelta(days=1))) == []


# RFC 5545, 3.8.7.4: the sequence number of an event rises with each change, so that a calendar takes the new one.
@pytest.mark.parametrize(
    ("hours", "cancelled", "revision", "found"),
    [(0, None, 3, 0), (0, None, 4, 0), (0, None, 2, 1), (2, None, 4, 0), (2, None, 3, 1), (0, "", 4, 0), (0, "", 3, 1)],
)
def test_a_published_date_changes_with_its_revision_alone(hours: int, cancelled: str | None, revision: int, found: int) -> None:
    shown = PublishedDate("one", DAY, DAY, cancelled=False, revision=3)
    moved = (DAY,) if hours else ()
    date = ClassDate(DAY + timedelta(hours=hours), moved_from=moved, cancelled=cancelled, revision=revision)
    here = replace(having(replace(LOTION, dates=(date,))), published=(shown,))
    assert levels(find_dates_that_differ(here)) == ["revision-not-raised stop"] * found


@pytest.mark.parametrize(("days", "found"), [(0, []), (-1, []), (1, ["inventory-counted-ahead caution"])])
def test_what_is_counted_today_is_counted(days: int, found: list[str]) -> None:
    today = date(2027, 1, 1)
    counted = InventoryEntry(SupplyKind.INGREDIENT, Name("olive oil"), grams(100), "100 g", today + timedelta(days=days))
    assert levels(find_counts_ahead(replace(STUDIO, inventory=(counted,)), today)) == found


def person(letter: str, age: int | None = None, *, waiting: bool = False) -> RosterRow:
    return RosterRow(Name(f"Person {letter}"), DAY, age, "", {}, waiting=waiting)


@pytest.mark.parametrize(
    ("listed", "waits", "found"),
    [
        (6, 2, []),
        (7, 2, ["roster-over-enrolled caution"]),
        (8, 2, ["roster-over-enrolled caution"]),  # as many as there are seats
        (9, 2, ["roster-over-seats stop"]),
        (6, 3, ["roster-over-waiting caution"]),
        (5, 1, []),
    ],
)
def test_a_roster_lists_no_more_than_come_and_wait(listed: int, waits: int, found: list[str]) -> None:
    rows = (*(person(f"{number}") for number in range(listed)), *(person(f"w{number}", waiting=True) for number in range(waits)))
    one = replace(LOTION, seats=8, dates=(ClassDate(DAY, 6, waiting=2),))
    assert levels(find_roster_people_out_of_place(having(one, Roster((), rows)))) == found


@pytest.mark.parametrize(("age", "found"), [(14, []), (13, ["roster-below-youngest stop"]), (None, [])])
def test_the_youngest_may_be_as_young_as_the_class_allows(age: int | None, found: list[str]) -> None:
    one = replace(LOTION, youngest=14, dates=(ClassDate(DAY, 6),))
    assert levels(find_roster_people_out_of_place(having(one, Roster((), (person("A", age),))))) == found


def part(who: Who, minutes: int, *, in_the_wait: bool = False) -> Part:
    return Part(f"{who} {minutes}", who, minutes, (), in_the_wait=in_the_wait)


# The class takes an hour: half an hour of making, a wait of half an hour, and what is laid into the wait.
@pytest.mark.parametrize(
    ("made", "wait", "laid", "found"),
    [
        (30, 30, 30, []),
        (30, 30, 29, []),
        (30, 30, 31, ["class-too-long stop", "wait-too-short caution"]),
        (29, 30, 31, ["wait-too-short caution"]),
        (31, 30, 30, ["class-too-long stop"]),
        (29, 30, 30, ["class-too-short caution"]),
    ],
)
def test_parts_take_just_as_long_as_the_class_and_the_wait(made: int, wait: int, laid: int, found: list[str]) -> None:
    parts = (part(Who.TOGETHER, made), part(Who.WAITING, wait), part(Who.TOGETHER, laid, in_the_wait=True))
    one = replace(LOTION, length=Duration(Fraction(60)), lesson=replace(LOTION.lesson, parts=parts))
    assert sorted(levels(find_times_that_do_not_fit(having(one)))) == found


WAIT, TOGETHER = (Who.WAITING, False), (Who.TOGETHER, False)
LAID = (Who.TOGETHER, True)


@pytest.mark.parametrize(
    ("parts", "missing"),
    [
        ([WAIT, LAID], []),
        ([WAIT, LAID, LAID], []),
        ([LAID], [0]),
        ([LAID, LAID], [0, 1]),
        ([TOGETHER, LAID], [1]),
        ([WAIT, TOGETHER, LAID], [2]),
        ([WAIT, LAID, TOGETHER, LAID], [3]),
    ],
)
def test_what_is_laid_into_a_wait_stands_behind_one(parts: list[tuple[Who, bool]], missing: list[int]) -> None:
    run = tuple(replace(part(who, 5, in_the_wait=laid), place=Place("lesson.md", at)) for at, (who, laid) in enumerate(parts))
    one = replace(LOTION, length=Duration(Fraction(60)), lesson=replace(LOTION.lesson, parts=run))
    found = told(find_times_that_do_not_fit(having(one)))
    assert [finding.place.line for finding in found if finding.name == "wait-missing"] == missing


# By hand: 60 minutes are an hour, 75 an hour and a quarter; what stands in headings has no hour of nothing and no minutes of nothing.
@pytest.mark.parametrize(
    ("minutes", "said"),
    [
        (60, "The parts take 1 h, which is 30 min more than"),
        (95, "The parts take 1 h 35 min, which is 1 h 5 min more than"),
        (31, "The parts take 31 min, which is 1 min more than"),
        (29, "The parts take 29 min and leave 1 min of the class"),
        (30, ""),
    ],
)
def test_times_are_told_as_headings_write_them(minutes: int, said: str) -> None:
    one = replace(LOTION, length=Duration(Fraction(30)), lesson=replace(LOTION.lesson, parts=(part(Who.TOGETHER, minutes),)))
    assert [said in finding.wrong for finding in told(find_times_that_do_not_fit(having(one)))] == [True] * bool(said)


@pytest.mark.parametrize("sheet_of_class", [True, False])
@pytest.mark.parametrize("more", [0, 1])
def test_the_last_label_of_the_sheet_that_is_asked_for_may_be_the_first(more: int, *, sheet_of_class: bool) -> None:
    sheet = next(iter(STUDIO.label_sheets.values()))
    wishes = LabelWishes(sheet=sheet.name, place=NOWHERE)
    one = replace(
        LOTION, labels=wishes if sheet_of_class else LabelWishes(), dates=(ClassDate(DAY, 6, first_label=sheet.positions + more),)
    )
    here = having(one)
    here = replace(here, profile=replace(here.profile, labels=LabelWishes() if sheet_of_class else wishes))
    assert levels(find_unfit_label_sheets(here)) == ["label-position-off-the-sheet stop"] * more


# Six weeks from January 23 are over on March 6, the day of the class.
@pytest.mark.parametrize(("made", "found"), [("2027-01-23", False), ("2027-01-24", True)])
def test_bars_may_have_cured_on_the_day_itself(tmp_path: Path, made: str, *, found: bool) -> None:
    changes = ("made on: 2027-02-13", f"made on: {made}")
    err = check(studio_of("earlier-batch-too-young", tmp_path, "classes/one-bar/class.yaml", changes))[2]
    assert ("earlier-batch-too-young" in err) is found
