"""When the soap of a date has cured, in words: the day of the class and the time of the cure."""

from builder.compose.dates.dates import long_date
from builder.compose.dates.length_words import length_words
from builder.model.teaching.class_plan import ClassPlan
from builder.rules.durability import durability_in
from builder.words.say import say


def ready_lines(plan: ClassPlan, locale: str) -> tuple[str, ...]:
    """Return a line for each soap of a date that cures, with the day worked out where there is one; empty where no recipe says how long."""
    return tuple(_line(plan, made.batch.recipe.name, cure.time, locale) for made in plan.made if (cure := made.batch.cure))


def _line(plan: ClassPlan, recipe: str, time: str, locale: str) -> str:
    length = durability_in(time)
    if plan.date is None or length is None:
        return say("{recipe}: ready {time} after the class, once it has passed its check.", recipe=recipe, time=length_words(time))
    day = long_date(length.after(plan.date.on.date()), locale)
    return say(
        "{recipe}, made today: ready on {day}, after {time}, once it has passed its check.", recipe=recipe, day=day, time=length_words(time)
    )
