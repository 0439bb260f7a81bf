"""A count of the inventory on a day that has not come yet."""

from collections.abc import Iterator
from datetime import date

from builder.check.rule import STUDIO_ON_A_DAY, rule_on
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.studio import Studio


@rule_on(
    STUDIO_ON_A_DAY, FindingKind("inventory-counted-ahead", CAUTION, "The stock is said to be counted on a day that is still to come.")
)
def find_counts_ahead(studio: Studio, today: date) -> Iterator[Finding]:
    """Compare the day of each count with today."""
    for one in studio.inventory:
        if one.counted > today:
            yield caution(
                "inventory-counted-ahead",
                one.at("counted"),
                f'{one.counted} is still to come, so "{one.name}" cannot have been counted then.',
                "Write the day on which it was counted. What is on order is no stock before it has come.",
            )
