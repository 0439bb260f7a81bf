"""What the site says of a date: free seats, the waiting list, a move, a cancellation."""

from dataclasses import replace
from datetime import datetime

import pytest

from builder.compose.edition import Edition
from builder.compose.teaching.class_facts import view_date
from builder.model.dates.studio_class import ClassDate

ON = datetime(2027, 3, 6, 10)


@pytest.mark.parametrize(
    ("date", "seats", "state", "note"),
    [
        (ClassDate(ON, 7), "1 seat left", "free", ""),
        (ClassDate(ON, 8), "Full", "full", ""),
        (ClassDate(ON, 8, waiting=3), "Full, 3 on the waiting list", "full", ""),
        (ClassDate(ON, 7, waiting=1), "1 seat left, 1 on the waiting list", "free", ""),
        (ClassDate(ON, 0, cancelled=""), "Cancelled", "cancelled", ""),
        (ClassDate(ON, 0, cancelled="the oven is cold"), "Cancelled", "cancelled", "The oven is cold"),
        (ClassDate(ON, 8, moved_from=(datetime(2027, 2, 27, 9, 30),)), "Full", "full", "Moved from Saturday, February 27, 2027, 9:30 AM"),
        (ClassDate(ON, 8, moved_from=(datetime(2027, 2, 27, 10), datetime(2027, 3, 6, 9))), "Full", "full", "Moved from 9:00 AM"),
        (ClassDate(ON, 8, moved_from=(datetime(2027, 2, 27, 10),), cancelled=""), "Cancelled", "cancelled", ""),
    ],
)
def test_what_a_date_says(edition: Edition, date: ClassDate, seats: str, state: str, note: str) -> None:
    view = view_date(edition, replace(edition.plans[0].studio_class, seats=8), date)
    assert (view.seats.replace("\u00a0", " "), view.state, view.note.replace("\u00a0", " ")) == (seats, state, note)
    assert (view.machine, view.day) == ("2027-03-06T10:00", "Saturday, March 6, 2027")
