"""Which packs cover a need for the least money: every combination that can still be cheaper is tried, in exact numbers."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import ceil

MOST_STEPS = 5000


@dataclass(frozen=True)
class Pack:
    """A pack that can be bought any number of times: how much it holds (above zero), and its price (zero or above)."""

    size: Fraction
    price: Fraction


def cheapest_packs(needed: Fraction, packs: Sequence[Pack]) -> tuple[tuple[int, ...], bool]:
    """Give how many of each pack to buy, and whether every combination that could be cheaper has been tried.

    Of combinations that cost the same the one with the fewest packs counts, then the one that leaves the least.
    """
    order = sorted(range(len(packs)), key=lambda index: (packs[index].price / packs[index].size, -packs[index].size))
    counts, proven = _search(needed, [packs[index] for index in order])
    found = [0] * len(packs)
    for index, count in zip(order, counts, strict=True):
        found[index] = count
    return tuple(found), proven


_Counts = tuple[int, ...]


def _search(needed: Fraction, packs: Sequence[Pack]) -> tuple[_Counts, bool]:
    """Try counts of the packs, best value first; a branch that would cost more than the best found so far is left."""
    best = min((_only(index, needed, packs) for index in range(len(packs))), key=lambda counts: _rank(counts, packs))
    proven, steps = True, 0
    open_branches: list[tuple[_Counts, Fraction, Fraction]] = [((), needed, Fraction(0))]
    while open_branches and steps < MOST_STEPS:
        counts, rest, cost = open_branches.pop()
        steps += 1
        pack, *others = packs[len(counts) :]
        enough = max(ceil(rest / pack.size), 0)
        if not others:
            best = min(best, (*counts, enough), key=lambda found: _rank(found, packs))
            continue
        fewest = _fewest(rest, cost, _rank(best, packs)[0], pack, others[0])
        if enough - fewest > MOST_STEPS:
            proven, fewest = False, enough - MOST_STEPS
        open_branches += [
            ((*counts, count), rest - count * pack.size, cost + count * pack.price) for count in range(fewest, enough + 1)
        ]  # fmt: skip
    return best, proven and not open_branches


def _fewest(rest: Fraction, cost: Fraction, best: Fraction, pack: Pack, following: Pack) -> int:
    """Give the least number of a pack with which the rest, at the next best value for money, can cost no more than the best so far."""
    rate = following.price / following.size
    saved = pack.size * rate - pack.price
    over = cost + max(rest, Fraction(0)) * rate - best
    if saved > 0:
        return max(ceil(over / saved), 0)
    return 0 if over <= 0 else ceil(max(rest, Fraction(0)) / pack.size) + 1


def _only(index: int, needed: Fraction, packs: Sequence[Pack]) -> _Counts:
    return tuple(ceil(needed / pack.size) if at == index else 0 for at, pack in enumerate(packs))


def _rank(counts: _Counts, packs: Sequence[Pack]) -> tuple[Fraction, int, Fraction]:
    bought = list(zip(counts, packs, strict=True))
    return (
        sum((count * pack.price for count, pack in bought), Fraction(0)),
        sum(counts),
        sum((count * pack.size for count, pack in bought), Fraction(0)),
    )
