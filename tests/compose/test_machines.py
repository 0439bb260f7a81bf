"""What pages say once more for programs: read back with parsers that are none of ours, and held against RFC 5545, 7986 and 4287."""

import json
import re
from collections.abc import Mapping
from dataclasses import replace
from datetime import UTC, date, datetime
from html.parser import HTMLParser
from pathlib import Path
from xml.etree import ElementTree
from zoneinfo import ZoneInfo

import icalendar
import pytest
from hypothesis import given
from hypothesis import strategies as st
from icalendar.cal.event import Event

from builder.compose.edition import Edition
from builder.compose.machines.json_ld import as_script
from builder.compose.publication import compose_documents, editions
from builder.library import LAYOUTS
from builder.model.dates.published_date import PublishedDate
from tests.compose.conftest import FILES, TODAY, read_edition, write_studio
from tests.composing import made_at
from tests.making import sure

PLACE = """time zone: America/New_York
public address: https://test.example/soap
where: {name: The yard, street: 1 Test Row, town: Testham, state: VT, postcode: "00000", country: US}
region: US
"""
DATES = """dates:
  - {on: 2027-01-10 10:00, enrolled: 2}
  - {on: 2027-02-06 10:00, enrolled: 3}
  - {on: 2027-03-20 10:00, enrolled: 5, moved from: 2027-03-06 10:00, revision: 1}
  - {on: 2027-04-03 10:00, cancelled: the hall is let, revision: 1}
"""
ATOM = {"a": "http://www.w3.org/2005/Atom"}


def changed(title: str = "The first class", **studio: str) -> dict[str, str]:
    text = FILES["studio.yaml"].replace("region: US\n", studio.get("place", PLACE))
    lesson_of = re.sub(r"dates:\n(?:  - .*\n)*", DATES, FILES["classes/first/class.yaml"]).replace(
        "title: The first class", f"title: {title}"
    )
    return {"studio_yaml": text, "classes__first__class_yaml": lesson_of}


@pytest.fixture(scope="module")
def placed(tmp_path_factory: pytest.TempPathFactory) -> Edition:
    return read_edition(write_studio(tmp_path_factory.mktemp("placed"), **changed()))


def files_of(edition: Edition) -> dict[str, str]:
    made = compose_documents(*editions(edition.studio, edition.plans, (), (LAYOUTS,), edition.today))
    return {f"{one.folder}/{one.path}": one.html for one in made.documents}


@pytest.fixture(scope="module")
def files(placed: Edition) -> dict[str, str]:
    return files_of(placed)


def events(text: str) -> list[Event]:
    return [one for one in icalendar.Calendar.from_ical(text).walk("VEVENT") if isinstance(one, Event)]


def test_a_calendar_file_is_written_as_the_standard_says(files: Mapping[str, str]) -> None:
    """RFC 5545 3.1: lines end with CRLF and hold 75 octets at most; 3.6 and 3.7: one VERSION, one PRODID; no METHOD in a file to read."""
    text = files["site/dates.ics"]
    lines = text.encode().split(b"\r\n")
    assert lines[-1] == b"" and all(len(line) <= 75 and b"\n" not in line and b"\r" not in line for line in lines)
    for line in lines:
        line.decode()
    unfolded = text.replace("\r\n ", "").split("\r\n")
    assert unfolded[0] == "BEGIN:VCALENDAR" and unfolded[-2] == "END:VCALENDAR"
    assert [sum(line.startswith(name) for line in unfolded) for name in ("VERSION:", "PRODID:", "METHOD", "ATTENDEE")] == [1, 1, 0, 0]
    for event in events(text):
        assert [
            len(event.get(name, []) if isinstance(event.get(name), list) else [event[name]]) for name in ("UID", "DTSTAMP", "DTSTART")
        ] == [1, 1, 1]
        assert event.decoded("DTEND") > event.decoded("DTSTART") and "DURATION" not in event


def test_hours_are_those_of_the_place_on_both_sides_of_summer_time(files: Mapping[str, str]) -> None:
    """15 U.S.C. 260a: summer time begins on the second Sunday of March. Before it 10:00 in New York is 15:00 UTC, after it 14:00."""
    starts = [event.decoded("DTSTART").astimezone(UTC) for event in events(files["site/dates.ics"])]
    assert starts == [datetime(2027, 2, 6, 15, tzinfo=UTC), datetime(2027, 3, 20, 14, tzinfo=UTC), datetime(2027, 4, 3, 14, tzinfo=UTC)]
    assert files["site/dates.ics"].count("BEGIN:VTIMEZONE") == 1


def test_without_a_time_zone_hours_are_those_of_the_clock_on_the_wall(tmp_path: Path) -> None:
    made = files_of(read_edition(write_studio(tmp_path, **changed(place="region: US\n"))))
    assert "DTSTART:20270206T100000\r\n" in made["site/dates.ics"] and "VTIMEZONE" not in made["site/dates.ics"]
    assert "URL" not in made["site/dates.ics"] and "site/dates.xml" not in made and "ld+json" not in made["site/classes/first.html"]


