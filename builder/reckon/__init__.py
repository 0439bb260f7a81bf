"""Studio to class plans: arithmetic only, exact until a scale rounds it. No files, no clock, no wording."""

from collections.abc import Iterable
from datetime import date

from builder.model.dates.studio_class import ClassDate, StudioClass
from builder.model.recipe.quantity import Mass
from builder.model.recipe.recipe import AmountsAs, Recipe
from builder.model.recipe.size import ContainersSize, Size, TotalSize
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.remembered import remembered
from builder.model.seen_from import seen_from
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan
from builder.reckon.recipe.batches import reckon_batch
from builder.reckon.recipe.formula import reckon_formula
from builder.reckon.recipe.workplace import workplace
from builder.reckon.supplies.shopping import reckon_shopping
from builder.reckon.supplies.supplies import supply_batch, supply_class
from builder.reckon.teaching.classes import reckon_class

__all__ = ["dates_to_prepare", "reckon_classes", "reckon_nominal", "reckon_recipe", "reckon_shopping", "weight_as_written"]


NOMINAL = "containers of a nominal batch"


def reckon_classes(studio: Studio, classes: Iterable[StudioClass], *, on: date) -> tuple[ClassPlan, ...]:
    """Work out the sound classes of a studio: one sheet for each date to prepare, or one for a full class where there is none."""
    return tuple(
        plan
        for studio_class in classes
        for plan in _plans(seen_from(studio, studio_class), studio_class, *dates_to_prepare(studio_class, on))
    )


@remembered(128)
def _plans(seen: Studio, studio_class: StudioClass, *dates: ClassDate) -> tuple[ClassPlan, ...]:
    """Work out a class by what it sees of its studio."""
    return tuple(supply_class(seen, plan) for plan in reckon_class(seen, studio_class, *dates))


def dates_to_prepare(studio_class: StudioClass, on: date) -> tuple[ClassDate, ...]:
    """Return the dates from a day on that take place and to which somebody has come in."""
    return tuple(when for when in studio_class.dates_held if when.on.date() >= on and when.enrolled > 0)


def weight_as_written(studio: Studio, recipe: Recipe) -> Mass:
    """Return what a recipe that states weights comes to as it is written, its lye and water with it."""
    assert recipe.amounts_as is AmountsAs.WEIGHTS
    return reckon_formula(recipe, studio.ingredients).whole


def reckon_recipe(studio: Studio, recipe: Recipe, size: Size, *, in_ounces: bool = False) -> WorkedBatch:
    """Work out one recipe at one size on the studio's own scales: those that read in grams, and `in_ounces` the others too."""
    here = workplace(studio, [scale for scale in studio.profile.scales if in_ounces or scale.unit == "g"])
    return supply_batch(studio, reckon_batch(recipe, studio.products[recipe.product], size, here))


def reckon_nominal(studio: Studio, recipe: Recipe) -> WorkedBatch:
    """Work out a recipe at a nominal size: enough for a small class, and never less than the scales can weigh sensibly."""
    batch = reckon_recipe(studio, recipe, ContainersSize(int(studio.constants[NOMINAL].typical)))
    if batch.smallest is None or batch.smallest <= batch.grams.total:
        return batch
    return reckon_recipe(studio, recipe, TotalSize(batch.smallest))
