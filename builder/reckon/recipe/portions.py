"""How a batch as weighed is divided over containers, and how much of it stays in the pot at another size.

Decided: what stays in a pot at home is that of the full class, times the two-thirds power of the weights. Why: a film grows with the
surface.
"""

from collections.abc import Sequence
from fractions import Fraction
from math import ceil, floor

from builder.model.recipe.filling import Portions
from builder.model.recipe.quantity import NO_MASS, Mass, sum_masses
from builder.model.recipe.recipe import Fill
from builder.model.recipe.size import ContainersSize, Lost, OilsSize, PeopleSize, Size, ToFill, TotalSize


def reckon_portions(total: Mass, fill: Fill, size: Size) -> tuple[tuple[ToFill, Portions], ...]:
    """Return for each kind of container how many whole ones a batch yields, and what is left once all are filled.

    `fill` is that of the recipe's own, which comes first; others follow in the order in which the size asks for them, from what the ones
    before leave. What is kept to show and what stays in the pot fills no container and is not part of what is left.
    """
    asked: Sequence[tuple[ToFill, int | None]]
    cup, in_the_pot, shown, asked = NO_MASS, NO_MASS, NO_MASS, [(ToFill(fill), None)]
    match size:
        case TotalSize(_, lost) | OilsSize(_, lost):
            cup, in_the_pot = lost.in_each_cup, lost.in_the_pot
        case ContainersSize(containers, lost):
            cup, in_the_pot, asked = lost.in_each_cup, lost.in_the_pot, [(ToFill(fill), containers)]
        case PeopleSize():
            cup, in_the_pot, shown = size.left_in_each_cup, size.left_in_the_pot, size.demo
            asked = size.counts
    rest = total - in_the_pot - shown
    filled = []
    for one, wanted in asked:
        could = max(floor(rest / (one.fill.weight + cup)), 0)
        filled.append((one, wanted, could if wanted is None else min(could, wanted)))
        rest -= (one.fill.weight + cup) * filled[-1][-1]
    all_from = people_weight(size) if isinstance(size, PeopleSize) else None
    return tuple(
        (one, Portions(one.fill.weight, wanted, count, rest, one.fill.weight + cup, all_from, in_the_pot)) for one, wanted, count in filled
    )


def people_weight(size: PeopleSize) -> Mass:
    """Return the weight of a batch for people: its containers with what sticks to the cups, what is shown and what stays in the pot."""
    filled = sum_masses((one.fill.weight + size.left_in_each_cup) * count for one, count in size.counts)
    return filled + size.demo + size.left_in_the_pot


def lost_at_home(lost: Lost, in_class: Mass, at_home: Mass) -> Lost:
    """Return what is lost of a home batch, from what the studio loses of the batch of a full class.

    What stays in a pot is a film on it, and surfaces grow with the two-thirds power of the volume: half the batch leaves more than half
    the film. It is rounded up to whole grams. What sticks to a cup is the same in any kitchen.
    """
    if not lost.in_the_pot or in_class <= NO_MASS:
        return lost
    film = float(lost.in_the_pot.grams) * float(at_home / in_class) ** (2 / 3)
    return Lost(Mass(Fraction(ceil(film))), lost.in_each_cup)
