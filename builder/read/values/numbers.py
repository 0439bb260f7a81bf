"""A number as people write it becomes an exact fraction: `12`, `0.98`, `3/4`, `1 1/2`, `1½`.

The grammar is closed. A comma is refused, since it is a decimal mark in some places and stands between thousands in others; so is
a number that begins with its point, since a point is easily overlooked.
"""

import re
import unicodedata
from fractions import Fraction

from builder.model.finding_kind import STOP, FindingKind
from builder.read.text.text_error import AmountError, quoted

FINDS = (FindingKind("number-unreadable", STOP, "A number cannot be read."),)

# Everything that a reader would take for one number, right or wrong.
NUMBER_RUN = re.compile(r"[.,]?[0-9](?:[0-9.,'’_]|\s+(?=[0-9])|\s*/\s*(?=[0-9]))*")

_FRACTION_SIGN = re.compile("[¼½¾⅐-⅞↉]")
_DECIMAL = re.compile(r"\d+(?:\.\d+)?", re.ASCII)
_FRACTION = re.compile(r"(?:(\d+)\s+)?(\d+)\s*/\s*(\d+)", re.ASCII)
_CURRENCY = re.compile(r"(?:[^\W\d_]{1,4}\.?|[$£€¥])\s*\d|\d[\d.,]*\s*(?:[^\W\d_]{1,4}\.?|[$£€¥])\s*$")
_MOST_DIGITS = 15
# More is a slip of the keyboard. Our own bound, far above any class of a studio.
MOST_PEOPLE = 500
_NO_MARKS = 'Write the number without marks between thousands and with a decimal point, for example "1500" or "2.5".'


def tidy(text: str) -> str:
    """Spell out fraction signs and give typographic minus signs and spaces their plain form."""
    spelled = _FRACTION_SIGN.sub(lambda sign: " " + unicodedata.normalize("NFKC", sign.group()), text)
    return " ".join(spelled.replace("\u2044", "/").replace("\u2212", "-").split())


def number_of(written: str) -> Fraction:
    """Read a number without a sign, already tidied. Raises AmountError."""
    if _DECIMAL.fullmatch(written) and len(written) <= _MOST_DIGITS:
        return Fraction(written)
    match = _FRACTION.fullmatch(written)
    if match and len(written) <= _MOST_DIGITS:
        whole, above, below = (int(part or 0) for part in match.groups())
        if below and (match[1] is None or above < below):
            return whole + Fraction(above, below)
    raise AmountError("number-unreadable", f"The number {quoted(written)} cannot be read. {_reason(written)}".rstrip(), _remedy(written))


def _reason(written: str) -> str:
    if "," in written:
        return "A comma is a decimal mark to some people and stands between thousands to others."
    if written.startswith("."):
        return "A point at the beginning is easily overlooked."
    return ""


def _remedy(written: str) -> str:
    if len(written) > _MOST_DIGITS:
        return f"Write it with fewer figures: {_MOST_DIGITS} are more than any scale can show."
    if re.fullmatch(r"\.\d+", written):
        return f'Write a zero before the point: "0{written}".'
    if "/" in written:
        return 'Write a whole number and a fraction of less than one, for example "1 1/2".'
    return _NO_MARKS


def parse_number(text: str) -> Fraction:
    """Read a plain number, which may be below zero. Raises AmountError."""
    plain = tidy(text)
    below_zero = plain.startswith("-")
    digits = plain[1:].lstrip() if below_zero else plain
    if not NUMBER_RUN.fullmatch(digits):
        raise AmountError(
            "number-unreadable", f"{quoted(text)} is not a number.", 'Write a number and nothing else, for example "12" or "2.5".'
        )
    return -number_of(digits) if below_zero else number_of(digits)


def parse_positive(text: str) -> Fraction:
    """Read a number above zero. Raises AmountError."""
    number = parse_number(text)
    if number <= 0:
        raise AmountError("amount-not-positive", f"{quoted(text)} is not above zero.", "Write a number above zero.")
    return number


def parse_price(text: str) -> Fraction:
    """Read a sum of money without its currency; zero is allowed. Raises AmountError."""
    if _CURRENCY.match(text):
        raise AmountError(
            "number-unreadable", f"{quoted(text)} names a currency, and that of studio.yaml holds for all.", "Write the number alone."
        )
    price = parse_number(text)
    if price < 0:
        raise AmountError(
            "amount-not-positive", f"The price {quoted(text)} is below zero.", 'Write the price as a number, for example "48.00".'
        )
    return price


def parse_whole(text: str) -> int:
    """Read a whole number, zero or above. Raises AmountError."""
    if not re.fullmatch(r"[0-9]{1,15}", text):
        words = re.fullmatch(r"([0-9]{1,15})\s*[^\W\d].*", text)
        raise AmountError(
            "number-unreadable",
            f"{quoted(text)} is not a whole number.",
            f"Write the number alone: {words[1]}." if words else 'Write a whole number in figures, for example "12".',
        )
    return int(text)


def parse_whole_above_zero(text: str) -> int:
    """Read a whole number, one or above. Raises AmountError."""
    number = parse_whole(text)
    if not number:
        raise AmountError("amount-not-positive", f"{quoted(text)} is not above zero.", "Write at least 1.")
    return number


def parse_people(text: str) -> int:
    """Read how many people there are, none or more."""
    return _people(parse_whole(text))


def parse_people_above_zero(text: str) -> int:
    """Read how many people there are, one or more."""
    return _people(parse_whole_above_zero(text))


def _people(number: int) -> int:
    if number > MOST_PEOPLE:
        raise AmountError(
            "figure-out-of-range", f"{number} people are more than one class holds.", f"Write at most {MOST_PEOPLE}, or two dates."
        )
    return number
