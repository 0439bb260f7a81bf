"""Who a roster lists, against the dates, the seats and the age of its class. No finding repeats a name: it may be printed anywhere.

Decided: who waits stands on the roster in a column of its own, and their number in class.yaml. Why: the number is published, the people
are not; no order of rows decides who has a seat.
"""

from collections.abc import Iterator

from builder.check.rule import STUDIO, rule_on
from builder.model.dates.studio_class import ClassDate, StudioClass
from builder.model.finding import Finding, caution, stop
from builder.model.finding_kind import ACCEPTABLE_STOP, CAUTION, STOP, FindingKind
from builder.model.roster.roster import Roster, RosterRow, dates_meant, rows_of
from builder.model.studio import Studio
from builder.words.plain_number import how_many


@rule_on(
    STUDIO,
    FindingKind("roster-date-unknown", STOP, "A roster lists people for a date that the class does not have."),
    FindingKind("roster-below-youngest", ACCEPTABLE_STOP, "A person of the roster is younger than the class allows."),
    FindingKind("roster-over-seats", STOP, "A roster lists more people than there are seats."),
    FindingKind("roster-over-waiting", CAUTION, "A roster marks another number of people as waiting than the class file publishes."),
    FindingKind("roster-name-twice", CAUTION, "A name stands twice on the roster of one date."),
    FindingKind("roster-over-enrolled", CAUTION, "A roster lists more people than are enrolled, and batches are made only for those."),
)
def find_roster_people_out_of_place(studio: Studio) -> Iterator[Finding]:
    """Compare each roster with its class."""
    for key, roster in studio.rosters.items():
        studio_class = studio.classes.get(key)
        if studio_class is not None:
            if any(row.at("date") == row.place and studio_class.dates and len(dates_meant(row, studio_class)) != 1 for row in roster.rows):
                yield _no_dates(roster, studio_class)
            for row in roster.rows:
                yield from _of_row(row, studio_class)
            for date in studio_class.dates or (None,):
                yield from _of_date(roster, studio_class, date)


def _no_dates(roster: Roster, studio_class: StudioClass) -> Finding:
    days = ", ".join(f"{date.on:%Y-%m-%d %H:%M}" for date in studio_class.dates)
    return stop(
        "roster-date-unknown",
        roster.place,
        f"The class has {len(studio_class.dates)} dates, and the roster does not say who comes to which.",
        f"Add a column `date`, and write into it one of: {days}.",
    )


def _of_row(row: RosterRow, studio_class: StudioClass) -> Iterator[Finding]:
    meant = dates_meant(row, studio_class)
    if row.at("date") != row.place and ((studio_class.dates and len(meant) != 1) or (row.date and not meant)):
        days = ", ".join(f"{date.on:%Y-%m-%d %H:%M}" for date in studio_class.dates)
        if row.date is None:
            wrong = "This row does not say for which date of the class it is."
        elif meant:
            wrong = "The class is held more than once on this day, and the row does not say at which hour."
        else:
            wrong = f"The class has no such date{_moved(row, studio_class)}."
        remedy = f"Write one of its dates in the column `date`: {days}." if days else "Leave the cell empty, or add the date to class.yaml."
        yield stop("roster-date-unknown", row.at("date"), wrong, remedy)
    if row.age is not None and row.age < studio_class.youngest:
        yield stop(
            "roster-below-youngest",
            row.at("age"),
            f"This person is {row.age}, and the class is for people of {studio_class.youngest} years and more. "
            "What students may add, and how many watch them, is worked out for that age.",
            "Correct the age, lower `youngest:` in class.yaml so that everything is worked out anew, or accept this with a reason.",
            acceptable=True,
        )


def _moved(row: RosterRow, studio_class: StudioClass) -> str:
    """Return in words to when the date of a row was moved."""
    day = row.date.date() if row.date else None
    moved = [date for date in studio_class.dates if any(before.date() == day for before in date.moved_from)]
    return f" any more: it was moved to {moved[0].on:%Y-%m-%d %H:%M}" if moved else ""


def _of_date(roster: Roster, studio_class: StudioClass, date: ClassDate | None) -> Iterator[Finding]:
    if date and not date.takes_place:
        return
    rows = tuple(rows_of(roster, studio_class, date))
    when = f" on {date.on:%Y-%m-%d %H:%M}" if date else ""
    for number, row in enumerate(rows):
        if any(row.name.key == other.name.key for other in rows[:number]):
            wrong = f"This name stands twice{when}: two people, or one who has been entered twice."
            yield caution("roster-name-twice", row.name.place, wrong, "Tell them apart by a second name or a letter, or remove one row.")
    if len(rows) > studio_class.seats:
        wrong = f"{how_many(len(rows), 'person is', 'people are')} listed{when} for {how_many(studio_class.seats, 'seat')}."
        yield stop(
            "roster-over-seats", rows[studio_class.seats].place, wrong, "Remove a row, or raise `seats:` if room and staff allow it."
        )
    elif date and len(rows) > date.enrolled:
        listed = how_many(len(rows), "person is", "people are")
        made_for = how_many(date.enrolled, "who is", "who are")
        wrong = f"{listed} listed{when}, and batches are made only for the {made_for} enrolled in class.yaml."
        yield caution("roster-over-enrolled", rows[date.enrolled].place, wrong, "Raise `enrolled:` in class.yaml, or remove a row.")
    wait = tuple(rows_of(roster, studio_class, date, waiting=True))
    most = date.waiting if date else 0
    if len(wait) > most:
        marked = how_many(len(wait), "person is", "people are")
        wrong = f"{marked} marked as waiting{when}, and by class.yaml it is {most}. That number is the one that is published."
        yield caution("roster-over-waiting", wait[most].place, wrong, "Correct `waiting:` of the date in class.yaml, or the row.")
