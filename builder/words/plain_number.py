"""A number in figures as people write them: rounded to so many digits, with a decimal point, never with a power of ten; and how many."""

from decimal import Context, Decimal
from fractions import Fraction


def plain_number(number: Fraction, digits: int = 12) -> str:
    """Return a number with at most so many digits that count: 1/8 is `0.125`, and with two digits `0.13`."""
    context = Context(prec=digits)
    quotient = context.divide(Decimal(number.numerator), Decimal(number.denominator))
    return format(quotient.normalize(context), "f") if quotient else "0"


def how_many(number: int, one: str, many: str = "") -> str:
    """Return how many of something there are: `1 seat`, `2 seats`, and with a word of its own for many `2 people`."""
    return f"{number} {one if number == 1 else many or one + 's'}"
