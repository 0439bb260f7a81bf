"""A part of a lesson with the minutes at which it begins and ends."""

from dataclasses import dataclass

from builder.model.teaching.lesson import Part, Who


@dataclass(frozen=True)
class TimedPart:
    """A part of the lesson with the minutes after the start at which it begins and ends. `left` is what of a wait no part fills,
    `met` are the hazards that whoever does it meets beyond those of its amounts (`reckon/teaching/met.py`).
    """

    part: Part
    number: int
    begins: int
    ends: int
    left: int = 0
    met: tuple[str, ...] = ()

    @property
    def alone(self) -> int:
        """Return the minutes that are nobody else's: a wait counts only as far as no part is laid into it."""
        return self.left if self.part.who is Who.WAITING else self.ends - self.begins


@dataclass(frozen=True)
class HomePart:
    """A part that is done at home. `met` are the hazards that it brings beyond those of its amounts (`reckon/teaching/met_at_home.py`)."""

    part: Part
    met: tuple[str, ...]


@dataclass(frozen=True)
class StaffPart:
    """What staff do ahead or after. Minutes count from the start of the class, below zero before it; None where it is on another day.

    `met` are the hazards that they meet beyond those of its amounts.
    """

    part: Part
    begins: int | None
    ends: int | None
    met: tuple[str, ...] = ()
