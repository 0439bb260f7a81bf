"""One date said in every way in which the studio says it: page, data for search engines, calendar, sheets. All must agree.

Amounts, steps, cautions and labels: `test_agree_sheets.py`.

The expected values are what `class.yaml` and `studio.yaml` of the example say, read here as text; of the sheets the PDFs are read back.
"""

import json
import re
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

import icalendar
import pytest
import yaml
from bs4 import Tag
from icalendar.cal.event import Event

from tests.published import EXAMPLE, published, sheet_text, sheets, soup, squeeze

ZONE = ZoneInfo("America/New_York")
CLASSES = sorted(path.parent.name for path in EXAMPLE.glob("classes/*/class.yaml"))
OF_STUDIO: dict[str, Any] = yaml.load((EXAMPLE / "studio.yaml").read_text(encoding="utf-8"), yaml.CBaseLoader)
# In the words of the page, of the sheets, and of the calendar.
FORMATS = {
    "hands-on": "Hands-on",
    "demo": "Demonstration",
    "demo with hands-on parts": "Demonstration with hands-on parts",
}


def of_studio(key: str) -> dict[str, Any]:
    """Read class.yaml as plain text: no value is taken from the program."""
    read: dict[str, Any] = yaml.load((EXAMPLE / "classes" / key / "class.yaml").read_text(encoding="utf-8"), yaml.CBaseLoader)
    return read


def starts(key: str) -> list[datetime]:
    """Return the dates that are still to come and take place."""
    dates = [one for one in of_studio(key)["dates"] if "cancelled" not in one]
    return sorted(datetime.fromisoformat(one["on"]) for one in dates if one["on"] > "2027-01-02")


def length(key: str) -> timedelta:
    hours = re.search(r"([\d.]+) h", of_studio(key)["length"])
    minutes = re.search(r"([\d.]+) min", of_studio(key)["length"])
    return timedelta(hours=float(hours[1]) if hours else 0, minutes=float(minutes[1]) if minutes else 0)


def page_of(key: str) -> Any:
    return soup(published()[0] / f"site/classes/{key}.html")


def words_of(within: Any, selector: str = "") -> str:
    """Return the words of the one part of a page that a selector finds."""
    (part,) = within.select(selector) if selector else (within,)
    return squeeze(part.get_text(" "))


def data_of(key: str) -> dict[str, Any]:
    script = page_of(key).find("script", type="application/ld+json")
    assert isinstance(script, Tag)
    return next(node for node in json.loads(str(script.string))["@graph"] if node["@type"] == "Course")


def events_of(file: Path, title: str) -> list[Event]:
    found = icalendar.Calendar.from_ical(file.read_bytes()).walk("VEVENT")
    return [event for event in found if isinstance(event, Event) and str(event["SUMMARY"]) == title]


@pytest.mark.parametrize("key", CLASSES)
def test_when_it_is(key: str) -> None:
    title, expected = of_studio(key)["title"], starts(key)
    assert expected
    ends = [start + length(key) for start in expected]
    instances = [one for one in data_of(key)["hasCourseInstance"] if "Cancelled" not in one["eventStatus"]]
    assert [datetime.fromisoformat(one["startDate"]) for one in instances] == [start.replace(tzinfo=ZONE) for start in expected]
    assert [datetime.fromisoformat(one["endDate"]) for one in instances] == [end.replace(tzinfo=ZONE) for end in ends]
    for file in (published()[0] / "site/dates.ics", published()[0] / f"site/classes/{key}.ics"):
        events = sorted(events_of(file, title), key=lambda event: event.start)
        assert [event.start for event in events] == [start.replace(tzinfo=ZONE) for start in expected]
        assert [event.end for event in events] == [end.replace(tzinfo=ZONE) for end in ends]
    rows = page_of(key).select(".book .dates li:not(.cancelled)")
    assert [row.find("time")["datetime"] for row in rows] == [start.isoformat(timespec="minutes") for start in expected]
    for row, start, end in zip(rows, expected, ends, strict=True):
        text = squeeze(row.get_text(" "))
        assert f"{start:%A}" in text and f"{start:%B} {start.day}, {start.year}" in text
        assert f"{end.hour % 12 or 12}:{end.minute:02} {end:%p}" in text


@pytest.mark.parametrize("key", CLASSES)
def test_what_it_costs_and_who_may_come(key: str) -> None:
    said = of_studio(key)
    price, youngest = f"{float(said['price'].split()[0]):g}", said["youngest"].split()[0]
    adult = OF_STUDIO["booking"]["with an adult under"]
    below = f", under {adult} with an adult" if int(youngest) < int(adult) else ""
    course = data_of(key)
    offers = [one["offers"] for one in course["hasCourseInstance"] if "offers" in one]
    assert offers and {(offer["price"], offer["priceCurrency"]) for offer in offers} == {(price, "USD")}
    assert course["typicalAgeRange"] == f"{youngest}-"
    quick = squeeze(page_of(key).select_one(".quick").get_text(" "))
    assert f"${price}" in quick and f"Ages {youngest} and up{below} " in quick
    (card,) = (one for one in soup(published()[0] / "site/classes.html").select(".card") if words_of(one, "h2") == said["title"])
    assert f"${price}" in words_of(card) and f"Ages {youngest} and up{below} ;" in words_of(card)
    for row in soup(published()[0] / "site/dates.html").select(".rows li"):
        if words_of(row, ".what") == said["title"]:
            assert words_of(row, ".price") == f"${price}"
            assert words_of(row, ".age") == f"ages {youngest} and up"
    for event in events_of(published()[0] / "site/dates.ics", said["title"]):
        assert f"Ages {youngest} and up{below}. ${price}." in squeeze(str(event["DESCRIPTION"]))


@pytest.mark.parametrize("key", CLASSES)
def test_how_it_is_taught(key: str) -> None:
    words = FORMATS[of_studio(key)["format"]]
    assert page_of(key).select_one(".quick .way").get_text().startswith(words)
    assert data_of(key)["hasCourseInstance"][0]["courseMode"] == "onsite"
    assert data_of(key)["learningResourceType"].startswith(words)
    for event in events_of(published()[0] / "site/dates.ics", of_studio(key)["title"]):
        assert words in squeeze(str(event["DESCRIPTION"]))
    for sheet in (path for path in sheets() if path.match(f"print/{key}/2027-*/teacher.pdf")):
        assert f"Format: {of_studio(key)['format']} Students:" in sheet_text(sheet).replace(" · ", " "), sheet


def test_seats_are_counted_once() -> None:
    for key in CLASSES:
        said = of_studio(key)
        free = {one["on"]: int(said["seats"]) - int(one.get("enrolled", 0)) for one in said["dates"] if "cancelled" not in one}
        for one in data_of(key)["hasCourseInstance"]:
            if "Cancelled" in one["eventStatus"]:
                continue
            on = datetime.fromisoformat(one["startDate"]).strftime("%Y-%m-%d %H:%M")
            assert (one["maximumAttendeeCapacity"], one["remainingAttendeeCapacity"]) == (int(said["seats"]), max(0, free[on])), key
            row = page_of(key).find(id=one["@id"].partition("#")[2])
            assert row is not None, one["@id"]
            text = squeeze(row.get_text(" "))
            assert ("Full" in text) if free[on] <= 0 else (f"{free[on]} seat" in text), text
