"""A typeface as its outlines have it: how wide each letter is, and how high the letters are by which a law measures type."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from functools import cached_property
from itertools import pairwise

POINT = 25.4 / 72


class MeasuredOn(StrEnum):
    """What the height of type is measured on: the small o (the capitals where no small letter is used), or the figures."""

    LETTERS = "letters"
    FIGURES = "figures"


@dataclass(frozen=True)
class Typeface:
    """One face. Widths and heights are parts of the type size (em), from the font's own outlines; `figure` is the lowest of ten.

    `kerning` is what stands between two letters beyond their widths, where the face is set with it; `bearings` the space before an outline.
    """

    widths: Mapping[int, float]
    capital: float
    small_o: float
    figure: float
    kerning: Mapping[tuple[int, int], float] = field(default_factory=dict)
    bearings: Mapping[int, float] = field(default_factory=dict)

    @cached_property
    def widest(self) -> float:
        """Return the width of the widest letter, for letters that the face does not have: a finding tells of those."""
        return max(self.widths.values())

    def ems(self, text: str) -> float:
        """Return the width of a text as a part of the type size."""
        wide = sum(self.widths.get(ord(letter), self.widest) for letter in text)
        if self.kerning:
            wide += sum(self.kerning.get((ord(one), ord(other)), 0.0) for one, other in pairwise(text))
        return wide

    def width(self, text: str, points: float) -> float:
        """Return the width of a text in millimetres."""
        return self.ems(text) * points * POINT

    def size_for(self, text: str, millimetres: float, measured_on: MeasuredOn) -> float:
        """Return the type size in points at which a text is as high as that."""
        letters = self.small_o if any(letter.islower() for letter in text) else self.capital
        return millimetres / POINT / (self.figure if measured_on is MeasuredOn.FIGURES else letters)
