"""What `pages/dates.html` and `pages/choice.html` show."""

from dataclasses import dataclass

from builder.compose.views.frame import Frame, Link
from builder.compose.views.site.dates import DateRow


@dataclass(frozen=True)
class MonthView:
    """The dates of one month; `room` is how many of them have room."""

    key: str
    name: str
    room: str
    rows: tuple[DateRow, ...]


@dataclass(frozen=True)
class OptionView:
    """One answer to a question: its name in lists, its words, and its own page with how much is on it."""

    key: str
    words: str
    page: Link
    count: str


@dataclass(frozen=True)
class QuestionView:
    """One question of a filter."""

    key: str
    words: str
    options: tuple[OptionView, ...]


@dataclass(frozen=True)
class NearView:
    """A date that misses one wish, when nothing meets all of them; `key` is by what the list of rules knows it."""

    key: str
    page: Link
    when: str


@dataclass(frozen=True)
class DatesView:
    """All dates by month, with what they can be chosen by; `rules` is the file that lets the filter work without a program."""

    frame: Frame
    title: str
    lead: str
    months: tuple[MonthView, ...]
    questions: tuple[QuestionView, ...]
    near: tuple[NearView, ...]
    calendar: Link | None
    also: tuple[Link, ...] = ()


@dataclass(frozen=True)
class ChoiceView:
    """What answers to one value: how much there is, its dates, its classes, and the nearest where there is nothing."""

    frame: Frame
    title: str
    lead: str
    months: tuple[MonthView, ...]
    classes: tuple[Link, ...]
    nearest: tuple[DateRow, ...]
    others: tuple[QuestionView, ...]
    calendar: Link | None
    all_dates: Link
    also: tuple[Link, ...] = ()
