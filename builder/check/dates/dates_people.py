"""People whom somebody has to tell."""

from collections.abc import Iterator

from builder.check.rule import STUDIO, rule_on
from builder.model.dates.studio_class import ClassDate, StudioClass
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.roster.roster import rows_of
from builder.model.studio import Studio
from builder.words.plain_number import how_many


@rule_on(
    STUDIO,
    FindingKind("roster-date-cancelled", CAUTION, "People are listed for a date that is cancelled."),
    FindingKind("waiting-beside-free-seats", CAUTION, "People wait for a seat while seats are free."),
    FindingKind("cancelled-with-people", CAUTION, "A date is cancelled and people are enrolled or waiting, whom somebody has to tell."),
)
def find_people_to_tell(studio: Studio) -> Iterator[Finding]:
    """Look for people who wait beside a free seat, and for people who would come to a date that is cancelled."""
    for key, studio_class in studio.classes.items():
        for date in studio_class.dates:
            if date.takes_place:
                yield from _waiting(date, studio_class)
            else:
                yield from _cancelled(date)
                roster = studio.rosters.get(key)
                rows = [row for wait in (False, True) for row in rows_of(roster, studio_class, date, waiting=wait)] if roster else []
                if rows:
                    yield caution(
                        "roster-date-cancelled",
                        rows[0].at("date"),
                        f"{how_many(len(rows), 'person is', 'people are')} listed for {_when(date)}, which is cancelled. Nothing is "
                        "prepared for them.",
                        "Tell them, then give the rows another date of the class or remove them.",
                    )


def _waiting(date: ClassDate, studio_class: StudioClass) -> Iterator[Finding]:
    free = studio_class.seats - date.enrolled
    if date.waiting and free > 0:
        yield caution(
            "waiting-beside-free-seats",
            date.at("waiting"),
            f"{how_many(date.waiting, 'person waits', 'people wait')} for a seat, and {how_many(free, 'seat is', 'seats are')} free.",
            "Offer the seats, raise `enrolled:` and lower `waiting:`; or accept this while you wait for an answer.",
        )


def _cancelled(date: ClassDate) -> Iterator[Finding]:
    count = date.enrolled + date.waiting
    if count:
        yield caution(
            "cancelled-with-people",
            date.at("enrolled") if date.enrolled else date.at("waiting"),
            f"{_when(date)} is cancelled, and {how_many(count, 'person is', 'people are')} enrolled or waiting. "
            "Whoever is not told stands before a closed door.",
            "Tell them, then take `enrolled:` and `waiting:` away.",
        )


def _when(date: ClassDate) -> str:
    return f"{date.on:%Y-%m-%d %H:%M}"
