"""The most that a weighted sum of the shares of a declared list can be, and the shares at which it is, exactly.

Without figures of a supplier the corners of what a list allows are known: of a chain in descending order that adds up to a whole they are
the averages of its first one, two, ... parts. With figures, the sum of all shares is bound to one by a multiplier: for each multiplier
the chain is settled by going once through the values at which it can stand still, and the right multiplier is found by walking along
the corners of a convex, piecewise linear curve. All in fractions: there is nothing to round, and no margin is needed.
"""

from bisect import bisect_left
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import accumulate

from builder.model.label.declaration import NOTHING, ONE_PER_CENT, WHOLE, Cell
from builder.model.remembered import remembered

Weights = Sequence[Fraction]


@dataclass(frozen=True)
class Corner:
    """A point at which a sum is at its most: what is wanted there, what is bound there (at least zero, or zero), and its shares."""

    wanted: Fraction
    bound: Fraction
    shares: tuple[Fraction, ...] = ()


def walk_to_the_bound(left: Corner, right: Corner, most: Callable[[Fraction], Corner]) -> tuple[Corner, Corner]:
    """Find the two corners between which `bound` is zero and `wanted` is at its most.

    `left` is bound to below zero, `right` to zero or above, each at the most of its side; `most` gives a corner at which wanted + price *
    bound is at its most. Errors: none; it ends, since each step finds a corner that was not met before.
    """
    while left.bound < right.bound:
        price = (left.wanted - right.wanted) / (right.bound - left.bound)
        new = most(price)
        if new.wanted + price * new.bound == left.wanted + price * left.bound:
            break
        left, right = (new, right) if new.bound < 0 else (left, new)
    return left, right


def most_at(left: Corner, right: Corner) -> Fraction:
    """Give what is wanted where the way from one corner to the other crosses zero."""
    if left.bound == right.bound:
        return max(left.wanted, right.wanted)
    return (left.wanted * right.bound - right.wanted * left.bound) / (right.bound - left.bound)


def shares_at_most(cell: Cell, weights: Weights) -> tuple[Fraction, ...]:
    """Give shares of a cell, adding up to one, at which their weighted sum is at its most."""
    return _in_plain_cell(cell, weights) if cell.plain else _in_cell(cell, weights)


def weigh(shares: Sequence[Fraction], weights: Weights) -> Fraction:
    """Give a weighted sum."""
    return sum((share * weight for share, weight in zip(shares, weights, strict=True) if weight), NOTHING)


def most_of(cells: Sequence[Cell], weights: Weights) -> Fraction:
    """Give the most that a weighted sum of the shares can be in any of the cells that a declared list allows."""
    return max(weigh(shares_at_most(cell, weights), weights) for cell in cells) if any(weights) else NOTHING


@remembered(4096)
def most_of_one(cells: tuple[Cell, ...], part: int, sign: int) -> Fraction:
    """Give the most that the share of one part can be (`sign` 1), or that it takes away (-1): asked for often."""
    weights = [Fraction(sign) if one == part else NOTHING for one in range(len(cells[0].low))]
    return max(weigh(shares_at_most(cell, weights), weights) for cell in cells)


def least_of(cells: Sequence[Cell], weights: Weights) -> Fraction:
    """Give the least that it can be."""
    return -most_of(cells, [-weight for weight in weights])


def _in_plain_cell(cell: Cell, weights: Weights) -> tuple[Fraction, ...]:
    """Share out evenly over the best beginning of the chain, after one per cent for each of it and for what is worth more in the tail."""
    weighty = [number for number, part in enumerate(cell.chain) if weights[part]]
    # The best beginning ends with a part that is worth something, before one that costs something, or with the chain.
    ends = {end for number in weighty for end in (number, number + 1)} | {len(cell.chain)}
    totals = list(accumulate((weights[cell.chain[number]] for number in weighty), initial=NOTHING))
    best, first = max((totals[bisect_left(weighty, end)] / end, -end) for end in ends if end)
    higher = [part for part in cell.tail if weights[part] > best]
    each = ONE_PER_CENT + (WHOLE - ONE_PER_CENT * (len(cell.chain) + len(higher))) / -first
    shares = [NOTHING] * len(weights)
    for part in (*cell.chain, *higher):
        shares[part] = ONE_PER_CENT
    for part in cell.chain[:-first]:
        shares[part] = each
    return tuple(shares)


def _in_cell(cell: Cell, weights: Weights) -> tuple[Fraction, ...]:
    def corner(shares: tuple[Fraction, ...]) -> Corner:
        return Corner(weigh(shares, weights), sum(shares) - WHOLE, shares)

    def most(price: Fraction) -> Corner:
        return corner(_in_bounds(cell, [weight + price for weight in weights]))

    if cell.low == cell.high:
        return cell.low
    left, right = walk_to_the_bound(corner(cell.low), corner(cell.high), most)
    if left.bound == right.bound:
        return left.shares
    part = right.bound / (right.bound - left.bound)
    return tuple(one * part + other * (1 - part) for one, other in zip(left.shares, right.shares, strict=True))


def _in_bounds(cell: Cell, weights: Weights) -> tuple[Fraction, ...]:
    """Give the best shares within the bounds and the order, whatever they add up to."""
    shares = [high if weight > 0 else low for low, high, weight in zip(cell.low, cell.high, weights, strict=True)]
    values = sorted({bound[part] for bound in (cell.low, cell.high) for part in cell.chain})
    # For the parts from one on, and each value that the one before it has: the most they can bring, and the value that the first takes.
    after: list[Fraction] = [NOTHING] * len(values)
    taken: list[list[int]] = []
    for part in reversed(cell.chain):
        best, at, row, bring = None, 0, [], []
        for number, value in enumerate(values):
            if cell.low[part] <= value <= cell.high[part]:
                worth = weights[part] * value + after[number]
                if best is None or worth > best:
                    best, at = worth, number
            row.append(at)
            bring.append(NOTHING if best is None else best)
        after, taken = bring, [*taken, row]
    number = len(values) - 1
    for part, row in zip(cell.chain, reversed(taken), strict=True):
        number = row[number]
        shares[part] = values[number]
    return tuple(shares)
