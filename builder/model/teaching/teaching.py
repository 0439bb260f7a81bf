"""How a class is taught, worked out from its parts, and which advice on formats speaks to it."""

from dataclasses import dataclass, field

from builder.model.dates.studio_class import Format, Goal
from builder.model.hazard import Hazard
from builder.model.place import NOWHERE, Place
from builder.model.recipe.figure import Known, Source
from builder.model.teaching.lesson import Who


@dataclass(frozen=True)
class FormatAdvice:
    """One piece of advice on formats, for classes to which all of its conditions apply; a condition of None applies to every class.

    `hazards` applies where the class brings one of them, `ready_mixed_in_pairs` where lye is ready-mixed and groups are of two at most,
    `ready_made_base` where a base is finished by each student, `single_portions` where each student has a batch.
    """

    key: str
    suits: tuple[Format, ...]
    because: str
    source: Source
    at: str
    known: Known
    hazards: tuple[Hazard, ...] = ()
    ready_mixed_in_pairs: bool | None = None
    ready_made_base: bool | None = None
    single_portions: bool | None = None
    goal: Goal | None = None
    place: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True)
class Taught:
    """Who makes one product: what is done ahead, shown by the teacher, done together, done by students; what they choose and fill.

    `lye_by` are those in whose hands a part of the class or of the staff puts its lye. Without parts nothing of it is known.
    """

    ahead: bool = False
    shown: bool = False
    together: bool = False
    by_students: bool = False
    chosen: bool = False
    filled: bool = False
    lye_by: frozenset[Who] = frozenset()


NOT_TAUGHT = Taught()


@dataclass(frozen=True)
class Teaching:
    """The format that the parts come to, and the advice that applies."""

    format: Format
    advice: tuple[FormatAdvice, ...]

    @property
    def speaks_for(self) -> tuple[FormatAdvice, ...]:
        """Return the advice that the format follows."""
        return tuple(advice for advice in self.advice if self.format in advice.suits)

    @property
    def speaks_against(self) -> tuple[FormatAdvice, ...]:
        """Return the advice that the format does not follow."""
        return tuple(advice for advice in self.advice if self.format not in advice.suits)
