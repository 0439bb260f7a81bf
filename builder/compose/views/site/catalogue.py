"""What `pages/catalogue.html` shows."""

from dataclasses import dataclass

from builder.compose.views.frame import Frame, Link
from builder.compose.views.site.dates import DateView
from builder.compose.views.site.dates_page import NearestView, QuestionView
from builder.compose.views.strip import StripView


@dataclass(frozen=True)
class ClassCard:
    """One class on the catalogue in five lines: how, yours, who, price, next.

    `marks` are the drawings of what it makes, as HTML; `tokens` what it answers to in the filter.
    """

    address: str
    title: str
    summary: str
    format: str
    format_key: str
    length: str
    strip: StripView | None
    take_home: str
    for_whom: str
    youngest: str
    price: str
    next: DateView | None
    marks: tuple[str, ...]
    tokens: str


@dataclass(frozen=True)
class CatalogueView:
    """All classes by their next date, with what they can be chosen by."""

    frame: Frame
    title: str
    lead: str
    cards: tuple[ClassCard, ...]
    questions: tuple[QuestionView, ...]
    nearest_ones: NearestView
    all_dates: Link
    also: tuple[Link, ...] = ()
