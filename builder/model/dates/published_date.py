"""A date as the last publication showed it: what calendars and readers have been told."""

from dataclasses import dataclass, field
from datetime import date, datetime

FORMAT, VERSION = "stillroom dates", 2
FILE = "dates.json"
CONFIRMED, CANCELLED = "confirmed", "cancelled"  # The words of RFC 5545 for the status of an event.


@dataclass(frozen=True)
class PublishedDate:
    """One date of a class. It is known by its class and by the time at which it was first set, which no change touches.

    `told` is the day on which it was announced as it is, or first published so; None where that is not known.
    """

    class_key: str
    first_set: datetime
    on: datetime
    cancelled: bool
    revision: int
    told: date | None = field(default=None, compare=False)

    @property
    def id(self) -> str:
        """Return the name under which it is known through all its changes."""
        return f"{self.class_key}/{self.first_set.isoformat(timespec='minutes')}"
