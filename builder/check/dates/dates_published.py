"""Dates that differ from what the last publication showed."""

from collections.abc import Iterator

from builder.check.rule import STUDIO, rule_on
from builder.model.dates.published_date import PublishedDate
from builder.model.dates.studio_class import ClassDate
from builder.model.finding import Finding, caution, stop
from builder.model.finding_kind import CAUTION, STOP, FindingKind
from builder.model.studio import Studio


@rule_on(
    STUDIO,
    FindingKind("date-gone", CAUTION, "A date that was published is not in the class file any more, and whoever has noted it will come."),
    FindingKind(
        "revision-not-raised",
        STOP,
        "A published date has been changed, and its revision has not risen, so that calendars keep the old entry.",
    ),
)
def find_dates_that_differ(studio: Studio) -> Iterator[Finding]:
    """Compare each date that was shown with the same date in the class file."""
    for shown in studio.published:
        studio_class = studio.classes.get(shown.class_key)
        dates = studio_class.dates if studio_class else ()
        same = next((date for date in dates if date.first_set == shown.first_set), None)
        if same is not None:
            yield from _compare(shown, same)
        elif not shown.cancelled and shown.class_key not in studio.unread.classes:
            yield caution(
                "date-gone",
                studio_class.at("dates") if studio_class else studio.profile.place,
                f"The last publication shows a date of {shown.class_key} on {shown.on:%Y-%m-%d %H:%M}, and it is gone. Whoever has noted "
                "it will come.",
                f"Write it again with `cancelled: yes`, or write `moved from: {shown.first_set:%Y-%m-%d %H:%M}` at the date to which it "
                f"was moved, and `revision: {shown.revision + 1}`.",
            )


def _compare(shown: PublishedDate, date: ClassDate) -> Iterator[Finding]:
    changed = (shown.on, shown.cancelled) != (date.on, not date.takes_place)
    least = shown.revision + changed
    if date.revision < least:
        what = "and it has been changed since" if changed else "and a revision never falls"
        yield stop(
            "revision-not-raised",
            date.at("revision"),
            f"The last publication shows this date with revision {shown.revision}, {what}. A calendar keeps what it has unless the number "
            "rises.",
            f"Write `revision: {least}`, or more.",
        )