def test_a_cancelled_date_stays_and_says_so(files: Mapping[str, str]) -> None:
    _, moved, cancelled = events(files["site/dates.ics"])
    assert (str(moved["STATUS"]), moved["SEQUENCE"]) == ("CONFIRMED", 1)
    assert (str(cancelled["STATUS"]), cancelled["SEQUENCE"], str(cancelled["SUMMARY"])) == ("CANCELLED", 1, "Cancelled: The first class")
    assert str(cancelled["DESCRIPTION"]).startswith("The hall is let\n")


def test_an_event_is_known_by_one_name_through_renaming_and_rebuilding(files: Mapping[str, str], tmp_path: Path) -> None:
    again = made_at(read_edition(write_studio(tmp_path, **changed(title="Another name"))), "site/dates.ics")
    uids = [str(event["UID"]) for event in events(files["site/dates.ics"])]
    assert [str(event["UID"]) for event in events(again["site/dates.ics"])] == uids and len(set(uids)) == 3
    assert [str(event["UID"]) for event in events(files["site/classes/first.ics"])] == uids
    assert not any(word in uid for uid in uids for word in ("test", "first", "2027"))


def test_the_stamp_is_the_day_on_which_a_date_was_first_shown_so(placed: Edition) -> None:
    """RFC 5545 3.8.7.2: without METHOD the stamp says when the information was last revised."""
    told = {PublishedDate("first", *(datetime(2027, 2, 6, 10),) * 2, cancelled=False, revision=0): date(2026, 12, 24)}
    made = made_at(replace(placed, studio=replace(placed.studio, told=told)), "site/dates.ics", "site/dates.json")
    stamps = [event.decoded("DTSTAMP") for event in events(made["site/dates.ics"])]
    assert stamps == [datetime(2026, 12, 24, tzinfo=UTC), *[datetime(TODAY.year, TODAY.month, TODAY.day, tzinfo=UTC)] * 2]
    assert [one["told"] for one in json.loads(made["site/dates.json"])["dates"]][1] == "2026-12-24"


def test_the_day_that_the_class_file_names_wins_over_what_was_kept_and_over_today(tmp_path: Path) -> None:
    """RFC 5545 3.8.7.2; RFC 4287 4.2.15: the most recent change that is significant. A day to come, and one of fewer changes than the
    revision counts, are no such day."""
    text = changed()
    for one, days in (("enrolled: 3", "2026-11-02"), ("revision: 1}\n  - {on: 2027-04-03", ""), ("hall is let, revision: 1", "2026-11-09")):
        before, brace, after = one.partition("}")
        with_days = f"{before}, announced: {days or '[2026-11-02, 2026-12-14]'}{brace}{after}"
        text["classes__first__class_yaml"] = text["classes__first__class_yaml"].replace(one, with_days)
    edition = read_edition(write_studio(tmp_path, **text))
    told = {PublishedDate("first", *(datetime(2027, 2, 6, 10),) * 2, cancelled=False, revision=0): date(2026, 12, 24)}
    made = made_at(replace(edition, studio=replace(edition.studio, told=told)), "site/dates.ics", "site/dates.json", "site/dates.xml")
    stamps = [event.decoded("DTSTAMP").date() for event in events(made["site/dates.ics"])]
    assert stamps == [date(2026, 11, 2), date(2026, 12, 14), TODAY]
    assert [one["told"] for one in json.loads(made["site/dates.json"])["dates"]][1:] == [day.isoformat() for day in stamps]
    feed = ElementTree.fromstring(made["site/dates.xml"])
    assert [sure(one.text)[:10] for one in feed.iterfind(".//a:updated", ATOM)] == [
        day.isoformat() for day in (TODAY, *sorted(stamps, reverse=True))
    ]
    earlier = made_at(replace(edition, today=date(2026, 12, 1)), "site/dates.ics")["site/dates.ics"]
    assert [event.decoded("DTSTAMP").day for event in events(earlier)] == [1, 2, 1, 1]


def test_the_feed_has_what_the_standard_asks_for(files: Mapping[str, str]) -> None:
    """RFC 4287 4.1.1 and 4.1.2: one id, title and updated for the feed and for each entry, an author, and absolute addresses."""
    feed = ElementTree.fromstring(files["site/dates.xml"])
    for one in (feed, *feed.findall("a:entry", ATOM)):
        assert [len(one.findall(f"a:{name}", ATOM)) for name in ("id", "title", "updated")] == [1, 1, 1]
    assert feed.findtext("a:author/a:name", namespaces=ATOM) == "Test studio"
    assert {sure(link.get("href")).split("/soap/")[0] for link in feed.findall(".//a:link", ATOM)} == {"https://test.example"}
    assert len({entry.findtext("a:id", namespaces=ATOM) for entry in feed.findall("a:entry", ATOM)}) == 3


