"""The file `dates.json` of the last publication becomes the dates that it showed.

Decided: a date is known by its class and the time at which it was first set; `site/dates.json` keeps time, state and revision. Why: no
number to invent for the studio; the calendar can use it as it stands.
"""

import json
from datetime import date, datetime
from pathlib import Path

from builder.model.dates.published_date import CANCELLED, CONFIRMED, FILE, FORMAT, VERSION, PublishedDate
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.place import Place
from builder.read.text.text_files import TextFolder

FINDS = (
    FindingKind(
        "published-dates-unreadable", CAUTION, "The dates of the last publication cannot be read, so that they were compared with nothing."
    ),
)


def read_published_dates(output: Path, on: date) -> tuple[tuple[PublishedDate, ...], list[Finding]]:
    """Read the dates from a day on that the last publication to an output folder showed; none where there was no publication."""
    # Whatever is wrong with a file that we have written ourselves, it is told as one thing, and it stops nothing.
    folder, name = TextFolder(output, [], f"{output.name}/"), f"site/{FILE}"
    if not folder.has(name):
        return (), []
    try:
        dates = _dates(json.loads(folder.text(name) or ""))
    except (ValueError, TypeError, KeyError, RecursionError):
        return (), [_unreadable(folder.place(name))]
    return tuple(one for one in dates if one.on.date() >= on), []


def _dates(data: dict[str, object]) -> list[PublishedDate]:
    if data["format"] != FORMAT or data["version"] not in (1, VERSION) or not isinstance(data["dates"], list):
        raise ValueError(FORMAT)
    return [_date(entry) for entry in data["dates"]]


def _date(entry: dict[str, object]) -> PublishedDate:
    key, revision, status = entry["class"], entry["revision"], entry["status"]
    if not isinstance(key, str) or not isinstance(revision, int) or status not in (CONFIRMED, CANCELLED):
        raise TypeError(FORMAT)
    told = date.fromisoformat(str(entry["told"])) if "told" in entry else None  # Version 1 did not say it.
    return PublishedDate(key, _moment(entry["first set"]), _moment(entry["on"]), status == CANCELLED, revision, told)


def _moment(text: object) -> datetime:
    return datetime.fromisoformat(str(text)).replace(tzinfo=None)


def _unreadable(place: Place) -> Finding:
    return caution(
        "published-dates-unreadable",
        place,
        "The dates of the last publication cannot be read here, so nobody can tell whether the revisions have risen since.",
        "Compare the revisions of dates that have changed yourself. The next publication writes this file anew.",
    )
