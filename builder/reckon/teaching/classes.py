"""A class to its sheets: the batches for the people who come, what they need in all, the home batches, the clock."""

from math import ceil

from builder.model.dates.studio_class import ClassDate, Make, StudioClass
from builder.model.recipe.filling import Filling
from builder.model.recipe.quantity import NO_MASS, Mass
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.roster.roster import Guest
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan, Containers, MadeProduct, Needed, PlannedBatch
from builder.model.teaching.timed_part import TimedPart
from builder.reckon.label.finishes import reckon_finishes
from builder.reckon.roster.guests import reckon_choices, reckon_guests
from builder.reckon.teaching.class_batches import ClassBatches
from builder.reckon.teaching.handling import batch_of
from builder.reckon.teaching.lesson_heat import HeatSaid, reckon_lesson_heat
from builder.reckon.teaching.preparation import reckon_preparation
from builder.reckon.teaching.supervision import reckon_supervision
from builder.reckon.teaching.teaching import reckon_teaching
from builder.reckon.teaching.weighing_plan import reckon_weighing
from builder.rules.clock import after_of, ahead_of, on_the_clock


def reckon_class(studio: Studio, studio_class: StudioClass, *dates: ClassDate) -> tuple[ClassPlan, ...]:
    """Work out a class for those enrolled on each date, and for a full class where no date is given."""
    batches = ClassBatches(studio, studio_class)
    return tuple(_on_date(studio, studio_class, batches, date) for date in dates or (None,))


def _on_date(studio: Studio, studio_class: StudioClass, batches: ClassBatches, date: ClassDate | None) -> ClassPlan:
    students = date.enrolled if date else studio_class.seats
    groups = ceil(students / studio_class.group_size)
    last = students - (groups - 1) * studio_class.group_size
    guests = reckon_guests(studio, studio_class, date)
    water = studio.ingredients["water"].name
    made = tuple(_made(make, students, groups, batches, guests, water) for make in studio_class.makes)
    timeline = on_the_clock(studio_class.lesson)
    teaching = reckon_teaching(studio, studio_class, made)
    staff = sum(studio_class.staff_on(date))
    supervision = reckon_supervision(studio, studio_class, made, timeline, staff, groups)
    return ClassPlan(
        studio_class=studio_class,
        date=date,
        students=students,
        groups=groups,
        last_group=last,
        made=made,
        timeline=timeline,
        ahead=ahead_of(studio_class.lesson),
        after=after_of(studio_class.lesson, int(studio_class.length.minutes)),
        guests=guests,
        waiting=reckon_guests(studio, studio_class, date, waiting=True),
        teaching=teaching,
        supervision=supervision,
        preparation=reckon_preparation(studio_class, made, students, supervision, teaching),
        weighing=reckon_weighing(studio, studio_class, made, groups),
        heat=_heat(studio, studio_class, made, timeline),
    )


def _heat(
    studio: Studio, studio_class: StudioClass, made: tuple[MadeProduct, ...], timeline: tuple[TimedPart, ...]
) -> tuple[HeatSaid, ...]:
    parts = studio_class.lesson.parts
    own = {id(one.batch): [part for part in parts if batch_of(made, part) is one.batch] for one in made}
    return tuple(found for one in made for found in reckon_lesson_heat(studio, one.batch, own[id(one.batch)], timeline))


def _made(make: Make, students: int, groups: int, batches: ClassBatches, guests: tuple[Guest, ...], water: str) -> MadeProduct:
    planned = batches.for_people(make, students, groups)
    batch = planned[0].sheet
    return MadeProduct(
        make=make,
        batches=planned,
        needed=_needed(planned, water),
        containers=tuple(_containers(batch, filling, students, guests) for filling in batch.fillings),
        home=batches.at_home(make),
        ready_mixed=batches.ready_mixed(make, planned),
        choices=reckon_choices(batch, students, guests),
    )


def _containers(batch: WorkedBatch, filling: Filling, students: int, guests: tuple[Guest, ...]) -> Containers:
    in_all = students * filling.each_student + filling.spare
    return Containers(filling, in_all, reckon_finishes(batch.recipe, filling, students, guests))


def _needed(batches: tuple[PlannedBatch, ...], water: str) -> tuple[Needed, ...]:
    """Add up what all batches need, with the water that is expected to steam away."""
    totals: dict[str, Mass] = {}
    for planned in batches:
        column = planned.sheet.grams
        parts = [(w.line.name, w.mass) for w in column.weighed] + [(water, top_up.lost) for top_up in column.top_ups if top_up.lost]
        for name, mass in parts:
            totals[name] = totals.get(name, NO_MASS) + mass * planned.copies
    return tuple(Needed(name, mass) for name, mass in totals.items())
