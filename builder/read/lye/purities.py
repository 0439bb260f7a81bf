"""The purity of an alkali, or its strength in a solution: `98 %`, `97 to 100 %`, or what is counted and its range, `99 %, 97 to 100 %`."""

import re
from fractions import Fraction

from builder.model.finding_kind import STOP, FindingKind
from builder.model.recipe.recipe import StatedPurity
from builder.read.label.share_ranges import parse_share_range
from builder.read.text.text_error import AmountError, quoted
from builder.read.values.amounts import parse_part_of_whole
from builder.read.values.bounds import SOLID_ALKALI
from builder.read.values.numbers import tidy

FINDS = (
    FindingKind("purity-out-of-range", STOP, "A purity cannot be one of an alkali as it is bought."),
    FindingKind("purity-outside-its-range", STOP, "A purity lies outside of the range that is given with it."),
)

_COUNTED_AND_RANGE = re.compile(r"(.+%)\s*,\s*(.+)")


def parse_purity(text: str) -> StatedPurity:
    """Read the hydroxide by weight of a solid alkali. A range without a figure is counted by its middle.

    Errors: what is no percentage, what no solid alkali is, and a figure outside of its own range.
    """
    stated = parse_strength(text)
    for share in (stated.low, stated.high, stated.typical):
        _judge(text, share * 100)
    return stated


def parse_strength(text: str) -> StatedPurity:
    """Read the hydroxide by weight of a solution, written as the purity of a solid is; any strength is read. Errors: else those of it."""
    if two := _COUNTED_AND_RANGE.fullmatch(tidy(text)):
        typical, (low, high) = parse_part_of_whole(two[1]).fraction, parse_share_range(two[2])
    else:
        low, high = parse_share_range(text)
        typical = (low + high) / 2
    if not low <= typical <= high:
        wrong = f"In {quoted(text)} the first figure lies outside of the range that follows it."
        remedy = 'Write what the certificate states, then the range of the grade, for example "99 %, 97 to 100 %".'
        raise AmountError("purity-outside-its-range", wrong, remedy)
    return StatedPurity(typical, low, high)


def _judge(text: str, percent: Fraction) -> None:
    if not SOLID_ALKALI.hold(percent):
        wrong = f"No alkali has a purity of {quoted(text)}: {SOLID_ALKALI.reason}."
        raise AmountError("purity-out-of-range", wrong, SOLID_ALKALI.remedy(percent))
