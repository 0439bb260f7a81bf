"""What the sheets of one date share: a part of the lesson with the batch that it speaks of, and when the class is."""

from builder.compose.dates.dates import clock, long_date
from builder.compose.edition import Edition
from builder.compose.home.letters import letter_of
from builder.compose.teaching.lesson_flow import FlowSource
from builder.compose.teaching.weighing_words import pots_note, weighed_in
from builder.model.teaching.class_plan import ClassPlan
from builder.model.teaching.timed_part import StaffPart, TimedPart
from builder.rules.part_recipe import recipe_about
from builder.words.say import say


def flow_source(plan: ClassPlan, timed: TimedPart | StaffPart, time: str = "", *, for_staff: bool = False) -> FlowSource:
    """Return a part with the batch that it is about and its time in words, for staff with what is weighed in it."""
    part = timed.part
    about = recipe_about(part, plan.studio_class.recipe_keys)
    batch = next(made.batch for made in plan.made if made.make.recipe.text == about)
    note, weighed = pots_note(plan, part, for_staff=for_staff), tuple(weighed_in(plan, part)) if for_staff else ()
    return FlowSource(part, batch, time, note, letter_of(plan.studio_class, part), timed.met, weighed)


def when(edition: Edition, plan: ClassPlan) -> str:
    """Return in words when the class is; without a date it is a full class."""
    if plan.date is None:
        return say("Full class, no date set")
    on = plan.date.on
    return f"{long_date(on.date(), edition.locale)}, {clock(on, edition.locale)}"
