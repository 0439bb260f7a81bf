"""The mix of options of one choice that takes most of a limit, within the most of each and of all together."""

from collections.abc import Mapping, Sequence
from fractions import Fraction

from builder.model.dose.dose import Dose
from builder.model.recipe.quantity import Mass


def worst_mix(dose: Dose, takes: Mapping[str, Fraction]) -> dict[str, Mass]:
    """Return the mass of each option in the worst of what a student may add; `takes` is what one gram of each takes of the limit.

    Students weigh, or count drops: one option up to its most, or several up to their most and to the most of them together.
    """
    one = [{most.option: most.mass} for most in dose.each if takes[most.option]]
    mixes: list[dict[str, Mass]] = [{}, *one]
    if dose.mixed:
        by_weight = [(most.option, most.weight.grams) for most in dose.each]
        taken = fill_greedily(by_weight, takes, dose.mixed.weight.grams)
        mixes.append({option: Mass(grams) for option, grams in taken.items()})
    if dose.mixed and dose.mixed.drops is not None:
        drop = {most.option: most.drop.mass for most in dose.each if most.drop}
        by_drops = [(most.option, Fraction(most.drops)) for most in dose.each if most.drops]
        value = {option: takes[option] * mass.grams for option, mass in drop.items()}
        taken = fill_greedily(by_drops, value, Fraction(dose.mixed.drops))
        mixes.append({option: drop[option] * drops for option, drops in taken.items()})
    return max(mixes, key=lambda mix: sum((takes[option] * mass.grams for option, mass in mix.items()), Fraction(0)))


def fill_greedily(most_of: Sequence[tuple[str, Fraction]], takes: Mapping[str, Fraction], together: Fraction) -> dict[str, Fraction]:
    """Return how much of each option makes the worst mix: first of what takes most, up to its most, until all together are reached."""
    taken: dict[str, Fraction] = {}
    for option, most in sorted(most_of, key=lambda one: -takes[one[0]]):
        amount = min(most, together)
        if amount and takes[option]:
            taken[option], together = amount, together - amount
    return taken
