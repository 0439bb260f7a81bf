"""Several options of one choice in one portion: the most of them together, so that the worst mix of them is within what is left."""

from bisect import bisect_left
from collections.abc import Callable, Mapping, Sequence
from fractions import Fraction
from math import floor

from builder.model.dose.dose import Dose, Mixed
from builder.model.recipe.quantity import Mass
from builder.reckon.dose.worst_mix import fill_greedily

Rest = tuple[Mapping[str, Fraction], Fraction]


def reckon_mixed(dose: Dose, wish: Mass, division: Mass, rests: Sequence[Rest]) -> Mixed | None:
    """Return the most of several options together; None where fewer than two may be added.

    `wish` is what the recipe itself allows. Each rest is what one gram of each option takes of a limit, and what is left of it.
    """
    if sum(one.is_offered for one in dose.each) < 2:
        return None
    everything = [({one.option: Fraction(1) for one in dose.each}, wish.grams), *rests]
    weights = [(one.option, one.weight.grams) for one in dose.each]
    steps = floor(min(sum(weight for _, weight in weights), wish.grams) / division.grams)
    weighed = _most(steps, lambda step: _holds(weights, everything, division.grams * step))
    drops = [(one.option, Fraction(one.drops)) for one in dose.each if one.drops]
    if len(drops) < 2:
        return Mixed(division * weighed, None)
    drop = {one.option: one.drop.mass.grams for one in dose.each if one.drop}
    by_drop = [({option: takes[option] * drop[option] for option, _ in drops}, rest) for takes, rest in everything]
    return Mixed(division * weighed, _most(int(sum(most for _, most in drops)), lambda count: _holds(drops, by_drop, Fraction(count))))


def _most(steps: int, holds: Callable[[int], bool]) -> int:
    """Return the last number from 0 to `steps` for which it holds, as for all below it."""
    return bisect_left(range(1, steps + 1), True, key=lambda step: not holds(step))


def _holds(most_of: Sequence[tuple[str, Fraction]], rests: Sequence[Rest], together: Fraction) -> bool:
    return all(
        sum(takes[option] * amount for option, amount in fill_greedily(most_of, takes, together).items()) <= rest for takes, rest in rests
    )
