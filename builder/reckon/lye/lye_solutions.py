"""The lye solutions of a class that are ready-mixed, by staff or as they are bought: one for each alkali, with its bottles.

Decided: lye dissolved ahead of the solid is mixed for each pot by itself and poured whole; ready-mixed lye is mixed once, with some to
spare. Why: what is checked for a pot is what goes into it; what stays in the bottle raises the superfat.

Decided: a ready-mixed lye that is bought (`bought: yes`) is counted by its own strength and range; its packs are called as the sheets
call it. Why: no solid has a part in it, and solid and solution are never one line of a list.
"""

from collections.abc import Iterator, Sequence
from fractions import Fraction

from builder.model.lye.lye_solution import Bottles, LyeSolution
from builder.model.recipe.column import Role
from builder.model.recipe.ingredient import Ingredient
from builder.model.recipe.quantity import Mass, sum_masses
from builder.model.recipe.recipe import Recipe
from builder.model.teaching.class_plan import PlannedBatch
from builder.reckon.lye.lye import lye_basis
from builder.reckon.recipe.rounding import round_down, round_near
from builder.reckon.recipe.scales import pick_scale
from builder.reckon.recipe.workplace import Workplace


def ready_mixed_solutions(recipe: Recipe, batches: Sequence[PlannedBatch], place: Workplace, spare: Fraction) -> tuple[LyeSolution, ...]:
    """Return one solution for each alkali of a recipe with ready-mixed lye, enough for all of its batches and `spare` more (of 1).

    The solid is rounded down, so that the solution is never stronger than stated, and to the scale that holds the solution, so that the
    liquid, which is the rest, can be read on it as well. Of what is bought nothing is weighed but the solution. Errors: none.
    """
    if recipe.lye is None or recipe.lye.ready_mixed is None:
        return ()
    return tuple(_ready_mixed(recipe, batches, place, spare))


def _ready_mixed(recipe: Recipe, batches: Sequence[PlannedBatch], place: Workplace, spare: Fraction) -> Iterator[LyeSolution]:
    assert recipe.lye is not None and recipe.lye.ready_mixed is not None
    strength, water = recipe.lye.ready_mixed.fraction, place.cards["water"].name
    for alkali in lye_basis(recipe.lye, place.cards).alkalis:
        bottles = tuple(Bottles(planned.purpose, planned.copies, _taken(planned, alkali.card)) for planned in batches)
        asked_for = sum_masses(one.each * one.number for one in bottles) * (1 + spare)
        scale, _ = pick_scale(asked_for, place.grams, place.vessel)
        solution = round_near(asked_for, scale.division)
        exact = solution * strength / alkali.purity.typical
        solid = exact if recipe.lye.bought else round_down(exact, scale.division)
        yield LyeSolution(
            recipe=recipe.name,
            alkalis=((alkali.card.name, solid),),
            liquids=((water, solution - solid),),
            strength=strength,
            times=1,
            bottles=tuple(one for one in bottles if one.number),
            ready_mixed=True,
            bought=recipe.lye.bought is not None,
            scale=scale,
        )


def _taken(planned: PlannedBatch, alkali: Ingredient) -> Mass:
    """Return what one pot of a planned batch takes of the solution of an alkali."""
    return sum_masses(w.mass for w in planned.batch.grams.weighed if w.line.role is Role.ALKALI and w.line.ingredient.key == alkali.key)
