"""A worked class or batch, with what its studio's supplies add: strokes of pumps, what a jug serves, what it costs."""

from dataclasses import replace

from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan, MadeProduct
from builder.reckon.supplies.costs import cost_of_batch, cost_of_class
from builder.reckon.supplies.jugs import jugs_of_batch, jugs_of_class
from builder.reckon.supplies.pumps import reckon_strokes


def supply_batch(studio: Studio, batch: WorkedBatch) -> WorkedBatch:
    """Add what a batch costs and what a jug serves; a studio without supplies gets its batch as it is."""
    if not studio.supplies:
        return batch
    return replace(batch, strokes=reckon_strokes(studio, batch), jugs=jugs_of_batch(studio, batch), cost=cost_of_batch(studio, batch))


def supply_class(studio: Studio, plan: ClassPlan) -> ClassPlan:
    """Add the same to a class, by its students; its home batches are costed each for itself, without a pump."""
    if not studio.supplies:
        return plan
    made = tuple(_supply_made(studio, one, plan.studio_class.group_size) for one in plan.made)
    return replace(plan, made=made, cost=cost_of_class(studio, plan))


def _supply_made(studio: Studio, made: MadeProduct, group_size: int) -> MadeProduct:
    return replace(
        made,
        batches=tuple(replace(one, batch=replace(one.batch, strokes=reckon_strokes(studio, one.batch))) for one in made.batches),
        home=tuple(replace(home, batch=replace(home.batch, cost=cost_of_batch(studio, home.batch))) for home in made.home),
        jugs=jugs_of_class(studio, made, group_size),
    )
