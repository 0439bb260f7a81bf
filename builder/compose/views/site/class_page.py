"""What `pages/class.html` shows."""

from dataclasses import dataclass

from builder.compose.views.frame import Frame, Link
from builder.compose.views.site.dates import DateView
from builder.compose.views.site.picture import PictureView
from builder.compose.views.site.safety import RiskGroup
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
class BookingView:
    """On what terms a class is booked and where it is, each fact with its name; `as_of` says from which day the seats are.

    `calendar` is the file with its dates.
    """

    facts: tuple[tuple[str, str], ...]
    as_of: str
    place: tuple[str, ...]
    map: Link | None
    visit: tuple[tuple[str, str], ...]
    calendar: Link | None = None


@dataclass(frozen=True)
class Related:
    """Another class that is like this one, and in what."""

    page: Link
    why: str


@dataclass(frozen=True)
class ClassPageView:
    """The page of one class. `how` says who makes what; `time_left` what the minutes are for that no part takes."""

    frame: Frame
    title: str
    summary: str
    picture: PictureView | None
    introduction_html: str
    format: str
    format_key: str
    how: tuple[str, ...]
    strip: StripView | None
    time_left: str
    products: tuple[ProductView, ...]
    take_home: str
    wear: tuple[str, ...]
    safety: tuple[RiskGroup, ...]
    allergens: str
    allergens_open: str
    free_from: str
    for_whom: str
    youngest: str
    length: str
    people: str
    staff: str
    price: str
    dates: tuple[DateView, ...]
    booking: BookingView
    all_classes: Link
    related: tuple[Related, ...] = ()
    also: tuple[Link, ...] = ()
