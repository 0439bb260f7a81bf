"""A share in percent."""

from collections.abc import Callable
from fractions import Fraction

from builder.words.plain_number import plain_number


def percent(share: Fraction, digits: int = 3) -> str:
    """Write a share as a studio types it, which is how findings speak: at most so many digits that count, `0.125 %`."""
    return written_percent(share, lambda number: plain_number(number, digits), " ")


def written_percent(share: Fraction, write: Callable[[Fraction], str], space: str) -> str:
    """Write a share with a way to write its number, and what stands before the sign."""
    return f"{write(share * 100)}{space}%"
