"""Coming dates of which a roster lists fewer people than are enrolled.

Decided: a date of which nobody is listed has no list yet, as a class without a roster has none, and nothing is said; one whose list has
begun is taken for whole. Why: the sheets of the staff compare allergies and count choices for those who are listed, and reads as if these
were all who come.

Decided: lines that cannot be read, and people of no date, count as listed. Why: they have a finding of their own, and may be the ones.
"""

from collections.abc import Iterator
from datetime import date

from builder.check.rule import STUDIO_ON_A_DAY, rule_on
from builder.model.dates.studio_class import StudioClass
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.roster.roster import Roster, dates_meant, rows_of
from builder.model.studio import Studio


@rule_on(
    STUDIO_ON_A_DAY,
    FindingKind("roster-below-enrolled", CAUTION, "A roster lists fewer people than are enrolled: nothing is known of the others."),
)
def find_rosters_too_short(studio: Studio, today: date) -> Iterator[Finding]:
    """Compare the list of each coming date, once it has begun, with how many are enrolled."""
    for key, roster in studio.rosters.items():
        studio_class = studio.classes.get(key)
        if studio_class is not None:
            yield from _of_class(roster, studio_class, today)


def _of_class(roster: Roster, studio_class: StudioClass, today: date) -> Iterator[Finding]:
    astray = roster.unread + sum(len(dates_meant(row, studio_class)) != 1 for row in roster.rows)
    for when in studio_class.dates:
        listed = len(tuple(rows_of(roster, studio_class, when)))
        missing = when.enrolled - listed
        if when.takes_place and when.on.date() >= today and listed and missing > astray:
            others = "the last of them" if missing == 1 else "the others"
            yield caution(
                "roster-below-enrolled",
                when.at("enrolled"),
                f"{when.enrolled} are enrolled on {when.on:%Y-%m-%d %H:%M}, and the roster lists {listed}. What {others} must not touch, "
                f"and what they chose, is not known here: the roster compares allergies only for people on the list.",
                "Add a line to roster.csv for each who comes, or correct `enrolled:`. Ask whoever is not listed about allergies before the "
                "class.",
            )
