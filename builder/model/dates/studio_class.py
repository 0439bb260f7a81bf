"""A class: what is made, by whom, when, for whom."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from datetime import date, datetime
from enum import StrEnum
from fractions import Fraction

from builder.model.dates.booking import NO_BOOKING, Booking
from builder.model.finding import Acceptance
from builder.model.label.earlier_batch import EarlierBatch
from builder.model.label.label_sheet import NO_WISHES, LabelWishes
from builder.model.place import NOWHERE, Name, Place, Placed
from builder.model.recipe.quantity import NO_MASS, Duration, Mass
from builder.model.recipe.recipe import Fill
from builder.model.recipe.size import ToFill
from builder.model.roster.allergen_family import AllergenFamily
from builder.model.teaching.lesson import Lesson


class Goal(StrEnum):
    """What people come for."""

    FUN = "fun"
    HOME = "learn to make at home"
    SELL = "learn to sell"


class Format(StrEnum):
    """How a class is taught."""

    DEMO = "demo"
    HANDS_ON = "hands-on"
    DEMO_WITH_HANDS_ON_PARTS = "demo with hands-on parts"

    @property
    def key(self) -> str:
        """Return its name for styles."""
        return self.name.lower()


class BatchFor(StrEnum):
    """Whose batch is made: one pot for all, one for each group, one for each student."""

    CLASS = "one for the class"
    GROUP = "one for each group"
    STUDENT = "one for each student"


@dataclass(frozen=True)
class HomeSize:
    """A size for the kitchen at home: exactly one of the three is given. `written` is the studio's own text."""

    written: str
    total: Mass | None = None
    oils: Mass | None = None
    containers: int | None = None
    place: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True)
class Make:
    """One product of a class and how much of it: containers per student, spare ones, weights to show and to lose.

    `left_in_each_cup` is what sticks to a weighing cup from which a student fills a container. `also` are other containers that the same
    batch fills.
    """

    recipe: Name
    batch_for: BatchFor = BatchFor.CLASS
    each_student: int = 1
    spare: int = 0
    demo: Mass = NO_MASS
    left_in_the_pot: Mass = NO_MASS
    left_in_each_cup: Mass = NO_MASS
    also: tuple[ToFill, ...] = ()
    at_home: tuple[HomeSize, ...] = ()
    place: Place = field(default=NOWHERE, compare=False)

    def to_fill(self, own: Fill) -> tuple[ToFill, ...]:
        """Return every kind of container that is to be filled, the recipe's own first."""
        return (ToFill(own, self.each_student, self.spare), *self.also)


@dataclass(frozen=True)
class ClassDate(Placed):
    """One date of a class. `place` is that of the day, `places` those of its other keys.

    `staff` are its teachers and assistants where they differ from those of the class.
    `first_label` is the cell at which its first sheet of labels begins, counted from 1: the cells before it have been used.
    `waiting` is how many people wait for a seat. `moved_from` are the times at which it was to be before, the first one first.
    `cancelled` is None for a date that takes place, else the reason that is published (empty: none is given).
    `labels` say from which earlier batch something is taken home.
    `link` is where a seat on it is booked, if that has a page of its own.
    `revision` counts how often time or state have been changed since the date was first published (RFC 5545 calls it a sequence number).
    `announced` are the days on which people were told of it: when it was set, then of each revision.
    """

    on: datetime
    enrolled: int = 0
    staff: tuple[int, int] | None = None
    first_label: int = 1
    waiting: int = 0
    moved_from: tuple[datetime, ...] = ()
    cancelled: str | None = None
    revision: int = 0
    announced: tuple[date, ...] = ()
    link: str = ""
    labels: EarlierBatch | None = None

    @property
    def takes_place(self) -> bool:
        """Tell whether it is still to be held: only then is anything made, bought or printed for it."""
        return not isinstance(self.cancelled, str)

    @property
    def first_set(self) -> datetime:
        """Return the time at which it was first to be. It never changes, so a date is known by it through all its moves."""
        return self.moved_from[0] if self.moved_from else self.on

    @property
    def changes(self) -> int:
        """Return how many changes the file tells of: each move, and that it was cancelled."""
        return len(self.moved_from) + (not self.takes_place)

    def announced_by(self, today: date) -> date | None:
        """Return the day on which people were told of it as it is now; None where the file does not say, or names a day to come."""
        if len(self.announced) <= self.revision or self.announced[-1] > today:
            return None
        return self.announced[-1]


@dataclass(frozen=True)
class Picture:
    """A picture beside the class, and what it shows."""

    file: Name
    alt: str


@dataclass(frozen=True)
class StudioClass(Placed):
    """One class. `key` is the name of its folder; `free_from` are families of allergens that it promises to work without."""

    key: str
    title: str
    format: Format
    summary: str
    for_whom: str
    goal: Goal
    youngest: int
    length: Duration
    seats: int
    price: Fraction
    teachers: int
    assistants: int
    group_size: int
    makes: tuple[Make, ...]
    lesson: Lesson
    dates: tuple[ClassDate, ...] = ()
    wear: tuple[str, ...] = ()
    on_each_bench: tuple[str, ...] = ()
    on_the_demo_table: tuple[str, ...] = ()
    at_the_sink: tuple[str, ...] = ()
    take_home: str = ""
    picture: Picture | None = None
    free_from: tuple[AllergenFamily, ...] = ()
    sheets_are_public: bool = False
    booking: Booking = NO_BOOKING
    labels: LabelWishes = NO_WISHES
    accepts: Mapping[str, Acceptance] = field(default_factory=dict)

    def without_lesson(self) -> "StudioClass":
        """Return the class with nothing in its lesson but the title."""
        return replace(self, lesson=replace(self.lesson, introduction=(), parts=(), title_says=()))

    @property
    def recipe_keys(self) -> tuple[str, ...]:
        """Return the keys of the recipes that it makes, in the order of the file."""
        return tuple(make.recipe.text for make in self.makes)

    @property
    def dates_held(self) -> tuple[ClassDate, ...]:
        """Return the dates that take place, in the order of the file."""
        return tuple(date for date in self.dates if date.takes_place)

    def has_room_on(self, date: ClassDate) -> bool:
        """Tell whether a seat is free on a date."""
        return date.enrolled < self.seats

    def staff_on(self, date: ClassDate | None) -> tuple[int, int]:
        """Return the teachers and assistants of a date, or of the class where the date names none."""
        return date.staff if date and date.staff else (self.teachers, self.assistants)
