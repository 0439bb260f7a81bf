"""The range of a superfat as a line with its marks, and as one sentence."""

from fractions import Fraction
from math import ceil, floor

from builder.compose.recipe.wording import number, percent, percentage, shortest_digits
from builder.compose.views.lye import RangeTick, RangeView
from builder.model.lye.lye_result import LyeResult
from builder.words.say import message, say

STEP = Fraction(2, 100)
# The line takes this part of the width, so that the words of its ends have room.
LEFT, WIDTH = Fraction(4), Fraction(92)


def view_range(lye: LyeResult, key: str) -> RangeView:
    """Draw the line from the worst case to the best, with nothing at its mark of zero; a mark stands at every two per cent."""
    first = min(floor(lye.lowest / STEP), -1) * STEP
    last = max(ceil(lye.highest / STEP), 1) * STEP

    def place(share: Fraction) -> str:
        return f"{shortest_digits(LEFT + (share - first) / (last - first) * WIDTH, 2)}%"

    marks = [first + STEP * step for step in range(int((last - first) / STEP) + 1)]
    return RangeView(
        key=key,
        description=range_sentence(lye),
        span_left=place(lye.lowest),
        span_width=f"{shortest_digits((lye.highest - lye.lowest) / (last - first) * WIDTH, 2)}%",
        typical_left=place(lye.superfat),
        typical=percent(lye.superfat, 1),
        ticks=tuple(RangeTick(place(mark), percent(mark, 0), "zero" if mark == 0 else "whole") for mark in marks),
    )


def ends(lye: LyeResult) -> tuple[str, str]:
    """Write both ends with one decimal, each rounded outwards, so that the span is never shown narrower than it is."""
    lowest, highest = Fraction(floor(lye.lowest * 1000), 10), Fraction(ceil(lye.highest * 1000), 10)
    return percentage(number(lowest, 1)), percentage(number(highest, 1))


def range_sentence(lye: LyeResult) -> str:
    """Return in one sentence how far the superfat may be from what is meant."""
    lowest, highest = ends(lye)
    return say(_sentence(lye), lowest=lowest, highest=highest)


def _sentence(lye: LyeResult) -> str:
    """Return the sentence; it says that no lye can be left over only where that is so whether waxes take lye or not."""
    if lye.lowest < 0:
        return message(
            "If every figure and every weighing were off to one side at once, between {lowest} and {highest} of the fat would find no lye, "
            "and below 0% lye is left over: use none that has not passed its check."
        )
    if lye.lowest_without_waxes < 0:
        return message(
            "If every figure and every weighing were off to one side at once, between {lowest} and {highest} of the fat would find no lye. "
            "That counts on the wax to take its lye; if it took none, lye could be left over."
        )
    return message(
        "If every figure and every weighing were off to one side at once, between {lowest} and {highest} of the fat would find no lye, so "
        "no lye would be left over."
    )
