"""Who comes to a class: the list as the studio wrote it, and each person with what they have chosen. Names are never published."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import datetime
from enum import StrEnum

from builder.model.dates.studio_class import ClassDate, StudioClass
from builder.model.place import NOWHERE, Name, Place, Placed
from builder.model.recipe.ingredient import Ingredient
from builder.model.recipe.recipe import Choice, Recipe
from builder.model.roster.allergy import Allergy
from builder.words.fold import fold
from builder.words.reason import is_reason

NO_NAME = Name("", NOWHERE)
_KIND_WORDS = frozenset({"essential", "fragrance", "oil", "absolute", "mica", "clay", "powder", "colour", "color"})


class About(StrEnum):
    """What a column about people tells of them; every other column is a choice."""

    NAME = "name"
    DATE = "date"
    AGE = "age"
    ALLERGIES = "allergies"
    SETTLED = "settled"
    WAITING = "waiting"
    AT_HOME = "at home"
    DESIGN = "design"
    OWN_NAME = "their name for it"  # What somebody calls what they have made, on their labels alone.


@dataclass(frozen=True)
class UnreadCell(Name):
    """A cell of a workbook that cannot be read, so that nothing has been chosen in it: `problem` says which cell, why, and what to do."""

    problem: str = ""


@dataclass(frozen=True)
class RosterRow(Placed):
    """One person as written. `choices` are the cells of the columns for choices by the key of the column; empty: not chosen yet.

    `settled`: what the studio has settled with the person about their allergies. `waiting`: there is no seat for them yet. `design` and
    `own_name` are of their labels: how these look, and what they call what they have made. `at_home` is the size of
    the take-home sheet that they want. `places` are those of the columns that the roster has.
    """

    name: Name
    date: datetime | None
    age: int | None
    allergies: str
    choices: Mapping[str, Name]
    settled: str = ""
    waiting: bool = False
    design: str = ""
    own_name: Name = NO_NAME
    at_home: Name = NO_NAME


@dataclass(frozen=True)
class Roster:
    """The list of a class: its columns that are not about people, and a row for each person.

    `unread` counts the lines that could not be read; `about_people` are the columns about people that it has.
    """

    columns: tuple[Name, ...]
    rows: tuple[RosterRow, ...]
    unread: int = 0
    about_people: tuple[About, ...] = ()
    place: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True)
class Guest:
    """One person of one date. `chosen` holds, by the recipe's key and the choice, the option taken (None: left out) where it is known.

    `compared` are the allergies of the person, each beside what the class uses and offers; `settled` is what
    the studio has settled with them about it, which counts if it `is_settled`. `place` is where they stand on the roster. `design` and
    `own_name` are of their labels, `at_home` is the size of their take-home sheet.
    """

    name: str
    age: int | None
    allergies: str
    chosen: Mapping[tuple[str, str], str | None]
    compared: tuple[Allergy, ...] = ()
    settled: str = ""
    place: Place = field(default=NOWHERE, compare=False)
    settled_place: Place = field(default=NOWHERE, compare=False)
    design: str = ""
    own_name: str = ""
    at_home: str = ""

    @property
    def is_settled(self) -> bool:
        """Tell whether what was settled is written so that others can follow it."""
        return is_reason(self.settled)


def choices_meant(column: Name, recipes: Sequence[Recipe]) -> tuple[tuple[Recipe, Choice], ...]:
    """Return the choices that a column can mean: `scent`, or `meadow-lotion scent` and `Meadow lotion scent`, of one recipe of several."""
    offered = [(recipe, choice) for recipe in recipes for choice in recipe.choices]
    full = [(r, c) for r, c in offered if column.key in (fold(f"{r.key} {c.what}"), fold(f"{r.name} {c.what}"))]
    return tuple(full or [(recipe, choice) for recipe, choice in offered if fold(choice.what) == column.key])


def options_meant(cell: Name, choice: Choice, cards: Mapping[str, Ingredient]) -> tuple[str | None, ...]:
    """Return the option of a choice that a cell means, by any name of its card, or by a short name that only one of them can have.

    None where it means none of them.
    """
    if cell.key == "none" or cell.key.startswith("no "):
        return (None,) if None in choice.options else ()
    card = cards.get(cell.key)
    names = tuple(dict.fromkeys(cards[option.key].name for option in choice.options if option is not None and option.key in cards))
    exact = tuple(name for name in names if card is not None and name == card.name)
    short = tuple(name for name in names if _shortly(name) == _shortly(cell.text)) if cell.text else ()
    return exact or (short if len(short) == 1 else ())


def _shortly(name: str) -> frozenset[str]:
    """Return the words of a name without those that only say what kind of thing it is: `lavender` for lavender essential oil."""
    return frozenset(fold(name).split()) - _KIND_WORDS


def dates_meant(row: RosterRow, studio_class: StudioClass) -> tuple[ClassDate, ...]:
    """Return the dates of a class that a row can mean: the only one, or those of its day, and of its hour where it states one."""
    if row.date is None:
        return studio_class.dates
    day = [date for date in studio_class.dates if date.on.date() == row.date.date()]
    exact = [date for date in day if date.on == row.date]
    has_hour = row.date.time() != datetime.min.time()
    return tuple(exact if exact or has_hour else day)


def rows_of(roster: Roster, studio_class: StudioClass, date: ClassDate | None, *, waiting: bool = False) -> Iterator[RosterRow]:
    """Yield the rows of one date, of those who come or of those who wait for a seat; of all rows where a class has no dates."""
    for row in roster.rows:
        if row.waiting == waiting and dates_meant(row, studio_class) == ((date,) if date else ()) and (date or not studio_class.dates):
            yield row
