"""The dates as a file for programs: what the site says of each, and what the next publication compares its revisions with."""

import json
from datetime import date as day

from builder.compose.addresses import Address
from builder.compose.dates.shown import shown
from builder.compose.document_kind import Composed
from builder.compose.edition import Edition
from builder.model.dates.published_date import CANCELLED, CONFIRMED, FORMAT, VERSION, PublishedDate
from builder.model.studio import Studio


def compose_published_dates(edition: Edition, studio: Studio, _: Address) -> Composed:
    """List the dates of every class that is published, and those shown before of classes that are held back."""
    dates = [shown(edition, studio_class, date) for studio_class, _ in edition.classes for date in studio_class.dates]
    entries = [_entry(date, edition.today) for date in sorted((*studio.published, *dates), key=lambda one: one.id)]
    text = json.dumps({"format": FORMAT, "version": VERSION, "dates": entries}, indent=2, ensure_ascii=False)
    return Composed(f"{text}\n")


def _entry(date: PublishedDate, today: day) -> dict[str, object]:
    return {
        "id": date.id,
        "class": date.class_key,
        "first set": date.first_set.isoformat(timespec="minutes"),
        "on": date.on.isoformat(timespec="minutes"),
        "status": CANCELLED if date.cancelled else CONFIRMED,
        "revision": date.revision,
        "told": (date.told or today).isoformat(),
    }
