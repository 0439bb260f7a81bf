"""One person, seat or student is spoken of as one, and two as two: in every finding that counts them (ordinary English)."""

from dataclasses import replace
from datetime import datetime

import pytest

from builder.check.batches import batches_of
from builder.check.dates.dates_out_of_order import find_dates_out_of_order
from builder.check.dates.dates_people import find_people_to_tell
from builder.check.roster.roster_people import find_roster_people_out_of_place
from builder.model.dates.studio_class import ClassDate
from builder.model.place import Name, Place
from builder.model.roster.roster import About, Roster, RosterRow
from builder.reckon.teaching.classes import reckon_class
from builder.words.plain_number import how_many
from tests.making import told
from tests.reckon.test_guests import LOTION, STUDIO

DAY = datetime(2027, 6, 5, 10)


@pytest.mark.parametrize(("number", "said"), [(0, "0 people wait"), (1, "1 person waits"), (2, "2 people wait")])
def test_what_has_a_word_of_its_own_for_many_has_that(number: int, said: str) -> None:
    assert how_many(number, "person waits", "people wait") == said
    assert how_many(number, "seat") == f"{number} seat" + "s" * (number != 1)


@pytest.mark.parametrize(("students", "said"), [(1, "for 1 student"), (6, "for 6 students")])
def test_the_batch_of_a_class_is_named_with_those_who_come(students: int, said: str) -> None:
    plan = reckon_class(STUDIO, LOTION, ClassDate(DAY, students, (1, 0)))[0]
    names = [one.name for one in batches_of(plan, STUDIO)]
    assert names[0] == f"the batch of the class {said}" and names[1].startswith("the home batch of ")
    # Of a batch for each student nobody has to know how many there are.
    each = STUDIO.classes["lotion-from-the-jug"]
    plan = reckon_class(STUDIO, each, ClassDate(DAY, students, (1, 0)))[0]
    assert next(iter(batches_of(plan, STUDIO))).name == "the batch of each student"


@pytest.mark.parametrize(
    ("enrolled", "seats", "said"), [(2, 1, "2 people are enrolled for 1 seat."), (9, 8, "9 people are enrolled for 8 seats.")]
)
def test_who_is_enrolled_beyond_the_seats(enrolled: int, seats: int, said: str) -> None:
    one = replace(LOTION, seats=seats, dates=(ClassDate(DAY, enrolled),))
    assert said in [found.wrong for found in told(find_dates_out_of_order(replace(STUDIO, classes={"one": one})))]


def listed(number: int, *, waiting: bool = False) -> Roster:
    rows = tuple(
        RosterRow(Name(f"Person {at}"), None, None, "", {}, waiting=waiting, place=Place("roster.csv", at + 2)) for at in range(number)
    )
    return Roster((), rows, about_people=(About.NAME,))


@pytest.mark.parametrize(
    ("roster", "seats", "enrolled", "said"),
    [
        (listed(2), 1, 1, "2 people are listed on 2027-06-05 10:00 for 1 seat."),
        (listed(9), 8, 8, "9 people are listed on 2027-06-05 10:00 for 8 seats."),
        (listed(2), 8, 1, "2 people are listed on 2027-06-05 10:00, and batches are made only for the 1 who is enrolled in class.yaml."),
        (listed(3), 8, 2, "3 people are listed on 2027-06-05 10:00, and batches are made only for the 2 who are enrolled in class.yaml."),
        (listed(1), 8, 0, "1 person is listed on 2027-06-05 10:00, and batches are made only for the 0 who are enrolled in class.yaml."),
        (listed(1, waiting=True), 8, 0, "1 person is marked as waiting on 2027-06-05 10:00"),
        (listed(2, waiting=True), 8, 0, "2 people are marked as waiting on 2027-06-05 10:00"),
    ],
)
def test_who_is_listed_beyond_seats_and_batches(roster: Roster, seats: int, enrolled: int, said: str) -> None:
    one = replace(LOTION, seats=seats, dates=(ClassDate(DAY, enrolled),))
    here = replace(STUDIO, classes={"one": one}, rosters={"one": roster})
    (found,) = told(find_roster_people_out_of_place(here))
    assert found.wrong.startswith(said)


@pytest.mark.parametrize(("count", "said"), [(1, "1 person is enrolled or waiting."), (2, "2 people are enrolled or waiting.")])
def test_who_is_to_be_told_that_a_date_is_cancelled(count: int, said: str) -> None:
    one = replace(LOTION, dates=(ClassDate(DAY, count, cancelled=""),))
    (found,) = told(find_people_to_tell(replace(STUDIO, classes={"one": one}, rosters={})))
    assert said in found.wrong
