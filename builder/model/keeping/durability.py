"""How long something keeps, in whole months and days."""

import calendar
from dataclasses import dataclass
from datetime import date, timedelta


@dataclass(frozen=True)
class Durability:
    """A length of time in whole months and days."""

    months: int
    days: int

    def after(self, day: date) -> date:
        """Return the day on which it is over; a month that is too short ends on its last day."""
        years, month = divmod(day.month - 1 + self.months, 12)
        year = day.year + years
        last = calendar.monthrange(year, month + 1)[1]
        return date(year, month + 1, min(day.day, last)) + timedelta(days=self.days)
