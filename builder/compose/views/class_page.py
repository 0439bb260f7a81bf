"""What `pages/class.html` shows."""

from dataclasses import dataclass

from builder.compose.views.catalogue import DateView, PictureView
from builder.compose.views.caution import CautionView
from builder.compose.views.frame import Frame, Link
from builder.compose.views.strip import StripView


@dataclass(frozen=True)
class ProductView:
    """One product of a class: what it is, how much each student takes home, what is in it, what can be chosen.

    `mark_html` is the drawing of its recipe, `mark_read` how to read it.
    """

    name: str
    identity: str
    about: str
    share: str
    ingredients: str
    choices: tuple[str, ...]
    sheets: tuple[Link, ...]
    mark_html: str
    mark_read: str


@dataclass(frozen=True)
class Doing:
    """What is watched, done or done together, as one line."""

    who: str
    titles: str


@dataclass(frozen=True)
class BookingView:
    """On what terms a class is booked and where it is, each fact with its name; `as_of` says from which day the seats are."""

    facts: tuple[tuple[str, str], ...]
    as_of: str
    place: tuple[str, ...]
    map: Link | None
    visit: tuple[tuple[str, str], ...]


@dataclass(frozen=True)
class ClassPageView:
    """The page of one class."""

    frame: Frame
    title: str
    summary: str
    picture: PictureView | None
    introduction_html: str
    format: str
    how: tuple[str, ...]
    format_sentence: str
    strip: StripView | None
    doing: tuple[Doing, ...]
    products: tuple[ProductView, ...]
    take_home: str
    wear: tuple[str, ...]
    cautions: tuple[CautionView, ...]
    allergens: str
    allergens_open: str
    free_from: str
    for_whom: str
    youngest: str
    length: str
    seats: str
    staff: str
    price: str
    dates: tuple[DateView, ...]
    booking: BookingView
    also: tuple[Link, ...] = ()
