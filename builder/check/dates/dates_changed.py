"""What a class file says of dates that were moved or cancelled.

Decided: a revision that is too low stops. Why: whoever has the old entry in a calendar stands before a closed door.
"""

from collections.abc import Iterator
from itertools import pairwise

from builder.check.rule import STUDIO, rule_on
from builder.model.dates.studio_class import ClassDate, StudioClass
from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.studio import Studio


@rule_on(
    STUDIO,
    FindingKind("date-moved-nowhere", STOP, "A date is said to be moved to the time that it had before."),
    FindingKind(
        "revision-too-low", STOP, "A date was moved or cancelled more often than its revision says, so that calendars keep the old entry."
    ),
    FindingKind(
        "date-first-set-twice", STOP, "Two dates of a class were first set at the same time, and a calendar would take them for one."
    ),
)
def find_unclear_changes(studio: Studio) -> Iterator[Finding]:
    """Judge the changes of each date by what stands in the class file itself."""
    for studio_class in studio.classes.values():
        for date in studio_class.dates:
            yield from _of_date(date)
        yield from _set_twice(studio_class)


def _of_date(date: ClassDate) -> Iterator[Finding]:
    if any(before == after for before, after in pairwise((*date.moved_from, date.on))):
        yield stop(
            "date-moved-nowhere",
            date.at("moved from"),
            "This date is moved to the time that it had before, so nobody can tell when it is.",
            "Write the new time under `on`, and under `moved from` the times before it, the first one first.",
        )
    elif date.revision < date.changes:
        yield stop(
            "revision-too-low",
            date.at("revision"),
            f"The file tells of {_changes(date)}, and the revision of this date is {date.revision}. A calendar keeps the old entry "
            "unless the number has risen with each change.",
            f"Write `revision: {date.changes}`, or more.",
        )


def _changes(date: ClassDate) -> str:
    moves = len(date.moved_from)
    moved = "a move" if moves == 1 else f"{moves} moves"
    if date.takes_place:
        return moved
    return f"{moved} and a cancellation" if moves else "a cancellation"


def _set_twice(studio_class: StudioClass) -> Iterator[Finding]:
    seen: set[object] = set()
    now: set[object] = set()
    for date in studio_class.dates:
        if date.first_set in seen and date.on not in now:
            yield stop(
                "date-first-set-twice",
                date.at("moved from") if date.moved_from else date.place,
                f"Two dates of this class were first set at {date.first_set:%Y-%m-%d %H:%M}. A calendar knows a date by that time through "
                "all its moves, so the two would overwrite each other.",
                "Begin one of them a few minutes earlier or later, or correct `moved from`.",
            )
        seen.add(date.first_set)
        now.add(date.on)
