"""How hot lye can get and how long things take to cool, in words: bounds and never a time, since only a thermometer knows."""

from collections.abc import Callable
from fractions import Fraction
from math import ceil, floor

from builder.compose.recipe.wording import duration, short_duration, temperature
from builder.model.formula.warmth import Cooling, Cools, CoolsTo, Dissolving
from builder.model.recipe.quantity import Temperature
from builder.model.recipe.worked_batch import WorkedBatch
from builder.words.say import say


def heat_lines(batch: WorkedBatch) -> tuple[str, ...]:
    """Return in words how hot the lye of a batch can get, and how long what is hot takes to be cool enough for the next step."""
    return (*heat_freed(batch), *map(cools_in, batch.cools))


def heat_freed(batch: WorkedBatch) -> tuple[str, ...]:
    """Return in words how hot the lye of a batch can get; nothing where none is dissolved."""
    return (_freed(batch.dissolving),) if batch.dissolving else ()


def heat_bound(batch: WorkedBatch) -> tuple[str, ...]:
    """Return how hot the lye can get at the most, for a sheet whose caution on lye says already that it can nearly boil."""
    return () if batch.dissolving and batch.dissolving.near_boiling else heat_freed(batch)


def _freed(freed: Dissolving) -> str:
    if freed.near_boiling:
        return say("Dissolving the lye frees so much heat that the jug can come near boiling. Add it slowly, and to cold water only.")
    most = temperature(Temperature(Fraction(ceil(freed.most / 5) * 5)))
    return say("Dissolving the lye frees heat: from cold water the jug comes to {most} at the most, and usually stays below.", most=most)


def cools_in(one: CoolsTo) -> str:
    """Return in words how long it takes to be cool enough."""
    ends, time = temperature(Temperature(one.in_air.ends)), between(one.in_air, short_duration)
    if one.what is Cools.LYE:
        return say(
            "Lye takes {time} to cool to {ends}, or in a cold bath, stirred, perhaps a tenth: go by the thermometer.",
            ends=ends,
            time=time,
        )
    return say(
        "The batch takes {time} to cool to {ends}, or in a cold bath, stirred, perhaps a tenth: go by the thermometer.",
        ends=ends,
        time=time,
    )


def between(cooling: Cooling, duration: Callable[[int], str] = duration) -> str:
    """Return both ends, the lower rounded down and the upper rounded up, in words of a length of time or in its units alone."""
    least, most = _round(cooling.least, up=False), _round(cooling.most, up=True)
    if not least:
        return say("up to {most}", most=duration(most))
    return say("from {least} to {most}", least=duration(least), most=duration(most))


def _round(minutes: Fraction, *, up: bool) -> int:
    step = 30 if minutes > 60 else 5 if minutes > 10 else 1
    return (ceil if up else floor)(minutes / step) * step
