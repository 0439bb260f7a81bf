"""What `pages/catalogue.html` shows."""

from dataclasses import dataclass

from builder.compose.views.frame import Frame, Link
from builder.compose.views.strip import StripView


@dataclass(frozen=True)
class PictureView:
    """A picture: its address and what it shows."""

    address: str
    alt: str


@dataclass(frozen=True)
class DateView:
    """One date: `machine` for programs, the day and the time in words, and the seats in words.

    `state` is cancelled, full or free. `note` says from when it was moved, or why it is cancelled; empty where there is nothing to say.
    `action` is what to do about it, on a class page; `until` says until when it can be booked.
    """

    machine: str
    day: str
    time: str
    seats: str
    state: str
    note: str
    action: Link | None = None
    until: str = ""


@dataclass(frozen=True)
class ClassCard:
    """One class on the catalogue; `marks` are the drawings of what it makes, as HTML."""

    key: str
    address: str
    title: str
    picture: PictureView | None
    summary: str
    format: str
    how: tuple[str, ...]
    strip: StripView | None
    for_whom: str
    youngest: str
    length: str
    price: str
    dates: tuple[DateView, ...]
    marks: tuple[str, ...]


@dataclass(frozen=True)
class CatalogueView:
    """The start page: a heading, the welcome text, the classes by their next date."""

    frame: Frame
    heading: str
    welcome_html: str
    cards: tuple[ClassCard, ...]
    also: tuple[Link, ...] = ()
