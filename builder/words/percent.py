"""A share of one in percent, as findings write it."""

from fractions import Fraction

from builder.words.plain_number import plain_number


def percent(share: Fraction, digits: int = 3) -> str:
    """Write a share as a studio types it, which is how findings speak: at most so many digits that count, `0.125 %`."""
    return f"{plain_number(share * 100, digits)} %"
