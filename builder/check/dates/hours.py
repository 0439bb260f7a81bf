"""A date at an hour that the clocks of its time zone skip, or show twice: nobody could say when the class begins."""

from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.studio import Studio


@rule_on(
    STUDIO,
    FindingKind("hour-not-on-the-clock", STOP, "A date begins at an hour that the clocks skip when summer time begins."),
    FindingKind("hour-twice-on-the-clock", STOP, "A date begins at an hour that the clocks show twice when summer time ends."),
)
def find_hours_that_clocks_do_not_show_once(studio: Studio) -> Iterator[Finding]:
    """Compare the hour of each date with the rules of the studio's time zone; without a zone there is nothing to compare."""
    if not studio.profile.time_zone:
        return
    zone = ZoneInfo(studio.profile.time_zone)
    for studio_class in studio.classes.values():
        for date in studio_class.dates:
            when = f"{date.on:%Y-%m-%d %H:%M}"
            if _is_skipped(date.on, zone):
                yield stop(
                    "hour-not-on-the-clock",
                    date.place,
                    f"{when} does not exist in {studio.profile.time_zone}: the clocks are put forward over it.",
                    f"Write an hour that there is, for example {_after(date.on, zone):%Y-%m-%d %H:%M}.",
                )
            elif _is_shown_twice(date.on, zone):
                yield stop(
                    "hour-twice-on-the-clock",
                    date.place,
                    f"{when} comes twice in {studio.profile.time_zone}: the clocks are put back over it.",
                    f"Write an hour that comes once, for example {date.on + timedelta(hours=1):%Y-%m-%d %H:%M}.",
                )


def _is_skipped(moment: datetime, zone: ZoneInfo) -> bool:
    return _after(moment, zone) != moment


def _after(moment: datetime, zone: ZoneInfo) -> datetime:
    """Return what the clocks show at that moment: later where they skip it."""
    return moment.replace(tzinfo=zone).astimezone(UTC).astimezone(zone).replace(tzinfo=None, fold=0)


def _is_shown_twice(moment: datetime, zone: ZoneInfo) -> bool:
    return moment.replace(tzinfo=zone).utcoffset() != moment.replace(tzinfo=zone, fold=1).utcoffset()
