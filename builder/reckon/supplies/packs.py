"""Which packs cover a need for the least money: every combination that can still be cheaper is tried, in exact numbers.

Branch and bound over the packs in order of value for money: a branch is left as soon as the rest, at the rate of the next pack, can no
longer come out below the best that has been found.

Decided: the cheapest packs by branch and bound, at most 5000 steps; where that is not enough the sheet says so. Why: exact for every list
a studio writes, and it always ends.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from builder.model.remembered import remembered

MOST_STEPS = 5000
MOST_PACKS = 20

_Counts = tuple[int, ...]
_Branch = tuple[_Counts, Fraction, Fraction]


@dataclass(frozen=True)
class Pack:
    """A pack that can be bought any number of times: how much it holds (above zero), and its price (zero or above)."""

    size: Fraction
    price: Fraction


@remembered(4096, Fraction, Pack)
def cheapest_packs(needed: Fraction, *packs: Pack) -> tuple[tuple[int, ...], bool]:
    """Return how many of each pack to buy, and whether every combination that could be cheaper has been tried.

    Of combinations that cost the same the one with the fewest packs counts. Of one size and price the first pack counts.
    """
    order = _worth_trying(packs)
    tried = order[:MOST_PACKS]
    counts, proven = _search(needed, [packs[index] for index in tried])
    bought = dict(zip(tried, counts, strict=True))
    return tuple(bought.get(index, 0) for index in range(len(packs))), proven and len(order) == len(tried)


def _worth_trying(packs: Sequence[Pack]) -> list[int]:
    """Return the packs, best value first, without those that hold no more than a cheaper one."""
    kept: list[int] = []
    least: Fraction | None = None
    for index in sorted(range(len(packs)), key=lambda index: (-packs[index].size, packs[index].price)):
        if least is None or packs[index].price < least:
            kept.append(index)
            least = packs[index].price
    return sorted(kept, key=lambda index: (packs[index].price / packs[index].size, -packs[index].size))


def _search(needed: Fraction, packs: Sequence[Pack]) -> tuple[_Counts, bool]:
    best = min((_only(index, needed, packs) for index in range(len(packs))), key=lambda counts: _rank(counts, packs))
    proven = True
    branches: list[_Branch] = [((), needed, Fraction(0))]
    for _ in range(MOST_STEPS):
        if not branches:
            break
        branch = branches.pop()
        if len(branch[0]) == len(packs):
            best = min(best, branch[0], key=lambda counts: _rank(counts, packs))
        elif _at_least(branch, packs) < _rank(best, packs):
            grown, all_of_them = _grow(branch, packs, _rank(best, packs)[0])
            branches += grown
            proven = proven and all_of_them
    return best, proven and not branches


def _grow(branch: _Branch, packs: Sequence[Pack], best: Fraction) -> tuple[list[_Branch], bool]:
    """Return the branch with each number of the next pack that can still pay, the greatest last, and whether these are all of them."""
    counts, rest, cost = branch
    pack, *others = packs[len(counts) :]
    enough = ceil(rest / pack.size)
    fewest = enough
    if others:
        # With n packs the least cost is cost + n x price + (rest - n x size) x rate of the next; it must not exceed the best.
        rate = others[0].price / others[0].size
        saved, over = pack.size * rate - pack.price, cost + rest * rate - best
        fewest = max(ceil(over / saved), 0) if saved > 0 else 0
    least = max(fewest, enough - MOST_STEPS)
    grown = [((*counts, n), max(rest - n * pack.size, Fraction(0)), cost + n * pack.price) for n in range(least, enough + 1)]
    return grown, least == fewest


def _at_least(branch: _Branch, packs: Sequence[Pack]) -> tuple[Fraction, int]:
    """Return a cost and a number of packs below which no combination of this branch can come."""
    counts, rest, cost = branch
    left = packs[len(counts) :]
    return cost + rest * left[0].price / left[0].size, sum(counts) + ceil(rest / max(pack.size for pack in left))


def _only(index: int, needed: Fraction, packs: Sequence[Pack]) -> _Counts:
    return tuple(ceil(needed / pack.size) if at == index else 0 for at, pack in enumerate(packs))


def _rank(counts: _Counts, packs: Sequence[Pack]) -> tuple[Fraction, int]:
    return sum((count * pack.price for count, pack in zip(counts, packs, strict=True)), Fraction(0)), sum(counts)