def test_each_answer_has_a_feed_and_a_calendar_of_its_own_dates(files: Mapping[str, str]) -> None:
    """A date has one identifier in all of them; what nothing answers to has neither."""
    whole = {entry.findtext("a:id", namespaces=ATOM) for entry in ElementTree.fromstring(files["site/dates.xml"]).findall("a:entry", ATOM)}
    pages = [path.removesuffix(".html") for path in files if path.startswith("site/find/") and path.endswith(".html")]
    with_dates = [page for page in pages if f"{page}.ics" in files]
    assert len(pages) > len(with_dates) > 3
    for page in pages:
        assert (f"{page}.xml" in files) is (page in with_dates)
    for page in with_dates:
        feed = ElementTree.fromstring(files[f"{page}.xml"])
        entries = feed.findall("a:entry", ATOM)
        assert {entry.findtext("a:id", namespaces=ATOM) for entry in entries} <= whole
        assert len(entries) == len(events(files[f"{page}.ics"]))
        assert feed.findtext("a:id", namespaces=ATOM) == f"https://test.example/soap/{page.removeprefix('site/')}.html"
        name = page.rpartition("/")[2]
        for kind, ending in (("application/atom+xml", "xml"), ("text/calendar", "ics")):
            head, _, body = files[f"{page}.html"].partition("</head>")
            assert re.search(rf'<link rel="alternate" type="{re.escape(kind)}" title="[^"]+" href="{name}.{ending}">', head)
            assert f'href="{name}.{ending}"' in body
    months = [ElementTree.fromstring(files[f"{page}.xml"]) for page in with_dates if "/month-" in page]
    assert [len(month.findall("a:entry", ATOM)) for month in months] == [1, 1, 1]


def test_the_site_map_lists_the_pages_and_no_other_file(files: Mapping[str, str]) -> None:
    """sitemaps.org 0.9: absolute addresses of the canonical pages."""
    space = {"s": "http://www.sitemaps.org/schemas/sitemap/0.9"}
    listed = [one.text for one in ElementTree.fromstring(files["site/site-map.xml"]).findall("s:url/s:loc", space)]
    pages = {path for path in files if path.startswith("site/") and path.endswith(".html")} - {"site/404.html"}
    assert {sure(address).replace("https://test.example/soap", "site") for address in listed} == pages and len(listed) == len(pages)


def test_the_page_for_what_is_not_there_links_from_the_root_of_the_host(files: Mapping[str, str]) -> None:
    links = re.findall(r'(?:href|src)=["\']([^"\']*)', files["site/404.html"])
    inward = [link for link in links if not re.match(r"https?:|mailto:|tel:|data:|#", link)]
    assert inward and all(link.startswith("/soap/") for link in inward)


class Scripts(HTMLParser):
    """Collects the text of the script elements of a page, as a browser would find them."""

    def __init__(self) -> None:
        super().__init__()
        self.found: list[str] = []
        self._inside = False

    def handle_starttag(self, tag: str, _: object) -> None:
        self._inside = tag == "script"
        if self._inside:
            self.found.append("")

    def handle_data(self, data: str) -> None:
        if self._inside:
            self.found[-1] += data

    def handle_endtag(self, tag: str) -> None:
        self._inside = self._inside and tag != "script"


def scripts_in(html: str) -> list[str]:
    parser = Scripts()
    parser.feed(html)
    return parser.found


def test_a_class_page_tells_search_engines_what_it_shows(files: Mapping[str, str]) -> None:
    page = files["site/classes/first.html"]
    (text,) = scripts_in(page)
    course, studio = json.loads(text)["@graph"]
    first, moved, cancelled = course["hasCourseInstance"]
    assert (course["name"], course["timeRequired"], studio["name"]) == ("The first class", "PT60M", "Test studio")
    shown = re.findall(r'<time datetime="([^"]*)"', page)
    assert [one["startDate"][:16] for one in course["hasCourseInstance"]] == shown
    zone = ZoneInfo("America/New_York")
    for one in course["hasCourseInstance"]:
        start, end = (datetime.fromisoformat(one[name]) for name in ("startDate", "endDate"))
        assert start.utcoffset() == start.replace(tzinfo=zone).utcoffset() and end > start
    assert (first["offers"]["price"], first["offers"]["priceCurrency"], first["remainingAttendeeCapacity"]) == ("48", "USD", 2)
    assert "2\u00a0seats left" in page and "$48" in page
    assert (moved["eventStatus"], moved["previousStartDate"]) == ("https://schema.org/EventRescheduled", "2027-03-06T10:00:00-05:00")
    assert cancelled["eventStatus"] == "https://schema.org/EventCancelled" and "offers" not in cancelled
    assert "attendee" not in text


@given(st.text() | st.sampled_from(["</script><!--", "<script>", "]]>", "\u2028", "&lt;/script&gt;"]))
def test_no_title_ends_the_script(title: str) -> None:
    page = f'<script type="application/ld+json">{as_script([{"name": title}])}</script><p>after</p>'
    (text,) = scripts_in(page)
    assert json.loads(text)["@graph"] == [{"name": title}]
