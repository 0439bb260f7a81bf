"""The dates as calendar files: RFC 5545 and RFC 7986.

With the studio's time zone the hours are those of a place, and the file carries the rules of that zone for its own dates; without it they
are those of the clock on the wall wherever the file is read.

Decided: an event keeps its UID through moves, renames of the class and cancellation: a name-based UUID of the studio's name, the folder of
the class and the time first set, since RFC 7986 5.3 asks that it reveals nothing. Its SEQUENCE is the revision of the class file, its
DTSTAMP the day on which this state was announced, or first published. Why: a calendar that has an event takes the newer one, and the same
studio gives the same bytes.
"""

from collections.abc import Iterable
from datetime import UTC, datetime, time, timedelta
from uuid import UUID, uuid5
from zoneinfo import ZoneInfo

from icalendar import Calendar, Event

from builder.compose import addresses
from builder.compose.addresses import Address
from builder.compose.dates.booking_words import who_may_come
from builder.compose.dates.shown import shown
from builder.compose.dates.time_words import format_words
from builder.compose.document_kind import Composed
from builder.compose.edition import Edition
from builder.compose.machines.absolute import absolute
from builder.compose.machines.place import place_in_a_line
from builder.compose.recipe.wording import sentence
from builder.compose.site.choices import Value, offered
from builder.compose.teaching.class_facts import coming_dates, ends, price
from builder.model.dates.published_date import PublishedDate
from builder.model.dates.studio_class import ClassDate, StudioClass
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan
from builder.words.say import say

# Ours, drawn once at random: every UID is a name in this space.
_SPACE = UUID("5c0c1a55-58a2-4e54-9d0e-1f1d6a5f3c0b")
_PRODUCT = "-//stillroom//dates//EN"
_REFRESH = timedelta(days=1)


def compose_calendar(edition: Edition, studio: Studio, here: Address) -> Composed | None:
    """Return the coming dates of all classes as one file; None where there is none."""
    name = say("Classes at {studio}", studio=studio.profile.name)
    events = [event for studio_class, plan in edition.classes for event in _events(edition, studio_class, plan)]
    return _composed(edition, here, name, absolute(edition, addresses.HOME), events)


def compose_class_calendar(edition: Edition, plan: ClassPlan, here: Address) -> Composed | None:
    """Return the coming dates of one class as a file; None where there is none."""
    studio_class = plan.studio_class
    name = say("{class_title} at {studio}", class_title=studio_class.title, studio=edition.studio.profile.name)
    page = absolute(edition, addresses.class_page(studio_class.key))
    return _composed(edition, here, name, page, _events(edition, studio_class, plan))


def compose_choice_calendar(edition: Edition, value: Value, here: Address) -> Composed | None:
    """Return the coming dates that answer to one value as a file; None where there is none."""
    name = say("{what}, {studio}", what=value.heading, studio=edition.studio.profile.name)
    events = [_event(edition, one.studio_class, one.plan, one.date) for one in offered(edition) if one.date and value.matches(one)]
    return _composed(edition, here, name, absolute(edition, addresses.choice_page(value.key)), events)


def _composed(edition: Edition, here: Address, name: str, page: str, events: Iterable[Event]) -> Composed | None:
    """Make a file of events in the order of their time."""
    in_order = sorted(events, key=lambda event: (event.DTSTART.isoformat(), event["UID"]))
    if not in_order:
        return None
    calendar = Calendar()
    calendar.add("PRODID", _PRODUCT)
    calendar.add("VERSION", "2.0")
    calendar.add("NAME", name)
    calendar.add("X-WR-CALNAME", name)
    calendar.add("REFRESH-INTERVAL", _REFRESH, parameters={"VALUE": "DURATION"})
    calendar.add("LAST-MODIFIED", max(event.DTSTAMP for event in in_order))
    if page:
        calendar.add("URL", page)
        calendar.add("SOURCE", absolute(edition, here), parameters={"VALUE": "URI"})
    for event in in_order:
        calendar.add_component(event)
    days = [event.DTSTART.date() for event in in_order]
    calendar.add_missing_timezones(min(days) - timedelta(days=1), max(days) + timedelta(days=1))
    return Composed(calendar.to_ical().decode())


def _events(edition: Edition, studio_class: StudioClass, plan: ClassPlan) -> list[Event]:
    return [_event(edition, studio_class, plan, date) for date in coming_dates(edition, studio_class)]


def _event(edition: Edition, studio_class: StudioClass, plan: ClassPlan, on: ClassDate) -> Event:
    state = shown(edition, studio_class, on)
    stamp = datetime.combine(state.told or edition.today, time(), UTC)
    page = absolute(edition, addresses.class_page(studio_class.key))
    title = studio_class.title if on.takes_place else say("Cancelled: {class_title}", class_title=studio_class.title)
    event = Event()
    event.add("UID", uid_of(edition, state))
    event.add("DTSTAMP", stamp)
    event.add("LAST-MODIFIED", stamp)
    event.add("SEQUENCE", on.revision)
    event.add("STATUS", "CONFIRMED" if on.takes_place else "CANCELLED")
    event.add("SUMMARY", title)
    event.add("DTSTART", in_zone(edition, on.on))
    event.add("DTEND", in_zone(edition, ends(studio_class, on)))
    event.add("LOCATION", place_in_a_line(edition.studio.profile))
    event.add("DESCRIPTION", _described(edition, studio_class, plan, on))
    if page:
        event.add("URL", page)
    return event


def uid_of(edition: Edition, state: PublishedDate) -> str:
    """Return the identifier under which calendars and feeds know a date through all its changes."""
    return str(uuid5(_SPACE, f"{edition.studio.profile.name}/{state.id}"))


def in_zone(edition: Edition, moment: datetime) -> datetime:
    """Return a time of the class file in the studio's zone; as it is where the studio names none."""
    zone = edition.studio.profile.time_zone
    return moment.replace(tzinfo=ZoneInfo(zone)) if zone else moment


def _described(edition: Edition, studio_class: StudioClass, plan: ClassPlan, on: ClassDate) -> str:
    lines = [] if on.takes_place else [sentence(on.cancelled or "") or say("This date is cancelled.")]
    lines += [
        studio_class.summary,
        f"{format_words(plan.format)}.",
        f"{who_may_come(edition, studio_class)}. {price(edition, studio_class)}.",
    ]
    return "\n".join(lines)
