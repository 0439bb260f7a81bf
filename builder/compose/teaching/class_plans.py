"""What the sheets of one date share: the batch that a part of the lesson speaks of, and when the class is."""

from builder.compose.dates.dates import clock, long_date
from builder.compose.edition import Edition
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.teaching.class_plan import ClassPlan
from builder.model.teaching.lesson import Part
from builder.rules.part_recipe import recipe_about
from builder.words.say import say


def part_sheet(plan: ClassPlan, part: Part) -> WorkedBatch:
    """Return the batch that a part is about."""
    about = recipe_about(part, plan.studio_class.recipe_keys)
    return next(made.batch for made in plan.made if made.make.recipe.text == about)


def when(edition: Edition, plan: ClassPlan) -> str:
    """Say when the class is; without a date it is a full class."""
    if plan.date is None:
        return say("Full class, no date set")
    on = plan.date.on
    return f"{long_date(on.date(), edition.locale)}, {clock(on, edition.locale)}"
