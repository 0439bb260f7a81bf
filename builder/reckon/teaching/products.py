"""A product of a class: its batches, the pots in which they are made, the jars that are filled from them, and what that takes in all."""

from collections.abc import Sequence

from builder.model.dates.studio_class import BatchFor, Make, StudioClass
from builder.model.recipe.quantity import NO_MASS, Mass
from builder.model.studio import Studio
from builder.model.teaching.class_plan import Containers, MadeProduct, Needed, PlannedBatch
from builder.model.teaching.jar import Pot
from builder.model.teaching.pot_for import PotFor
from builder.reckon.label.batch_codes import TEACHER, batch_code
from builder.reckon.label.jars import reckon_jars
from builder.reckon.roster.guests import reckon_choices
from builder.reckon.teaching.attendance import Attendance
from builder.reckon.teaching.class_batches import ClassBatches


def reckon_product(studio: Studio, studio_class: StudioClass, batches: ClassBatches, make: Make, come: Attendance) -> MadeProduct:
    """Work out one product for those who come."""
    planned = batches.for_people(make, come.students, come.groups)
    batch = planned[0].batch
    pots = _pots(studio, studio_class, make, planned, come)
    containers = tuple(
        Containers(one, come.students * one.each_student + one.spare, reckon_jars(batch.recipe, one, pots, come.guests))
        for one in batch.fillings
    )
    return MadeProduct(
        make=make,
        batches=planned,
        pots=pots,
        needed=_needed(planned, studio.ingredients["water"].name),
        containers=containers,
        home=batches.at_home(make),
        ready_mixed=batches.ready_mixed(make, planned),
        choices=reckon_choices(batch.recipe, containers),
    )


def _pots(studio: Studio, studio_class: StudioClass, make: Make, planned: Sequence[PlannedBatch], come: Attendance) -> tuple[Pot, ...]:
    """Return the pots of the students in their order, then the teacher's where there is one beside them."""
    first, *teacher = planned

    def pot(purpose: PotFor, number: int, people: int, name: str) -> Pot:
        code = batch_code(studio, studio_class.key, come.date.on, make.recipe.text, name) if come.date else ""
        return Pot(purpose, number, people, code)

    if make.batch_for is BatchFor.CLASS:
        return (pot(first.purpose, 0, come.students, ""),)
    sizes = come.group_sizes if make.batch_for is BatchFor.GROUP else (1,) * come.students
    students = (pot(first.purpose, number, people, str(number)) for number, people in enumerate(sizes, start=1))
    return (*students, *(pot(one.purpose, 0, 0, TEACHER) for one in teacher))


def _needed(batches: Sequence[PlannedBatch], water: str) -> tuple[Needed, ...]:
    """Add up what all batches need, with the water that is expected to steam away."""
    totals: dict[str, Mass] = {}
    for planned in batches:
        column = planned.batch.grams
        parts = [(w.line.name, w.mass) for w in column.weighed] + [(water, top_up.lost) for top_up in column.top_ups if top_up.lost]
        for name, mass in parts:
            totals[name] = totals.get(name, NO_MASS) + mass * planned.copies
    return tuple(Needed(name, mass) for name, mass in totals.items())
