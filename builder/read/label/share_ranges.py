"""A supplier's figure for one part of a blend becomes a range of shares: `12 %`, `60 to 75 %`, `at most 5 %`, `at least 30 %`."""

import re
from fractions import Fraction

from builder.model.label.declaration import NOTHING, WHOLE, Range
from builder.read.text.text_error import TextError, quoted
from builder.read.values.amounts import parse_part_of_whole
from builder.read.values.numbers import tidy

_BETWEEN = re.compile(r"(.+?)\s*(?:%\s*)?(?:to|-|–)\s*(.+)%", re.IGNORECASE)
_END = re.compile(r"(at most|at least)\s+(.+)", re.IGNORECASE)


def parse_share_range(text: str) -> Range:
    """Read the least and the most that a share can be.

    Errors: what is no percentage from 0 to 100, and a range whose lower end is above its upper end. Raises TextError.
    """
    written = tidy(text)
    if end := _END.fullmatch(written):
        share = parse_part_of_whole(end[2]).fraction
        return (NOTHING, share) if end[1].casefold() == "at most" else (share, WHOLE)
    if not (between := _BETWEEN.fullmatch(written)):
        share = parse_part_of_whole(written).fraction
        return share, share
    low, high = _end(between[1]), _end(between[2])
    if low > high:
        wrong = f"The lower end of {quoted(text)} is above its upper end."
        raise TextError("figure-range-upside-down", wrong, "Look the figure up again and exchange the two.")
    return low, high


def _end(number: str) -> Fraction:
    return NOTHING if number.strip() in ("0", "0.0") else parse_part_of_whole(f"{number.strip()} %").fraction
