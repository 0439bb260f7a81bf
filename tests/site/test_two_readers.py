"""Two readers of calendars agree on every file of every studio here: the library that writes them, and one from RFC 5545 alone.

The second takes each zone from the file itself. That the rules of the zones are right: IANA's time zone data, by the library `tzdata`.
"""

from datetime import UTC
from pathlib import Path
from zoneinfo import ZoneInfo

import icalendar
import pytest
from hypothesis import given
from hypothesis import strategies as st
from icalendar.cal.event import Event

from builder.compose.edition import Edition
from tests.calendar_reader import Component, moment, read_calendar
from tests.compose.conftest import read_edition, write_studio
from tests.compose.test_machines import changed
from tests.composing import composed
from tests.published import edition

KINDS = ("calendar", "calendar of a class", "calendar of a choice")
TEXTS = ("UID", "SUMMARY", "LOCATION", "DESCRIPTION")
# Three zones: rules of the north, of the south, where summer time runs over the turn of the year, and none.
ZONES = ("America/New_York", "Australia/Hobart", "Asia/Kolkata")
DATES = """dates:
  - {on: 2027-02-06 10:00, enrolled: 3}
  - {on: 2027-03-13 23:30, enrolled: 5}
  - {on: 2027-03-14 10:00, enrolled: 5}
  - {on: 2027-04-03 10:00, cancelled: "the hall; is, let", revision: 1}
  - {on: 2027-10-31 10:00}
  - {on: 2027-11-07 10:00}
"""


def agree(text: str) -> int:
    """Hold the two against each other, event by event, and return how many there are."""
    calendar, other = read_calendar(text.encode()), icalendar.Calendar.from_ical(text)
    events = [part for part in calendar.parts if part.name == "VEVENT"]
    theirs = [one for one in other.walk("VEVENT") if isinstance(one, Event)]
    assert len(events) == len(theirs)
    for one, their in zip(events, theirs, strict=True):
        assert [one.text(name) for name in TEXTS] == [str(their[name]) for name in TEXTS]
        assert (int(one.value("SEQUENCE")), one.value("STATUS")) == (their["SEQUENCE"], str(their["STATUS"]))
        for name in ("DTSTART", "DTEND", "DTSTAMP"):
            assert moment(calendar, one, name) == their.decoded(name).astimezone(UTC), (one.text("SUMMARY"), name)
    return len(events)


def test_on_every_calendar_of_the_example() -> None:
    texts = [document.html for kind in KINDS for document in composed(kind, edition())]
    counts = [agree(text) for text in texts]
    assert len(counts) > 30 and all(counts)


def with_zone(zone: str, folder: Path) -> Edition:
    files = changed()
    lesson_of = files["classes__first__class_yaml"]
    studio = {**files, "classes__first__class_yaml": lesson_of[: lesson_of.index("dates:")] + DATES}
    studio["studio_yaml"] = studio["studio_yaml"].replace("America/New_York", zone)
    return read_edition(write_studio(folder, **studio))


@pytest.mark.parametrize("zone", ZONES)
def test_on_both_sides_of_every_change_of_the_clock(zone: str, tmp_path: Path) -> None:
    (document,) = composed("calendar", with_zone(zone, tmp_path))
    assert agree(document.html) == 6
    calendar = read_calendar(document.html.encode())
    starts = [moment(calendar, one, "DTSTART").astimezone(ZoneInfo(zone)) for one in calendar.parts if one.name == "VEVENT"]
    assert [f"{one:%m-%d %H:%M}" for one in starts] == [
        "02-06 10:00",
        "03-13 23:30",
        "03-14 10:00",
        "04-03 10:00",
        "10-31 10:00",
        "11-07 10:00",
    ]


@given(
    st.text(st.characters(exclude_categories=["Cc", "Cs", "Zl", "Zp"]), min_size=1) | st.sampled_from(["a\\nb; c, d\\", "ß" * 80, "\\,;"])
)
def test_any_text_is_read_alike(text: str) -> None:
    """CAL-10 of the project: what a studio writes comes back from both readers."""
    event = icalendar.Event()
    event.add("SUMMARY", text)
    calendar = icalendar.Calendar()
    calendar.add_component(event)
    (read,) = read_calendar(calendar.to_ical()).parts
    assert read.text("SUMMARY") == text


@pytest.mark.parametrize(
    "wrong",
    [
        b"BEGIN:VCALENDAR\nEND:VCALENDAR\n",
        b"BEGIN:VCALENDAR\r\nSUMMARY\r\nEND:VCALENDAR\r\n",
        b"BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\nEND:VCALENDAR\r\n",
        b"BEGIN:VCALENDAR\r\nSUMMARY:" + b"a" * 80 + b"\r\nEND:VCALENDAR\r\n",
    ],
)
def test_the_second_reader_refuses_what_the_standard_does_not_allow(wrong: bytes) -> None:
    with pytest.raises(ValueError):
        read_calendar(wrong)


def test_the_second_reader_refuses_a_text_that_is_not_escaped() -> None:
    with pytest.raises(ValueError, match="escaped"):
        Component("VEVENT", [("SUMMARY", {}, "salts, scrub")]).text("SUMMARY")
