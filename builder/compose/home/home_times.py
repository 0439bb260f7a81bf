"""How long a recipe takes at home, in words: the work and the waits of each day on which something is done, what cools, and the cure."""

from collections.abc import Sequence
from itertools import groupby

from builder.compose.dates.length_words import length_words
from builder.compose.formula.heat_words import between
from builder.compose.recipe.wording import duration
from builder.compose.teaching.staff_words import days_later
from builder.model.formula.warmth import Cools
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.teaching.lesson import Part, Who
from builder.words.say import message, say

COOLED = {Cools.LYE: message("Until the lye has cooled: {time}."), Cools.BATCH: message("Until the batch has cooled: {time}.")}


def home_times(parts: Sequence[Part], batch: WorkedBatch) -> tuple[str, ...]:
    """Return in words how long the work takes on each day, how long one waits and how long lye or batch cools, and when soap has cured."""
    days = [tuple(mine) for _, mine in groupby(parts, key=lambda part: part.days_later)]
    cools = [say(COOLED[one.what], time=between(one.in_air)) for one in batch.cools]
    return (*map(_of_day, days[:1]), *cools, *map(_of_day, days[1:]), *cured(batch))


def cured(batch: WorkedBatch) -> tuple[str, ...]:
    """Return in words after how long bars have cured; nothing of what does not cure, or where the recipe does not say how long."""
    cure = batch.cure
    return (say("{time} later, after the cure: ready, once it has passed its check.", time=length_words(cure.time)),) if cure else ()


def _of_day(parts: Sequence[Part]) -> str:
    later = days_later(parts[0])
    waiting = sum(part.minutes for part in parts if part.who is Who.WAITING)
    working = sum(part.minutes for part in parts) - waiting
    if later:
        return say("{later}: about {time}.", later=later, time=duration(working + waiting))
    if not waiting:
        return say("Work: about {time}.", time=duration(working))
    return say("Work: about {time}. Waiting: {waiting}.", time=duration(working), waiting=duration(waiting))
