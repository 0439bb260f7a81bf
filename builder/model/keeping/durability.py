"""How long something keeps, in whole months and days."""

import calendar
from dataclasses import dataclass
from datetime import date, timedelta

# Months that begin here have as many days as so many ever have: up to twelve (six are 184 days, twelve 366).
_LONGEST_MONTHS = date(2023, 7, 1)


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

    def is_longer_than(self, other: "Durability") -> bool:
        """Tell whether it is over later, also where the months of both are long: 26 weeks are no longer than six months."""
        return self.after(_LONGEST_MONTHS) > other.after(_LONGEST_MONTHS)
