"""What has to be ready for a class: what is weighed where and by whom, bottles of lye, gear for each person, what stands where."""

from dataclasses import dataclass

from builder.model.lesson import Part, Who
from builder.model.quantity import Mass


@dataclass(frozen=True)
class CupLine:
    """One ingredient of one planned batch: `each` is weighed `cups` times, in `part` (None where no part of the lesson names it).

    `purpose` is that of the batch (class, group, student, teacher); `bottled` says that it is ready-mixed lye.
    """

    recipe: str
    purpose: str
    ingredient: str
    each: Mass
    cups: int
    part: Part | None
    bottled: bool

    @property
    def in_a_cup(self) -> bool:
        """Say whether it stands ready in a marked cup when the class begins; what is in bottles is weighed out of them."""
        return not self.bottled and (self.part is None or self.part.who is Who.AHEAD)


@dataclass(frozen=True)
class Bottles:
    """Ready-mixed lye shared out: so many bottles, each with what its group needs (`each`), from `solution` in all."""

    ingredient: str
    bottles: int
    each: Mass
    solution: Mass


@dataclass(frozen=True)
class Worn:
    """One piece of gear, and how many people need one of it."""

    item: str
    people: int


@dataclass(frozen=True)
class Preparation:
    """Everything to get ready. `at_benches`, `at_demo` and `at_sink` are what stands there; `kit` is for safety and stands in reach."""

    cups: tuple[CupLine, ...]
    bottles: tuple[Bottles, ...]
    worn: tuple[Worn, ...]
    kit: tuple[str, ...]
    at_benches: tuple[str, ...]
    at_demo: tuple[str, ...]
    at_sink: tuple[str, ...]

    def cups_of(self, recipe: str, purpose: str) -> tuple[CupLine, ...]:
        """Give the weighings of one batch, in the order of its recipe."""
        return tuple(line for line in self.cups if (line.recipe, line.purpose) == (recipe, purpose))
