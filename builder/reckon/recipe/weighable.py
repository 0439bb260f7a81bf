"""A recipe and a size as the scales of a place can show them: no portion, and nothing lost or shown, has a digit that no scale reads.

Decided: they are rounded up. Why: `4 oz` is 113.398 g, and a container with less than the 4 oz of its label is short.
"""

from dataclasses import replace

from builder.model.recipe.filling import Portions, Reading
from builder.model.recipe.quantity import Mass
from builder.model.recipe.recipe import Fill, Recipe
from builder.model.recipe.size import ContainersSize, Lost, OilsSize, PeopleSize, Size, ToFill, TotalSize
from builder.model.remembered import remembered
from builder.model.studio import Scale
from builder.reckon.recipe.rounding import round_down, round_near, round_up
from builder.reckon.recipe.workplace import Workplace


@remembered(256)
def weighable_recipe(recipe: Recipe, place: Workplace) -> Recipe:
    """Return a recipe whose portion a scale of this place can show."""
    fill = _fill(recipe.fill, place)
    return recipe if fill is recipe.fill else replace(recipe, fill=fill)


def weighable_size(size: Size, place: Workplace) -> Size:
    """Return a size whose portions, and what is lost and shown beside them, a scale of this place can show."""
    match size:
        case PeopleSize():
            return replace(
                size,
                to_fill=tuple(_to_fill(one, place) for one in size.to_fill),
                demo=_up(size.demo, place),
                left_in_the_pot=_up(size.left_in_the_pot, place),
                left_in_each_cup=_up(size.left_in_each_cup, place),
            )
        case TotalSize() | OilsSize() | ContainersSize():
            return replace(size, lost=Lost(_up(size.lost.in_the_pot, place), _up(size.lost.in_each_cup, place)))
    return size


def readings_of(portions: Portions, finished: Mass, place: Workplace) -> tuple[Reading, ...]:
    """Return what the scales of each unit show of a batch that weighs `finished`, and of its portions."""
    return tuple(_reading(portions, finished, scales, place) for scales in place.columns)


def _reading(portions: Portions, finished: Mass, scales: tuple[Scale, ...], place: Workplace) -> Reading:
    division = place.division_for(finished, scales)
    return Reading(
        unit=scales[0].unit,
        fill=_near(portions.fill, place, scales),
        poured=_near(portions.poured, place, scales),
        left=round_down(portions.left, division),
        in_the_pot=_near(portions.in_the_pot, place, scales),
        finished=round_near(finished, division),
        all_from=round_near(portions.all_from, division) if portions.all_from is not None else None,
    )


def _to_fill(one: ToFill, place: Workplace) -> ToFill:
    fill = _fill(one.fill, place)
    return one if fill is one.fill else replace(one, fill=fill)


def _fill(fill: Fill, place: Workplace) -> Fill:
    weight = _up(fill.weight, place)
    return fill if weight == fill.weight else replace(fill, weight=weight)


def _up(mass: Mass, place: Workplace) -> Mass:
    return round_up(mass, place.division_for(mass))


def _near(mass: Mass, place: Workplace, scales: tuple[Scale, ...]) -> Mass:
    return round_near(mass, place.division_for(mass, scales))
