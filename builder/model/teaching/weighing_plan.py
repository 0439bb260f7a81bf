"""Who weighs how much of what, for which pot, on one date of a class: one value, made once, that every document of the date reads."""

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

from builder.model.lye.lye_solution import LyeSolution
from builder.model.place import Name
from builder.model.recipe.column import Role, Weighed
from builder.model.recipe.quantity import Mass
from builder.model.teaching.lesson import Part
from builder.model.teaching.pot_for import PotFor


class Weigher(StrEnum):
    """Who weighs: staff ahead, the teacher in class, staff after it, people with the teacher, those of each pot, one group for all."""

    AHEAD = "ahead"
    TEACHER = "teacher"
    AFTER = "after"
    TOGETHER = "together"
    EACH_POT = "each pot"
    ONE_GROUP = "one group"


class FoundAs(StrEnum):
    """How what staff have weighed is found by those who use it: in a cup, in a bottle of solution, dissolved with others, or not at all."""

    CUP = "cup"
    BOTTLE = "bottle"
    DISSOLVED = "dissolved"
    NOTHING = "nothing"


@dataclass(frozen=True)
class WeighingTask:
    """One weighing of one planned batch: it is weighed once for each of `pots` pots, by `weigher`, in `part`.

    `part` is None where no part of the lesson names it. `purpose` is that of the batch (class, group, student, teacher). `group` is the
    number of the group that weighs for all, set for ONE_GROUP alone.
    """

    recipe: str
    purpose: PotFor
    weighed: Weighed
    pots: int
    weigher: Weigher
    part: Part | None
    found_as: FoundAs
    group: int | None = None

    @property
    def ingredient(self) -> str:
        """Return the name of what is weighed."""
        return self.weighed.line.name

    @property
    def each(self) -> Mass:
        """Return what the scale shows for one pot."""
        return self.weighed.mass

    @property
    def caustic(self) -> bool:
        """Tell whether it is an alkali, dry or dissolved."""
        return self.weighed.line.role is Role.ALKALI


@dataclass(frozen=True)
class Unsettled:
    """A part in which students weigh `ingredients` of the one pot of the class, though several groups come and none of them is named."""

    part: Part
    recipe: str
    ingredients: tuple[str, ...]


class LyeMistaken(StrEnum):
    """How a name in braces can be mistaken: it means what is dissolved by then, two alkalis at once, what is dry at home alone, or in class
    the weight of a solution by the name of what is dissolved in it."""

    DISSOLVED = "dissolved"
    TWO_ALKALIS = "two alkalis"
    DRY_AT_HOME = "dry at home"
    READY_MIXED = "ready-mixed"


@dataclass(frozen=True)
class LyeNamed:
    """A name of lye in braces, in a step of a part, that can be mistaken; it means `ingredients`.

    `solution` is what the lye has become, where it has been dissolved before.
    """

    name: Name
    part: Part
    how: LyeMistaken
    ingredients: tuple[str, ...]
    solution: LyeSolution | None = None


@dataclass(frozen=True)
class WeighingPlan:
    """Every weighing of a date, and the lye solutions that staff make for it; what of it is not settled, and what can be mistaken."""

    tasks: tuple[WeighingTask, ...]
    solutions: tuple[LyeSolution, ...]
    unsettled: tuple[Unsettled, ...] = ()
    mistaken: tuple[LyeNamed, ...] = ()

    def of(self, recipe: str, purpose: PotFor) -> tuple[WeighingTask, ...]:
        """Return the weighings of one planned batch, in the order of its recipe."""
        return tuple(task for task in self.tasks if (task.recipe, task.purpose) == (recipe, purpose))

    def in_part(self, part: Part) -> tuple[WeighingTask, ...]:
        """Return what is weighed in a part."""
        return tuple(task for task in self.tasks if task.part is part)

    def solutions_of(self, recipe: str) -> tuple[LyeSolution, ...]:
        """Return the lye solutions of one recipe."""
        return tuple(one for one in self.solutions if one.recipe == recipe)

    def groups_that_weigh_for_all(self) -> tuple[int, ...]:
        """Return the numbers of the groups that weigh something for everybody, in order."""
        return _in_order(task.group for task in self.tasks if task.group is not None)


def group_that_does(part: Part, groups: int) -> int | None:
    """Return the number of the one group, of so many that come, that does a part for all; if fewer come than it names, they begin anew."""
    return (part.group - 1) % groups + 1 if part.group is not None and groups else None


def _in_order(numbers: Iterable[int]) -> tuple[int, ...]:
    return tuple(sorted(set(numbers)))
