"""The most that a weighted sum of the shares of a declared list can be, and the shares at which it is: a linear program, solved exactly.

Without figures of a supplier the vertices of what a list allows are known: of a chain in descending order that adds up to a whole they are
the averages of its first one, two, ... parts. With figures the constraint that all shares add up to one is taken into the objective with
a multiplier (Lagrangian relaxation): for each multiplier the chain is settled by dynamic programming over the values at which it can stand
still, and the right multiplier is found by walking along the vertices of the dual, a convex, piecewise linear curve. All in fractions:
there is nothing to round, and no margin is needed.

Decided: the library's blends have shares in wide ranges, from memory. Why: a first lotion has a proven order; what they leave open is asked
of the supplier.
"""

from bisect import bisect_left
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import accumulate

from builder.model.label.declaration import NOTHING, ONE_PER_CENT, WHOLE, Polytope
from builder.model.remembered import remembered

Weights = Sequence[Fraction]


@dataclass(frozen=True)
class Vertex:
    """A point at which a sum is at its most: the objective there, how far it is above its constraint (below zero: under it), its shares."""

    objective: Fraction
    constraint: Fraction
    shares: tuple[Fraction, ...] = ()


def walk_to_the_constraint(left: Vertex, right: Vertex, most: Callable[[Fraction], Vertex]) -> tuple[Vertex, Vertex]:
    """Find the two vertices between which `constraint` is zero and `objective` is at its most.

    `left` lies below zero, `right` at zero or above, each at the most of its side; `most` gives a vertex at which
    objective + multiplier * constraint is at its most. Errors: none; it ends, since each step finds a vertex that was not met before.
    """
    while True:
        multiplier = (left.objective - right.objective) / (right.constraint - left.constraint)
        new = most(multiplier)
        if new.objective + multiplier * new.constraint == left.objective + multiplier * left.constraint:
            return left, right
        left, right = (new, right) if new.constraint < 0 else (left, new)


def optimum_at(left: Vertex, right: Vertex) -> Fraction:
    """Return the objective where the way from one vertex to the other crosses zero."""
    return (left.objective * right.constraint - right.objective * left.constraint) / (right.constraint - left.constraint)


def shares_at_most(polytope: Polytope, weights: Weights) -> tuple[Fraction, ...]:
    """Return shares of a polytope, adding up to one, at which their weighted sum is at its most."""
    return _in_plain_polytope(polytope, weights) if polytope.plain else _in_polytope(polytope, weights)


def weigh(shares: Sequence[Fraction], weights: Weights) -> Fraction:
    """Return a weighted sum."""
    return sum((share * weight for share, weight in zip(shares, weights, strict=True) if weight), NOTHING)


def most_of(polytopes: Sequence[Polytope], weights: Weights) -> Fraction:
    """Return the most that a weighted sum of the shares can be in any of the polytopes that a declared list allows."""
    return max(weigh(shares_at_most(polytope, weights), weights) for polytope in polytopes) if any(weights) else NOTHING


@remembered(4096, frozenset)
def most_of_parts(polytopes: tuple[Polytope, ...], parts: frozenset[int], sign: int) -> Fraction:
    """Return the most that some parts can have together (`sign` 1), or that they take away (-1): asked for often."""
    weights = [Fraction(sign) if one in parts else NOTHING for one in range(len(polytopes[0].low))]
    return max(weigh(shares_at_most(polytope, weights), weights) for polytope in polytopes)


def least_of(polytopes: Sequence[Polytope], weights: Weights) -> Fraction:
    """Return the least that it can be."""
    return -most_of(polytopes, [-weight for weight in weights])


def _in_plain_polytope(polytope: Polytope, weights: Weights) -> tuple[Fraction, ...]:
    """Share out evenly over the best beginning of the chain, after one per cent for each of it and for what is worth more in the tail."""
    weighty = [number for number, part in enumerate(polytope.chain) if weights[part]]
    # The best beginning ends with a part that is worth something, before one that costs something, or with the chain.
    ends = {end for number in weighty for end in (number, number + 1)} | {len(polytope.chain)}
    totals = list(accumulate((weights[polytope.chain[number]] for number in weighty), initial=NOTHING))
    best, first = max((totals[bisect_left(weighty, end)] / end, -end) for end in ends if end)
    higher = [part for part in polytope.tail if weights[part] > best]
    each = ONE_PER_CENT + (WHOLE - ONE_PER_CENT * (len(polytope.chain) + len(higher))) / -first
    shares = [NOTHING] * len(weights)
    for part in (*polytope.chain, *higher):
        shares[part] = ONE_PER_CENT
    for part in polytope.chain[:-first]:
        shares[part] = each
    return tuple(shares)


def _in_polytope(polytope: Polytope, weights: Weights) -> tuple[Fraction, ...]:
    def vertex(shares: tuple[Fraction, ...]) -> Vertex:
        return Vertex(weigh(shares, weights), sum(shares) - WHOLE, shares)

    def most(multiplier: Fraction) -> Vertex:
        return vertex(_in_bounds(polytope, [weight + multiplier for weight in weights]))

    if sum(polytope.low) == WHOLE:
        return polytope.low
    left, right = walk_to_the_constraint(vertex(polytope.low), vertex(polytope.high), most)
    part = right.constraint / (right.constraint - left.constraint)
    return tuple(one * part + other * (1 - part) for one, other in zip(left.shares, right.shares, strict=True))


def _in_bounds(polytope: Polytope, weights: Weights) -> tuple[Fraction, ...]:
    """Return the best shares within the bounds and the order, whatever they add up to."""
    shares = [high if weight > 0 else low for low, high, weight in zip(polytope.low, polytope.high, weights, strict=True)]
    values = sorted({bound[part] for bound in (polytope.low, polytope.high) for part in polytope.chain})
    # For the parts from one on, and each value that the one before it has: the most they can bring, and the value that the first takes.
    after: list[Fraction] = [NOTHING] * len(values)
    taken: list[list[int]] = []
    for part in reversed(polytope.chain):
        best, at, row, bring = None, 0, [], []
        for number, value in enumerate(values):
            if polytope.low[part] <= value <= polytope.high[part]:
                worth = weights[part] * value + after[number]
                if best is None or worth > best:
                    best, at = worth, number
            row.append(at)
            bring.append(NOTHING if best is None else best)
        after, taken = bring, [*taken, row]
    number = len(values) - 1
    for part, row in zip(polytope.chain, reversed(taken), strict=True):
        number = row[number]
        shares[part] = values[number]
    return tuple(shares)
