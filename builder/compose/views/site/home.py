"""What `pages/home.html`, `pages/ways.html`, `pages/visit.html` and `pages/gallery.html` show."""

from dataclasses import dataclass

from builder.compose.views.frame import Frame, Link
from builder.compose.views.site.dates import DateRow
from builder.compose.views.site.picture import PictureView
from builder.compose.views.strip import StripView


@dataclass(frozen=True)
class WayView:
    """One way of teaching: what it is, how the time of one of its classes is spent, and its classes."""

    key: str
    name: str
    sentence: str
    strip: StripView | None
    example: str
    facts: tuple[tuple[str, str], ...]
    classes: tuple[Link, ...]
    page: Link


@dataclass(frozen=True)
class ShownPicture:
    """A picture and the page of what it shows."""

    picture: PictureView
    page: Link


@dataclass(frozen=True)
class HomeView:
    """The start page: the promise, the next dates with room, the ways in, the teacher, pictures.

    `mark_html` is the drawing of one recipe, `mark_name` its name and `mark_read` how to read it. `rest` is what follows the first block of
    the welcome text, under its heading.
    """

    frame: Frame
    heading: str
    lead_html: str
    actions: tuple[Link, ...]
    mark_html: str
    mark_name: str
    mark_read: str
    next: tuple[DateRow, ...]
    as_of: str
    all_dates: Link
    ways: tuple[WayView, ...]
    rest_heading: str
    rest_html: str
    teacher: str
    portrait: PictureView | None
    about: Link | None
    pictures: tuple[ShownPicture, ...]
    facts: tuple[tuple[str, str], ...]
    visit: Link
    also: tuple[Link, ...] = ()


@dataclass(frozen=True)
class WaysView:
    """The ways of teaching side by side."""

    frame: Frame
    title: str
    lead: str
    ways: tuple[WayView, ...]
    also: tuple[Link, ...] = ()


@dataclass(frozen=True)
class VisitView:
    """Where classes are held, how to get there, and on what terms they are booked."""

    frame: Frame
    title: str
    place: tuple[str, ...]
    map: Link | None
    visit: tuple[tuple[str, str], ...]
    terms: tuple[tuple[str, str], ...]
    links: tuple[Link, ...]
    also: tuple[Link, ...] = ()


@dataclass(frozen=True)
class GalleryView:
    """Pictures of classes with what they show."""

    frame: Frame
    title: str
    pictures: tuple[ShownPicture, ...]
    also: tuple[Link, ...] = ()
