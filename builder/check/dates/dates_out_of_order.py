"""enrolled-over-seats, date-twice: dates that cannot be kept."""

from collections.abc import Iterator

from builder.model.finding import Finding, stop
from builder.model.studio import Studio


def find_dates_out_of_order(studio: Studio) -> Iterator[Finding]:
    """Compare the dates of a class with its seats and with one another."""
    for studio_class in studio.classes.values():
        seen = set()
        for date in studio_class.dates:
            if date.enrolled > studio_class.seats:
                yield stop(
                    "enrolled-over-seats",
                    date.enrolled_place,
                    f"{date.enrolled} are enrolled for {studio_class.seats} seats.",
                    "Correct the number, or raise `seats:` if room and staff allow it.",
                )
            if date.on in seen:
                yield stop("date-twice", date.place, "This date stands twice.", "Remove one of the two, or correct it.")
            seen.add(date.on)
