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
    """One answer to a question: its name in lists, its words, and its own page with how much is on it.

    `rules_out` are the numbers of what does not give it, among what may come nearest.
    """

    key: str
    words: str
    page: Link
    count: str
    rules_out: str = ""


@dataclass(frozen=True)
class QuestionView:
    """One question of a filter."""

    key: str
    words: str
    options: tuple[OptionView, ...]


@dataclass(frozen=True)
class NearView:
    """A date or a class that comes near when nothing meets all wishes.

    `tokens` are its number and what it answers to; `facts` what it is instead of what was asked, each with its name in the list of rules.
    """

    tokens: str
    page: Link
    when: str
    facts: tuple[tuple[str, str], ...]


@dataclass(frozen=True)
class NearestView:
    """What may come nearest, the soonest first; the first `next` of them where nothing comes near."""

    ones: tuple[NearView, ...]
    next: int


@dataclass(frozen=True)
class DatesView:
    """All dates by month, with what they can be chosen by; `rules` is the file that lets the filter work without a program."""

    frame: Frame
    title: str
    lead: str
    months: tuple[MonthView, ...]
    questions: tuple[QuestionView, ...]
    nearest_ones: NearestView
    calendar: Link | None
    news: Link | None
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
    news: Link | None
    all_dates: Link
    also: tuple[Link, ...] = ()
