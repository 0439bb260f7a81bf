"""The course of a lye through a lesson: who stirs the solid alkali into its liquid, and in which parts it is dry or a solution.

Names in braces tell. A part of the class that names both the alkali and its liquid is where it is dissolved; else it is dissolved where
the later of the two is first named. What no part names is dissolved by staff before the class. `{lye solution}` names what is a solution
already, save ahead, where it is made. Ready-mixed lye is a solution from the beginning, and has no course here.

Decided: at home lye is mixed from the solid, also where the class uses ready-mixed lye, at the same concentration. Why: a kitchen has no
stock solution.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from builder.model.recipe.column import Role, Weighed
from builder.model.studio import Studio
from builder.model.teaching.class_plan import MadeProduct
from builder.model.teaching.lesson import Lesson, Mention, Part, Where, Who
from builder.reckon.teaching.handling import batch_of
from builder.reckon.teaching.handling import in_steps as mentions_in_steps
from builder.rules.hands.named_amounts import meant_in
from builder.rules.naming import is_solution, weighings

STAFF = (Who.AHEAD, Who.TEACHER)


@dataclass(frozen=True)
class LyeCourse:
    """Where the lye of one recipe becomes a solution: in `part` (None where no part names it), by `who`; in `after` it is one already."""

    made: MadeProduct
    part: Part | None
    who: Who
    after: tuple[Part, ...]

    @property
    def by_staff(self) -> bool:
        """Tell whether staff dissolve it, so that students meet a solution."""
        return self.who in STAFF


def parts_in_order(lesson: Lesson) -> tuple[Part, ...]:
    """Return the parts that are done for or in a class in the order of doing, without waits: ahead, in the class, after it."""
    here = [part for part in lesson.parts if part.where is not Where.HOME_ONLY and part.who is not Who.WAITING]
    order = (Who.AHEAD, None, Who.AFTER)
    return tuple(part for kind in order for part in here if (part.who if part.who in order else None) is kind)


def lye_course(studio: Studio, lesson: Lesson, made: tuple[MadeProduct, ...], one: MadeProduct) -> LyeCourse | None:
    """Follow the lye of one product through a lesson; None where it has none, or where it comes ready-mixed."""
    if one.batch.recipe.lye is None or one.batch.recipe.lye.ready_mixed is not None:
        return None
    parts = tuple(part for part in parts_in_order(lesson) if batch_of(made, part) is one.batch)
    part = next((part for in_steps in (True, False) if (part := _dissolving(studio, one, parts, in_steps=in_steps))), None)
    begins = 0 if part is None else next(number for number, other in enumerate(parts, start=1) if other is part)
    after = tuple(other for other in parts[begins:] if other.who is not Who.AHEAD)
    return LyeCourse(one, part, Who.AHEAD if part is None else part.who, after)


def _dissolving(studio: Studio, one: MadeProduct, parts: tuple[Part, ...], *, in_steps: bool) -> Part | None:
    named = [(part, _named(studio, one, part, in_steps=in_steps)) for part in parts]
    in_class = next((part for part, roles in named if part.who is not Who.AHEAD and roles >= {Role.ALKALI, Role.LYE_WATER}), None)
    if in_class is not None:
        return in_class
    first = [next((part for part, roles in named if role in roles), None) for role in (Role.ALKALI, Role.LYE_WATER)]
    found = [part for part in parts if any(part is other for other in first)]
    return found[-1] if found else None


def _named(studio: Studio, one: MadeProduct, part: Part, *, in_steps: bool) -> set[Role]:
    """Return which of alkali and liquid a part names as such; a solution that is made ahead names both."""
    mentions = mentions_in_steps(part) if in_steps else part.mentions
    return roles_named(studio, one, mentions, solution=part.who is Who.AHEAD)


def roles_named(studio: Studio, one: MadeProduct, mentions: Iterable[Mention], *, solution: bool = False) -> set[Role]:
    """Return which of alkali and liquid some names in braces mean as such; `solution`: also where they name the two together."""
    named = (meant for meant in meant_in(studio, one.batch, mentions) if solution or not is_solution(meant))
    weighed = (w for meant in named for w in weighings(one.batch.grams, meant))
    return {w.line.role for w in weighed if is_of_lye(w)}


def is_of_lye(w: Weighed) -> bool:
    """Tell whether a weighing is dissolved to lye: solid alkali, or the liquid in which it is."""
    return w.line.role in (Role.ALKALI, Role.LYE_WATER) and w.line.strength is None


def parts_with_dry_lye(studio: Studio, lesson: Lesson, made: tuple[MadeProduct, ...]) -> tuple[Part, ...]:
    """Return the parts in which somebody has solid alkali before them: they name it, its liquid or both before it is a solution."""
    found = []
    for one in made:
        course = lye_course(studio, lesson, made, one)
        if course is None:
            continue
        for part in (part for part in parts_in_order(lesson) if batch_of(made, part) is one.batch):
            solved = course.by_staff and any(part is other for other in course.after)
            if not solved and roles_named(studio, one, part.mentions, solution=True):
                found.append(part)
    return tuple(found)
