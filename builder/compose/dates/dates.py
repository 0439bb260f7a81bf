"""Dates, times and prices as people read them, from the Unicode locale data with a locale pinned by the studio's region.

Decided: the reason of a cancellation is published as written, `yes` says no more. Why: the studio chooses what people are told.
"""

from datetime import date, datetime, time
from decimal import Decimal, localcontext
from fractions import Fraction

from babel import Locale
from babel.dates import format_date, format_interval, format_skeleton, format_time, get_time_format
from babel.numbers import format_currency, get_currency_precision, get_decimal_symbol
from babel.units import format_unit

from builder.words.say import say

NARROW_NBSP = "\u202f"
NBSP = "\u00a0"
# More than any number of packs at any price that can be written comes to.
MOST_DIGITS = 100


def long_date(day: date, locale: str) -> str:
    """Write a date with its weekday: `Saturday, March 6, 2027`."""
    return format_date(day, "full", locale=locale).replace(NARROW_NBSP, NBSP)


def plain_date(day: date, locale: str) -> str:
    """Write a date without its weekday: `March 6, 2027`."""
    return format_date(day, "long", locale=locale).replace(NARROW_NBSP, NBSP)


def short_date(day: date, locale: str, *, with_year: bool = False) -> str:
    """Write a date for a narrow column: `Mar 6`, with its year `Mar 6, 2027`."""
    moment = datetime.combine(day, time())
    return _glued(format_skeleton("yMMMd" if with_year else "MMMd", moment, locale=locale))


def clock(moment: datetime, locale: str) -> str:
    """Write a time of day: `10:00 AM`, or `10:00` in a 24-hour locale."""
    return format_time(moment.time(), "short", locale=locale).replace(NARROW_NBSP, NBSP)


def clock_span(start: datetime, end: datetime, locale: str) -> str:
    """Write from when to when something lasts: `10:00 AM – 12:00 PM`, or `10:00–12:00` in a 24-hour locale."""
    # A small h may also be a word of the pattern: `HH 'h' mm` in French of Canada.
    skeleton = "Hm" if "H" in get_time_format("short", locale=locale).pattern else "hm"
    return _glued(format_interval(start, end, skeleton, locale=locale).replace("\u2009", NBSP))


def weekday(day: date, locale: str, *, short: bool = False) -> str:
    """Write the day of the week: `Saturday`, short `Sat`, as it stands by itself."""
    return format_date(day, "ccc" if short else "cccc", locale=locale)


def month_and_year(day: date, locale: str) -> str:
    """Write a month with its year: `March 2027`."""
    return _glued(format_skeleton("yMMMM", datetime.combine(day, time()), locale=locale))


def length_in_words(number: int, unit: str, locale: str) -> str:
    """Write a length of time in days, weeks, months or years: `3 months`, `3 mois`."""
    return format_unit(number, f"duration-{unit}", locale=locale).replace(" ", NBSP)


def decimal_sign(locale: str) -> str:
    """Return the sign before the decimals of a number."""
    return get_decimal_symbol(locale)


def price(value: Fraction, currency: str, locale: str) -> str:
    """Write a price; a whole amount stands without decimals, and nothing to pay is `Free`."""
    if not value:
        return say("Free")
    amount = Decimal(value.numerator) / Decimal(value.denominator)
    if value.denominator == 1:
        whole = Locale.parse(locale).currency_formats["standard"].pattern.replace(".00", "")
        written = format_currency(amount, currency, locale=locale, format=whole, currency_digits=False)
    else:
        written = format_currency(amount, currency, locale=locale)
    return written.replace(NARROW_NBSP, NBSP)


def money(value: Fraction, currency: str, locale: str) -> str:
    """Write a sum of money with the decimals of its currency; the exact half goes to the even digit."""
    rounded = Fraction(round(value, get_currency_precision(currency)))
    with localcontext(prec=MOST_DIGITS):
        amount = Decimal(rounded.numerator) / Decimal(rounded.denominator)
        return format_currency(amount, currency, locale=locale).replace(NARROW_NBSP, NBSP)


def _glued(written: str) -> str:
    """Return a text that no line breaks."""
    return written.replace(NARROW_NBSP, NBSP).replace(" ", NBSP)
