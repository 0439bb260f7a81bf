"""How a batch as weighed is divided over containers."""

from collections.abc import Sequence
from math import floor

from builder.model.batch_sheet import ContainersSize, PeopleSize, Portions, Size
from builder.model.quantity import NO_MASS, Mass, sum_masses
from builder.model.recipe import Fill


def reckon_portions(total: Mass, fill: Fill, size: Size) -> tuple[Portions, ...]:
    """Give for each kind of container how many whole ones a batch yields, and what is left once all are filled.

    The first is the recipe's own; others follow in the order in which the size asks for them, from what the ones before leave. What is
    kept to show and what stays in the pot fills no container and is not part of what is left.
    """
    asked: Sequence[tuple[Fill, int | None]]
    cup, kept_back, asked = NO_MASS, NO_MASS, [(fill, None)]
    match size:
        case ContainersSize(containers):
            asked = [(fill, containers)]
        case PeopleSize():
            cup, kept_back = size.left_in_each_cup, size.demo + size.left_in_the_pot
            asked = [(fill, size.containers), *size.also]
    rest = total - kept_back
    counts = []
    for one, wanted in asked:
        could = max(floor(rest / (one.weight + cup)), 0)
        counts.append(could if wanted is None else min(could, wanted))
        rest -= (one.weight + cup) * counts[-1]
    all_from = people_weight(size, fill) if isinstance(size, PeopleSize) else None
    return tuple(
        Portions(one.weight, wanted, count, rest, one.weight + cup, all_from) for (one, wanted), count in zip(asked, counts, strict=True)
    )


def people_weight(size: PeopleSize, fill: Fill) -> Mass:
    """Give the weight of a batch for people: its containers with what sticks to the cups, what is shown and what stays in the pot."""
    containers = ((fill, size.containers), *size.also)
    return sum_masses((one.weight + size.left_in_each_cup) * count for one, count in containers) + size.demo + size.left_in_the_pot
