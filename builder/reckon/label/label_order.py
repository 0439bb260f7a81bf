"""Which of two ingredients may stand before the other on a label, whatever the suppliers' lists leave open: proven, or not.

A product is made of sources: what was weighed, and what students may add, each with the polytopes that its declared list allows. One name
may stand before another if in no product that fits all of this there is more of the second while the second is subject to the order (from
one per cent up, or above one per cent, as the region has it). Both are linear, so each combination of polytopes is one small linear
program; since the sources are independent of each other it is solved exactly by its Lagrangian dual, a convex curve in one multiplier
(`shares.py`). `tests/reckon/test_linear_programs.py` compares it with a solver in floats.

Decided: exactly one per cent is free on a label where the region's text says so (US, Canada), and in its place elsewhere. Why: the texts
differ; `regions.yaml`.

Decided: beyond 60 combinations of the polytopes of several blends an order is held back where a mixture of them leaves it open. Why: on
the safe side, and in time; one blend is always decided exactly.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise, product
from math import prod

from builder.model.label.declaration import NOTHING, ONE_PER_CENT, Polytope
from builder.reckon.label.shares import Vertex, most_of_parts, optimum_at, shares_at_most, walk_to_the_constraint, weigh

# Beyond so many combinations of polytopes an order is held back where it holds for some mixture of them alone: on the safe side, in time.
MOST_WAYS = 60

_WORTH = {-1: Fraction(-1), 0: NOTHING, 1: Fraction(1)}


@dataclass(frozen=True)
class ListedAmount:
    """One thing that goes into a product (`of`), from `least` to `most` parts of it, and the names under which its parts are declared.

    `counts`: it adds to the weight of the product; what is named beside what it is part of (an allergen of a scent) does not.
    """

    of: str
    names: tuple[str, ...]
    least: Fraction
    most: Fraction
    polytopes: tuple[Polytope, ...]
    counts: bool = True


def _most_of_name(source: ListedAmount, name: str, sign: int) -> Fraction:
    """Return the most of sign * share that the parts of a name can have in a source together."""
    return most_of_parts(source.polytopes, frozenset(part for part, one in enumerate(source.names) if one == name), sign)


@dataclass(frozen=True)
class _Part:
    """A source seen from a pair of names: what each part of it adds to the difference, and to the weight of the second name."""

    source: ListedAmount
    polytope: Polytope
    more: tuple[Fraction, ...]
    second: tuple[Fraction, ...]

    def vertex(self, multiplier: Fraction | None) -> tuple[Fraction, Fraction]:
        """Return difference and excess over one per cent where difference + multiplier * excess is at its most (None: only the excess)."""
        weights = (
            self.second if multiplier is None else [more + multiplier * over for more, over in zip(self.more, self.second, strict=True)]
        )
        shares = shares_at_most(self.polytope, weights)
        excess = weigh(shares, self.second) - (ONE_PER_CENT if self.source.counts else NOTHING)
        difference = weigh(shares, self.more)
        worth = excess if multiplier is None else difference + multiplier * excess
        amount = self.source.most if worth > 0 else self.source.least
        return amount * difference, amount * excess


class Order:
    """The proofs about one product. `free_at_one`: an ingredient of exactly one per cent may stand in any order."""

    def __init__(self, sources: Sequence[ListedAmount], *, free_at_one: bool) -> None:
        """Take what a product is made of."""
        self.sources = tuple(sources)
        self.free_at_one = free_at_one
        # What can only be more or less of the product, whatever is asked about: what is fixed, and the ends of what is not.
        counting = [source for source in self.sources if source.counts]
        self._fixed = sum((source.least for source in counting if source.least == source.most), NOTHING)
        self._open = tuple(source for source in counting if source.least != source.most)
        self._proofs: dict[tuple[str, str], bool] = {}
        self._ranges: dict[str, tuple[Fraction, Fraction]] = {}

    def range_of(self, name: str) -> tuple[Fraction, Fraction]:
        """Return the least and the most that a name can be, as shares of the product."""
        if name not in self._ranges:
            self._ranges[name] = (-max(self._shares(name, -1)), max(self._shares(name, 1)))
        return self._ranges[name]

    def may_precede(self, first: str, second: str) -> bool:
        """Tell whether it is proven that the first may stand before the second. If so for a and b, and b and c, then for a and c."""
        pair = (first, second)
        if pair not in self._proofs:
            most = self.range_of(second)[1]
            if most <= self.range_of(first)[0]:
                return True
            small = most < ONE_PER_CENT or (self.free_at_one and most == ONE_PER_CENT)
            self._proofs[pair] = small or self._is_declared(first, second) or not self._is_contradicted(first, second)
        return self._proofs[pair]

    def _is_declared(self, first: str, second: str) -> bool:
        """Tell whether the two stand so in the list of the one source that holds either: the long way round would come to the same."""
        holding = [source for source in self.sources if first in source.names or second in source.names]
        if len(holding) > 1 or not holding[0].counts or len(set(holding[0].names)) < len(holding[0].names):
            return False
        one, other = (holding[0].names.index(name) for name in (first, second))
        return one < other and all(
            other in polytope.tail or (one in polytope.chain and other in polytope.chain) for polytope in holding[0].polytopes
        )

    def _shares(self, name: str, sign: int) -> Iterator[Fraction]:
        """Yield sign * share where it may be at its most: each source as it holds most of the name, and each amount at one of its ends."""
        held, total = NOTHING, self._fixed
        others = [source for source in self._open if name not in source.names]
        amounts = [(source.least, source.most) for source in others]
        # Where there is something of the product in any case, a share only falls or only rises with more of all others.
        if total or any(least for least, _ in amounts):
            amounts = [(sum((least for least, _ in amounts), NOTHING), sum((most for _, most in amounts), NOTHING))]
        ends = [((NOTHING, least), (NOTHING, most)) for least, most in amounts]
        for source in (one for one in self.sources if name in one.names):
            best, counts = _most_of_name(source, name, sign), _WORTH[source.counts]
            if source.least == source.most:
                held += source.least * best
            else:
                ends.append(((source.least * best, source.least * counts), (source.most * best, source.most * counts)))
        for chosen in product(*ends):
            whole = sum((amount for _, amount in chosen), total)
            yield sum((share for share, _ in chosen), held) / whole if whole else NOTHING

    def _is_contradicted(self, first: str, second: str) -> bool:
        touched: list[list[_Part]] = []
        untouched = NOTHING
        for source in self.sources:
            more = tuple(_WORTH[(name == second) - (name == first)] for name in source.names)
            if any(more):
                of_second = tuple(_WORTH[name == second] for name in source.names)
                touched.append([_Part(source, polytope, more, of_second) for polytope in source.polytopes])
            elif source.counts:
                untouched += source.least * ONE_PER_CENT
        ways = prod(len(parts) for parts in touched)
        several = sum(len(parts) > 1 for parts in touched) > 1
        # What does not even hold for the polytopes of each source mixed together holds for none of them.
        if several and not self._can_contradict(touched, untouched, mixed=True):
            return False
        too_many = several and ways > MOST_WAYS
        return too_many or any(self._can_contradict([[part] for part in parts], untouched) for parts in product(*touched))

    def _can_contradict(self, parts: Sequence[Sequence[_Part]], untouched: Fraction, *, mixed: bool = False) -> bool:
        def best(multiplier: Fraction | None) -> Vertex:
            difference, excess = NOTHING, -untouched
            for polytopes in parts:
                vertices = [part.vertex(multiplier) for part in polytopes]
                one = max(vertices, key=lambda vertex: vertex[1] if multiplier is None else vertex[0] + multiplier * vertex[1])
                difference, excess = difference + one[0], excess + one[1]
            return Vertex(difference, excess)

        left = best(NOTHING)
        if left.objective <= 0:
            return False
        right = best(None)
        if right.constraint < 0 or (right.constraint == 0 and not mixed and (self.free_at_one or self._is_below_a_line(parts))):
            return False
        return left.constraint >= 0 or optimum_at(*walk_to_the_constraint(left, right, best)) > 0

    @staticmethod
    def _is_below_a_line(parts: Sequence[Sequence[_Part]]) -> bool:
        """Tell whether some of the second stands below the line of a blend, where it comes near to one per cent and never reaches it."""
        return any(
            of and part.source.most and number in part.polytope.tail and part.polytope.high[number] == ONE_PER_CENT
            for polytopes in parts
            for part in polytopes
            for number, of in enumerate(part.second)
        )


@dataclass(frozen=True)
class Sorted:
    """Names in an order, and the pairs of which nothing proves which comes first; none where the order is proven."""

    names: tuple[str, ...]
    open_pairs: tuple[tuple[str, str], ...]


def sort_names(order: Order, names: Sequence[str]) -> Sorted:
    """Put names into a proven order, the given one as far as it goes; where there is none, return all pairs that are open.

    An order is proven if of each two neighbours the first may precede the second. There is one unless two names may neither precede the
    other; then they are open in any order.
    """
    ordered: list[str] = []
    for name in names:
        at = len(ordered)
        while at and not order.may_precede(ordered[at - 1], name):
            at -= 1
        ordered.insert(at, name)
    if all(order.may_precede(one, other) for one, other in pairwise(ordered)):
        return Sorted(tuple(ordered), ())
    return Sorted(tuple(ordered), tuple(pairs_open(order, ordered)))


def pairs_open(order: Order, names: Sequence[str]) -> Iterator[tuple[str, str]]:
    """Yield each pair of which nothing proves which comes first."""
    for at, one in enumerate(names):
        for other in names[at + 1 :]:
            if not order.may_precede(one, other) and not order.may_precede(other, one):
                yield one, other
