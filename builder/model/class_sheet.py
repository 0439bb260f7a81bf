"""What the calculation pass makes of a class: its batches for the people who come, its home batches, its clock."""

from dataclasses import dataclass
from fractions import Fraction

from builder.model.batch_sheet import BatchSheet
from builder.model.clock import AheadPart, TimedPart
from builder.model.preparation import Preparation
from builder.model.quantity import Mass
from builder.model.studio_class import ClassDate, Format, HomeSize, Make, StudioClass
from builder.model.supervision import Supervision
from builder.model.teaching import Teaching


@dataclass(frozen=True)
class PlannedBatch:
    """A batch made `copies` times. `purpose` is `class`, `group`, `student` or `teacher` (what is spare and shown).

    `also` is the batch once more for each other container that it fills, with the portions and doses of that container.
    """

    purpose: str
    sheet: BatchSheet
    copies: int
    also: tuple[BatchSheet, ...] = ()


@dataclass(frozen=True)
class Needed:
    """What the class needs of one ingredient in all, from the amounts as weighed."""

    ingredient: str
    mass: Mass


@dataclass(frozen=True)
class LyeAhead:
    """How the studio mixes its ready-mixed lye from solid alkali: both weights make `solution`, of the stated strength.

    It holds a little more than the batches need, for what stays in the bottles.
    """

    alkali: str
    solution: Mass
    solid: Mass
    water: Mass
    strength: Fraction


@dataclass(frozen=True)
class HomeBatch:
    """One home size and its batch, in grams and ounces."""

    size: HomeSize
    sheet: BatchSheet


@dataclass(frozen=True)
class MadeSheet:
    """One product of a class: its batches, what they need in all, how many containers there are, its home batches.

    `also_containers` are the numbers of the other containers that its batches fill, in the order of the class file.
    """

    make: Make
    batches: tuple[PlannedBatch, ...]
    needed: tuple[Needed, ...]
    containers: int
    home: tuple[HomeBatch, ...]
    lye_ahead: LyeAhead | None = None
    also_containers: tuple[int, ...] = ()

    @property
    def batch(self) -> BatchSheet:
        """Give the batch that the lesson speaks of: the class's, the group's or the student's own."""
        return self.batches[0].sheet

    @property
    def fillings(self) -> tuple[tuple[BatchSheet, int], ...]:
        """Give the batch once for each kind of container that it fills, with how many of it there are in all."""
        return ((self.batch, self.containers), *zip(self.batches[0].also, self.also_containers, strict=True))


@dataclass(frozen=True)
class ClassSheet:
    """One class for a number of students: on one of its dates, or for a full class where `date` is None."""

    studio_class: StudioClass
    date: ClassDate | None
    students: int
    groups: int
    last_group: int
    made: tuple[MadeSheet, ...]
    timeline: tuple[TimedPart, ...]
    ahead: tuple[AheadPart, ...]
    teaching: Teaching
    supervision: Supervision
    preparation: Preparation

    @property
    def format(self) -> Format:
        """Give the format that the parts come to, which is the one that is published."""
        return self.teaching.format

    @property
    def staff(self) -> tuple[int, int]:
        """Give the teachers and the assistants of this date."""
        return self.studio_class.staff_on(self.date)
