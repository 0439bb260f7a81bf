"""What a row of dates shows."""

from dataclasses import dataclass

from builder.compose.views.frame import Link


@dataclass(frozen=True)
class DateView:
    """One date: `machine` for programs, the day and the time in words, and the seats in words.

    `weekday`, `short` and `hours` say the same in a narrow column: `Sat`, `Jan 16`, `2:00 – 3:30 PM`. `state` is cancelled, full or free.
    `note` says from when it was moved, or why it is cancelled; empty where there is nothing to say. `fragment` is its name on its page.
    `action` is what to do about it, `goes_on` for whoever hears the link alone; `until` says until when it can be booked.
    """

    machine: str
    day: str
    time: str
    seats: str
    state: str
    note: str
    weekday: str = ""
    short: str = ""
    hours: str = ""
    fragment: str = ""
    action: Link | None = None
    goes_on: str = ""
    until: str = ""


@dataclass(frozen=True)
class DateRow:
    """A date in a list of several classes: of what, how, from what age, for how much; `tokens` are what it answers to."""

    date: DateView
    address: str
    title: str
    format: str
    format_key: str
    youngest: str
    price: str
    tokens: str = ""
