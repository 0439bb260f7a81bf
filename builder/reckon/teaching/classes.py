"""A class on each of its dates: who comes, what is made for them, how it is taught and watched, and who weighs what.

Decided: sheets are made for each coming date with people enrolled, for a full class where there is none. Why: what is on the table fits
who comes.
"""

from builder.model.dates.studio_class import ClassDate, StudioClass
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan, MadeProduct
from builder.model.teaching.timed_part import TimedPart
from builder.reckon.roster.guests import reckon_guests
from builder.reckon.teaching.attendance import reckon_attendance
from builder.reckon.teaching.class_batches import ClassBatches
from builder.reckon.teaching.handling import batch_of
from builder.reckon.teaching.lesson_heat import HeatSaid, reckon_lesson_heat
from builder.reckon.teaching.met import with_met
from builder.reckon.teaching.preparation import gear_by_hazard, reckon_preparation
from builder.reckon.teaching.products import reckon_product
from builder.reckon.teaching.supervision import reckon_supervision
from builder.reckon.teaching.teaching import with_teaching
from builder.reckon.teaching.weighing_plan import reckon_weighing
from builder.rules.clock import after_of, ahead_of, on_the_clock


def reckon_class(studio: Studio, studio_class: StudioClass, *dates: ClassDate) -> tuple[ClassPlan, ...]:
    """Work out a class for those enrolled on each date, and for a full class where no date is given."""
    batches = ClassBatches(studio, studio_class)
    return tuple(_on_date(studio, studio_class, batches, date) for date in dates or (None,))


def _on_date(studio: Studio, studio_class: StudioClass, batches: ClassBatches, date: ClassDate | None) -> ClassPlan:
    lesson = studio_class.lesson
    come = reckon_attendance(studio, studio_class, date)
    made, teaching = with_teaching(
        studio, studio_class, tuple(reckon_product(studio, studio_class, batches, make, come) for make in studio_class.makes)
    )
    length = int(studio_class.length.minutes)
    clock = on_the_clock(lesson)
    supervision = reckon_supervision(studio, studio_class, made, clock, studio_class.staff_on(date), come.groups)
    ahead, timeline, after = with_met(studio, made, supervision, ahead_of(lesson), clock, after_of(lesson, length))
    return ClassPlan(
        studio_class=studio_class,
        date=date,
        students=come.students,
        groups=come.groups,
        last_group=come.last_group,
        made=made,
        timeline=timeline,
        ahead=ahead,
        after=after,
        guests=come.guests,
        waiting=reckon_guests(studio, studio_class, date, waiting=True),
        teaching=teaching,
        supervision=supervision,
        preparation=reckon_preparation(
            studio_class, made, come.students, supervision, gear_by_hazard(studio.cautions.values()), _only_at_home(studio)
        ),
        weighing=reckon_weighing(studio, studio_class, made, come.groups),
        heat=_heat(studio, studio_class, made, timeline),
    )


def _only_at_home(studio: Studio) -> set[str]:
    """Return the names of scales that people have at home and the studio has not."""
    return {one.name for one in studio.profile.home_scales} - {one.name for one in studio.profile.scales}


def _heat(
    studio: Studio, studio_class: StudioClass, made: tuple[MadeProduct, ...], timeline: tuple[TimedPart, ...]
) -> tuple[HeatSaid, ...]:
    parts = studio_class.lesson.parts
    own = {id(one.batch): [part for part in parts if batch_of(made, part) is one.batch] for one in made}
    return tuple(found for one in made for found in reckon_lesson_heat(studio, one.batch, own[id(one.batch)], timeline))
