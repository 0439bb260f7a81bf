"""Days as people and spreadsheets write them: `2027-03-06`, `3/6/2027`, `6.3.2027`, `March 6, 2027`, with or without a time of day.

Decided: with slashes the locale of the region says whether the month or the day comes first (Unicode locale data); where it has the year
first (Canada) such a day is read only if it can mean nothing else. Why: a person on the wrong date has no place, and no batch.
"""

import re
from datetime import date, datetime, time
from functools import cache

from builder.read.text.text_error import TextError, quoted
from builder.read.values.values import WRITE_A_DATE, parse_date

_MONTHS = ["january", "february", "march", "april", "may", "june", "july", "august", "september", "october", "november", "december"]
_TIME = r"(?:,?\s+(?:at\s+)?(?P<hour>\d{1,2}):(?P<minute>\d\d)(?::00)?\s*(?P<half>[ap]\.?m\.?)?)?"
_FIGURES = re.compile(rf"(?P<one>\d{{1,2}})(?P<sign>[/.\-])(?P<two>\d{{1,2}})(?P=sign)(?P<year>\d{{4}}){_TIME}", re.ASCII | re.IGNORECASE)
_DAY_FIRST = re.compile(rf"(?:[a-z]+,?\s+)?(?P<day>\d{{1,2}})\.?\s+(?P<month>[a-z]+)\.?,?\s+(?P<year>\d{{4}}){_TIME}", re.IGNORECASE)
_NAME_FIRST = re.compile(rf"(?:[a-z]+,?\s+)?(?P<month>[a-z]+)\.?\s+(?P<day>\d{{1,2}}),?\s+(?P<year>\d{{4}}){_TIME}", re.IGNORECASE)


def parse_roster_date(text: str, locale: str) -> datetime:
    """Read a day of a roster as it is written in a locale (`en_US`). Raises TextError where it is none, or can mean two days."""
    found = _FIGURES.fullmatch(text)
    if found:
        month, day = _month_and_day(text, int(found["one"]), int(found["two"]), found["sign"], locale)
        return _on(text, found, month, day)
    for named in (_DAY_FIRST.fullmatch(text), _NAME_FIRST.fullmatch(text)):
        month = _month_called(named["month"]) if named else 0
        if named and month:
            return _on(text, named, month, int(named["day"]))
    return parse_date(text)


def _month_and_day(text: str, one: int, two: int, sign: str, locale: str) -> tuple[int, int]:
    # With dots the day comes first wherever dots are written.
    month_first = False if sign == "." else _month_first(locale) if sign == "/" else None
    if one > 12 or two > 12 or one == two:
        month_first = two > 12
    if month_first is None:
        raise TextError("date-unreadable", f"{quoted(text)} can mean two days: nothing says whether the month comes first.", WRITE_A_DATE)
    return (one, two) if month_first else (two, one)


@cache
def _month_first(locale: str) -> bool | None:
    """Tell whether a locale writes the month before the day, by its short form of a day; None where the year comes before both."""
    # Loaded where a day can mean two: it takes longer than to read a roster.
    from babel import Locale

    first = Locale.parse(locale).date_formats["short"].pattern.lstrip("'")[0]
    return {"M": True, "L": True, "d": False}.get(first)


def _month_called(name: str) -> int:
    found = [number for number, month in enumerate(_MONTHS, 1) if len(name) >= 3 and month.startswith(name.casefold())]
    return found[0] if len(found) == 1 else 9 if name.casefold() == "sept" else 0


def _on(text: str, found: re.Match[str], month: int, day: int) -> datetime:
    hour = int(found["hour"] or 0)
    half = (found["half"] or "").casefold()[:1]
    if half and not 1 <= hour <= 12:
        hour = 24
    elif half:
        hour = hour % 12 + (12 if half == "p" else 0)
    try:
        written = datetime.combine(date(int(found["year"]), month, day), time(hour, int(found["minute"] or 0)))
    except ValueError:
        raise TextError("date-unreadable", f"{quoted(text)} is not a day of the calendar, or no time of a day.", WRITE_A_DATE) from None
    return parse_date(written.isoformat(sep=" ", timespec="minutes"))
