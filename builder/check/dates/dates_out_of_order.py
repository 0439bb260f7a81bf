"""Dates that cannot be kept."""

from collections.abc import Iterator

from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.studio import Studio
from builder.words.plain_number import how_many


@rule_on(
    STUDIO,
    FindingKind("enrolled-over-seats", STOP, "More people are enrolled than there are seats."),
    FindingKind("date-twice", STOP, "The same date stands twice."),
)
def find_dates_out_of_order(studio: Studio) -> Iterator[Finding]:
    """Compare the dates of a class with its seats and with one another."""
    for studio_class in studio.classes.values():
        seen = set()
        for date in studio_class.dates:
            if date.enrolled > studio_class.seats:
                yield stop(
                    "enrolled-over-seats",
                    date.at("enrolled"),
                    f"{how_many(date.enrolled, 'person is', 'people are')} enrolled for {how_many(studio_class.seats, 'seat')}.",
                    "Correct the number, or raise `seats:` if room and staff allow it.",
                )
            if date.on in seen:
                yield stop("date-twice", date.place, "This date stands twice.", "Remove one of the two, or correct it.")
            seen.add(date.on)
