"""How long a recipe takes at home, in words: the work and the waits of each day on which something is done."""

from collections.abc import Sequence
from itertools import groupby

from builder.compose.recipe.wording import duration
from builder.compose.teaching.staff_words import days_later
from builder.model.teaching.lesson import Part, Who
from builder.words.say import say


def home_times(parts: Sequence[Part]) -> tuple[str, ...]:
    """Say how long the work takes on each day, and apart from it how long one waits."""
    days = groupby(parts, key=lambda part: part.days_later)
    return tuple(_of_day(tuple(mine)) for _, mine in days)


def _of_day(parts: Sequence[Part]) -> str:
    later = days_later(parts[0])
    waiting = sum(part.minutes for part in parts if part.who is Who.WAITING)
    working = sum(part.minutes for part in parts) - waiting
    if later:
        return say("{later}: about {time}.", later=later, time=duration(working + waiting))
    if not waiting:
        return say("Work: about {time}.", time=duration(working))
    return say("Work: about {time}. Waiting: {waiting}.", time=duration(working), waiting=duration(waiting))
