"""The dates as a file for programs: what the site says of each, and what the next publication compares its revisions with."""

import json

from builder.compose.addresses import Address
from builder.compose.document_kind import Composed
from builder.compose.edition import Edition
from builder.model.dates.published_date import CANCELLED, CONFIRMED, FORMAT, VERSION, PublishedDate
from builder.model.studio import Studio


def compose_published_dates(edition: Edition, studio: Studio, _: Address) -> Composed:
    """List the dates of every class that is published, and those shown before of classes that are held back."""
    dates = [
        PublishedDate(studio_class.key, date.first_set, date.on, not date.takes_place, date.revision)
        for studio_class, _ in edition.classes
        for date in studio_class.dates
    ]
    entries = [_entry(date) for date in sorted((*studio.published, *dates), key=lambda one: one.id)]
    text = json.dumps({"format": FORMAT, "version": VERSION, "dates": entries}, indent=2, ensure_ascii=False)
    return Composed("Dates", f"{text}\n")


def _entry(date: PublishedDate) -> dict[str, object]:
    return {
        "id": date.id,
        "class": date.class_key,
        "first set": date.first_set.isoformat(timespec="minutes"),
        "on": date.on.isoformat(timespec="minutes"),
        "status": CANCELLED if date.cancelled else CONFIRMED,
        "revision": date.revision,
    }
