"""The days on which dates still to come are said to have been announced.

Decided: these caution. Why: a wrong day misleads no person; it makes calendars and feeds tell of a change at the wrong time.
"""

from collections.abc import Iterator
from datetime import date as day
from itertools import pairwise

from builder.check.rule import STUDIO_ON_A_DAY, rule_on
from builder.model.dates.studio_class import ClassDate
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.studio import Studio


@rule_on(
    STUDIO_ON_A_DAY,
    FindingKind("announced-ahead", CAUTION, "A date is said to be announced on a day that is still to come."),
    FindingKind("announced-out-of-order", CAUTION, "A change of a date is said to be announced before what it changes."),
    FindingKind("announced-too-seldom", CAUTION, "A date has been changed, and nothing says when the change was announced."),
)
def find_announcements_amiss(studio: Studio, today: day) -> Iterator[Finding]:
    """Compare the days under `announced` with today, with one another and with the revision."""
    for studio_class in studio.classes.values():
        for date in studio_class.dates:
            if date.announced and date.on.date() >= today:
                yield from _of_date(date, today)


def _of_date(date: ClassDate, today: day) -> Iterator[Finding]:
    days = date.announced
    if any(before > after for before, after in pairwise(days)):
        yield caution(
            "announced-out-of-order",
            date.at("announced"),
            "The days on which this date and its changes were announced do not follow one another, so calendars and feeds may bear the "
            "wrong one.",
            "Write the day on which the date itself was announced first, then that of each change.",
        )
    elif days[-1] > today:
        yield caution(
            "announced-ahead",
            date.at("announced"),
            f"{days[-1]} is still to come, so this date cannot have been announced then. Calendars and feeds do not bear that day.",
            "Correct the day, or leave `announced` out until people have been told.",
        )
    if len(days) <= date.revision:
        wanted = date.revision + 1
        yield caution(
            "announced-too-seldom",
            date.at("announced"),
            f"With `revision: {date.revision}` people were told of this date on {wanted} days, when it was set and with each change, and "
            f"{_named(len(days))} here. Calendars and feeds bear instead the day on which a change was first published, and only the "
            "folder of the output knows that one.",
            f"Write {wanted} days, the first one first, for example `announced: {_example(days, wanted, today)}`.",
        )


def _named(number: int) -> str:
    return "one is named" if number == 1 else f"{number} are named"


def _example(days: tuple[day, ...], wanted: int, today: day) -> str:
    return f"[{', '.join(str(one) for one in (*days, *[today] * (wanted - len(days))))}]"
