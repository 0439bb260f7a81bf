"""What a declared list without amounts allows: the descending order of a blend's parts, its one-per-cent line, and figures of its supplier.

Whoever makes a blend declares what is above one per cent of it in descending order and what is below in any order after that, and names
colours last at any level. All shares that fit, adding up to one, are a polytope: a piece of the simplex cut out by bounds and by the order.
Where the line between the two lies is seldom said, so that a list stands for several polytopes, one for each place where the line can be.
What holds in every polytope is proven.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import pairwise

ONE_PER_CENT = Fraction(1, 100)
WHOLE, NOTHING = Fraction(1), Fraction(0)
Range = tuple[Fraction, Fraction]


@dataclass(frozen=True)
class Polytope:
    """One place of the one-per-cent line: `chain` are the parts in descending order, `tail` those below the line; colours are in neither.

    Parts are counted from 0. `low` and `high` bound the share of each part; along the chain neither rises. `plain`: nothing else binds, so
    that each part of the chain is from one per cent up, each of the tail from nothing to one per cent, and there is no colour.
    """

    chain: tuple[int, ...]
    tail: tuple[int, ...]
    low: tuple[Fraction, ...]
    high: tuple[Fraction, ...]
    plain: bool

    @property
    def is_possible(self) -> bool:
        """Tell whether shares that add up to the whole fit into it."""
        fits = all(low <= high for low, high in zip(self.low, self.high, strict=True))
        return fits and sum(self.low) <= WHOLE <= sum(self.high)

    def with_share(self, part: int, share: Fraction) -> "Polytope":
        """Return the polytope once the share of one part is known."""
        low, high = list(self.low), list(self.high)
        low[part], high[part] = max(low[part], share), min(high[part], share)
        return _tightened(replace(self, plain=False), low, high)


def polytopes_of(count: int, below: int | None, shares: Mapping[int, Range], colours: Sequence[int] = ()) -> tuple[Polytope, ...]:
    """Return the polytopes of a list of `count` parts; `below` is the first part below one per cent, None where that is not known.

    `shares` are the supplier's figures. There is no polytope where the figures contradict the order or each other.
    """
    if count == 1:
        return (Polytope((0,), (), (WHOLE,), (WHOLE,), plain=False),)
    return tuple(polytope for polytope in _polytopes(count, below, shares, frozenset(colours)) if polytope.is_possible)


def _polytopes(count: int, below: int | None, shares: Mapping[int, Range], colours: frozenset[int]) -> Iterator[Polytope]:
    for first in range(count + 1) if below is None else (below,):
        chain = tuple(part for part in range(first) if part not in colours)
        tail = tuple(part for part in range(first, count) if part not in colours)
        if below is None and first < count and first in colours:
            continue  # Otherwise the same polytope comes twice.
        low = [ONE_PER_CENT if part in chain else NOTHING for part in range(count)]
        high = [ONE_PER_CENT if part in tail else WHOLE for part in range(count)]
        for part, (least, most) in shares.items():
            low[part], high[part] = max(low[part], least), min(high[part], most)
        yield _tightened(Polytope(chain, tail, (), (), plain=bool(chain) and not shares and not colours), low, high)


def _tightened(polytope: Polytope, low: list[Fraction], high: list[Fraction]) -> Polytope:
    """Return a polytope its bounds, so drawn in that along the chain they do not rise."""
    for before, after in pairwise(polytope.chain):
        high[after] = min(high[before], high[after])
    for before, after in reversed(list(pairwise(polytope.chain))):
        low[before] = max(low[before], low[after])
    return replace(polytope, low=tuple(low), high=tuple(high))
