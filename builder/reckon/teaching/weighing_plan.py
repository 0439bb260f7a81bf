"""The parts of a lesson to the weighing plan: who weighs how much of each ingredient, for which pot.

An ingredient is weighed in the first part whose steps name it, else in the first whose text does; what no part names staff weigh ahead.
One pot for the class is weighed by staff, by all together, or by one group for all.
"""

from collections.abc import Iterator
from fractions import Fraction

from builder.model.dates.studio_class import BatchFor, StudioClass
from builder.model.lye.lye_solution import Bottles, LyeSolution
from builder.model.recipe.column import Role, Weighed
from builder.model.recipe.quantity import sum_masses
from builder.model.studio import Studio
from builder.model.teaching.class_plan import MadeProduct, PlannedBatch
from builder.model.teaching.lesson import Part, Who
from builder.model.teaching.pot_for import PotFor
from builder.model.teaching.weighing_plan import FoundAs, LyeNamed, Unsettled, Weigher, WeighingPlan, WeighingTask, group_that_does
from builder.reckon.lye.lye_course import LyeCourse, is_of_lye, lye_course, parts_in_order
from builder.reckon.lye.lye_named import mistaken_names
from builder.reckon.teaching.handling import batch_of, in_steps
from builder.rules.hands.named_amounts import weighed_as

BY_STAFF = {Who.AHEAD: Weigher.AHEAD, Who.TEACHER: Weigher.TEACHER, Who.AFTER: Weigher.AFTER}


def reckon_weighing(studio: Studio, studio_class: StudioClass, made: tuple[MadeProduct, ...], groups: int) -> WeighingPlan:
    """Make the weighing plan of a date on which so many groups come."""
    tasks: list[WeighingTask] = []
    solutions: list[LyeSolution] = []
    unsettled: list[Unsettled] = []
    mistaken: list[LyeNamed] = []
    for one in made:
        course = lye_course(studio, studio_class.lesson, made, one)
        parts = tuple(part for part in parts_in_order(studio_class.lesson) if batch_of(made, part) is one.batch)
        tasks += [task for planned in one.batches for task in _tasks(studio, one, planned, parts, course, groups)]
        solutions += one.ready_mixed
        solutions += [_dissolved(one, planned, course) for planned in one.batches if course and course.by_staff and planned.copies]
        unsettled += _unsettled(studio, one, parts, groups)
        mistaken += mistaken_names(studio, studio_class.lesson, made, one, course, solutions)
    return WeighingPlan(tuple(tasks), tuple(solutions), tuple(unsettled), tuple(mistaken))


def _unsettled(studio: Studio, one: MadeProduct, parts: tuple[Part, ...], groups: int) -> Iterator[Unsettled]:
    """Yield the parts in which each of several groups would be told to weigh what is weighed once for all."""
    if one.make.batch_for is not BatchFor.CLASS or groups < 2:
        return
    for part in (part for part in parts if part.who is Who.STUDENTS and part.group is None):
        named = [w.line.name for w in weighed_as(studio, one.batch, in_steps(part))]
        if named:
            yield Unsettled(part, one.batch.recipe.name, tuple(dict.fromkeys(named)))


def _tasks(
    studio: Studio, one: MadeProduct, planned: PlannedBatch, parts: tuple[Part, ...], course: LyeCourse | None, groups: int
) -> Iterator[WeighingTask]:
    for w in planned.batch.grams.weighed:
        dissolved = course is not None and course.by_staff and is_of_lye(w)
        part = course.part if dissolved and course else _part_of(studio, one, w, parts)
        weigher, group = _weigher(one, planned, part, groups)
        yield WeighingTask(
            recipe=one.batch.recipe.name,
            purpose=planned.purpose,
            weighed=w,
            pots=planned.copies,
            weigher=weigher,
            part=part,
            found_as=_found_as(w, weigher, dissolved=dissolved),
            group=group,
        )


def _part_of(studio: Studio, one: MadeProduct, w: Weighed, parts: tuple[Part, ...]) -> Part | None:
    # A part names the weighings of the batch that the lesson speaks of; the teacher's own batch has the same ingredients.
    alike = [
        other
        for other in one.batch.grams.weighed
        if (other.line.ingredient.key, other.line.role, other.line.phase) == (w.line.ingredient.key, w.line.role, w.line.phase)
    ]
    for steps_alone in (True, False):
        for part in parts:
            named = weighed_as(studio, one.batch, in_steps(part) if steps_alone else part.mentions)
            if any(meant is other for meant in named for other in alike):
                return part
    return None


def _weigher(one: MadeProduct, planned: PlannedBatch, part: Part | None, groups: int) -> tuple[Weigher, int | None]:
    """Return who weighs for a planned batch what a part names; the group is set where one weighs for all."""
    if part is None:
        return Weigher.AHEAD, None
    if planned.purpose is PotFor.TEACHER:
        return BY_STAFF.get(part.who, Weigher.TEACHER), None
    if part.who is Who.STUDENTS and one.make.batch_for is BatchFor.CLASS:
        group = group_that_does(part, groups) or (1 if groups == 1 else None)
        # With several groups and one pot somebody has to be named; a finding stops the class until that is done.
        return (Weigher.ONE_GROUP, group) if group else (Weigher.TOGETHER, None)
    if part.who is Who.STUDENTS:
        return Weigher.EACH_POT, None
    return BY_STAFF.get(part.who, Weigher.TOGETHER), None


def _found_as(w: Weighed, weigher: Weigher, *, dissolved: bool) -> FoundAs:
    if dissolved:
        return FoundAs.DISSOLVED
    if w.line.strength is not None:
        return FoundAs.BOTTLE
    return FoundAs.CUP if weigher is Weigher.AHEAD else FoundAs.NOTHING


def _dissolved(one: MadeProduct, planned: PlannedBatch, course: LyeCourse) -> LyeSolution:
    """Return the solution that staff make for each pot of a planned batch, from the amounts as weighed."""
    lye = [w for w in planned.batch.grams.weighed if is_of_lye(w)]
    alkalis = tuple((w.line.name, w.mass) for w in lye if w.line.role is Role.ALKALI)
    liquids = tuple((w.line.name, w.mass) for w in lye if w.line.role is Role.LYE_WATER)
    solution = sum_masses(w.mass for w in lye)
    return LyeSolution(
        recipe=one.batch.recipe.name,
        alkalis=alkalis,
        liquids=liquids,
        strength=sum_masses(mass for _, mass in alkalis) / solution if solution else Fraction(0),
        times=planned.copies,
        bottles=(Bottles(planned.purpose, planned.copies, solution),),
        ready_mixed=False,
        ahead=course.who is Who.AHEAD,
        part=course.part,
    )
