"""What a jug of ready-made base serves: students and containers, what is spare, shown and left in the pot counted."""

from math import ceil, floor

from builder.model.dates.studio_class import BatchFor
from builder.model.recipe.column import Line
from builder.model.recipe.ingredient import CountsAs
from builder.model.recipe.quantity import NO_MASS, Mass, sum_masses
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.model.supplies.cost import Jug
from builder.model.supplies.supply import Supply
from builder.model.teaching.class_plan import MadeProduct
from builder.reckon.recipe.portions import people_weight
from builder.reckon.supplies.pumps import pumped, strokes_of
from builder.reckon.teaching.class_batches import people_size


def jugs_of_batch(studio: Studio, batch: WorkedBatch) -> tuple[Jug, ...]:
    """Return for each pack of each base of a batch the containers that it fills and how many packs the batch takes."""
    return tuple(
        _jug(studio, line, supply, holds, _used(batch, line), floor(holds / (batch.own.portions.fill * line.share)), None)
        for line in _bases(batch)
        for supply, holds in _packs(studio, line)
    )


def jugs_of_class(studio: Studio, made: MadeProduct, group_size: int) -> tuple[Jug, ...]:
    """Return the same for a product of a class, by students."""
    found = []
    for line in _bases(made.batch):
        used = sum_masses(_used(planned.batch, line) * planned.copies for planned in made.batches)
        for supply, holds in _packs(studio, line):
            students = max(_students(made, line, holds, group_size), 0)
            containers = students * made.make.each_student + made.make.spare if students else 0
            found.append(_jug(studio, line, supply, holds, used, containers, students))
    return tuple(found)


def _students(made: MadeProduct, line: Line, holds: Mass, group_size: int) -> int:
    """Return how many students a pack serves. A batch for each of them or of their groups is weighed again and again as it is."""
    make = made.make
    if make.batch_for is BatchFor.CLASS:
        fixed, with_one = (people_weight(people_size(make, made.batch.recipe.fill, people, spare=True)) * line.share for people in (0, 1))
        division = next(w.scale.division for w in made.batch.grams.weighed if w.line is line)
        each = with_one - fixed
        students = floor((holds - fixed) / each)
        # The scale rounds a batch up where it would leave a container short.
        return students if division * ceil((fixed + each * students) / division) <= holds else students - 1
    first, *teacher = made.batches
    fixed = sum_masses(_used(planned.batch, line) for planned in teacher)
    each = _used(first.batch, line)
    return floor((holds - fixed) / each) * (group_size if make.batch_for is BatchFor.GROUP else 1) if each else 0


def _jug(studio: Studio, line: Line, supply: Supply, holds: Mass, used: Mass, containers: int, students: int | None) -> Jug:
    number = ceil(used / holds)
    pump = pumped(studio).get(line.ingredient.key)
    stroke = pump[1] if pump else None
    strokes = ceil(strokes_of(used, stroke)) if stroke else None
    return Jug(supply, line.ingredient.name, holds, containers, students, number, holds * number - used, strokes, stroke)


def _bases(batch: WorkedBatch) -> tuple[Line, ...]:
    return tuple(line for line in batch.lines if line.ingredient.counts_as is CountsAs.BASE)


def _used(batch: WorkedBatch, line: Line) -> Mass:
    return sum_masses(w.mass for w in batch.grams.weighed if w.line.ingredient.key == line.ingredient.key and w.line.phase == line.phase)


def _packs(studio: Studio, line: Line) -> list[tuple[Supply, Mass]]:
    cards = ((supply, studio.ingredient(supply.name)) for supply in studio.supplies)
    packs = [(supply, supply.weight(card) or NO_MASS) for supply, card in cards if card and card.key == line.ingredient.key]
    return [(supply, holds) for supply, holds in packs if holds]
