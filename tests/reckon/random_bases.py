"""Random ready-made bases with what is declared of them, compositions that fit, and the corners of all that do: for the proofs of order."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import combinations, pairwise, product
from random import Random

from builder.model.label.declaration import polytopes_of
from builder.reckon.label.label_order import ListedAmount, Order

ONE = Fraction(1, 100)
ALONE = polytopes_of(1, None, {})


@dataclass(frozen=True)
class Base:
    """A base of `count` parts with a composition that is known to the test alone, and what its supplier declares of it."""

    truth: tuple[Fraction, ...]
    below: int | None
    shares: dict[int, tuple[Fraction, Fraction]]

    @property
    def count(self) -> int:
        return len(self.truth)

    def lines(self) -> range | list[int]:
        """Return the places where the line at one per cent can be, as the number of parts above it."""
        return [self.below] if self.below is not None else range(1, self.count + 1)

    def fits(self, one: tuple[Fraction, ...]) -> bool:
        """Tell whether a composition fits what is declared, in words of the declaration."""
        in_range = all(low <= one[part] <= high for part, (low, high) in self.shares.items())
        return in_range and any(
            all(a >= b for a, b in pairwise(one[:line]))
            and all(share >= ONE for share in one[:line])
            and all(share <= ONE for share in one[line:])
            for line in self.lines()
        )


def composition(random: Random, above: int, tail: int) -> tuple[Fraction, ...]:
    """Return shares of a whole: some above one per cent, descending, then some below in any order; now and then all alike."""
    low = [Fraction(random.choice((0, 0, 1, 9, 10, random.randrange(11))), 1000) for _ in range(tail)]
    weights = sorted((random.choice((0, 1, 1, 2, 5, 20, random.randrange(1, 100))) for _ in range(above)), reverse=True)
    if not weights[0]:
        weights[0] = 1
    rest = 1 - sum(low) - ONE * above
    return tuple([ONE + rest * weight / sum(weights) for weight in weights] + low)


def random_base(random: Random, most_parts: int = 6, *, ranges: bool = True) -> Base:
    """Draw a base; half of the suppliers say where the line is, and some give figures."""
    count = random.randrange(2, most_parts + 1)
    above = random.randrange(1, count + 1)
    truth = composition(random, above, count - above)
    shares = {}
    if ranges and random.random() < 0.4:
        for part in random.sample(range(count), random.randrange(1, count + 1)):
            spread = Fraction(random.randrange(30), 100)
            shares[part] = (truth[part] * (1 - spread), min(truth[part] * (1 + spread), Fraction(1)))
    return Base(truth, above if random.random() < 0.5 and above < count else None, shares)


def random_product(random: Random, base: Base) -> Order:
    """Draw what a studio adds to it: something new, and perhaps more of a part, or what a student may add up to a most.

    There is always something beside the base: below one per cent of it is then below one per cent of the product by more than nothing.
    """
    names = tuple(f"part {number}" for number in range(base.count))
    sources = [ListedAmount("base", names, Fraction(1), Fraction(1), polytopes_of(base.count, base.below, base.shares))]
    for name in ("thing", *random.sample(("other", "part 0", "part 1", "scent"), random.randrange(3))):
        most = Fraction(random.choice((2, 5, 11, 25, 60, 150, 400, 1000)), 1000)
        sources.append(ListedAmount(name, (name,), Fraction(0) if name == "scent" else most, most, ALONE))
    return Order(sources, free_at_one=random.random() < 0.5)


def held_in(order: Order, shares: tuple[Fraction, ...], amounts: Sequence[Fraction]) -> dict[str, Fraction]:
    """Return how much there is of each name in a product with these shares of the base and amounts of the rest."""
    held = dict(zip(order.sources[0].names, shares, strict=True))
    for source, amount in zip(order.sources[1:], amounts, strict=True):
        held[source.of] = held.get(source.of, Fraction(0)) + amount
    return held


def contradicted(order: Order, one: Fraction, other: Fraction, total: Fraction) -> bool:
    """Tell whether amounts contradict that the first stands before the other."""
    return other > one and (other > ONE * total if order.free_at_one else other >= ONE * total)


def corners(base: Base) -> Iterator[list[tuple[Fraction, ...]]]:
    """Yield the corners of all that fits a declaration without figures, from their closed form, line by line.

    What is above one per cent, less one per cent of each, is a descending chain, of which the corners are the averages of its first parts.
    """
    for line in base.lines():
        tails = list(product((Fraction(0), ONE), repeat=base.count - line))
        found = []
        for tail, first in product(tails, range(1, line + 1)):
            rest = 1 - sum(tail) - ONE * line
            found.append((*(ONE + rest / first if part < first else ONE for part in range(line)), *tail))
        yield found


def corners_of_figures(base: Base) -> Iterator[list[tuple[Fraction, ...]]]:
    """Yield the corners line by line with figures of the supplier, by solving for every set of bounds that can be tight together."""
    count = base.count
    for line in base.lines():
        bounds = [({part: 1}, ONE) for part in range(line)] + [({part: -1}, -ONE) for part in range(line, count)]
        bounds += [({part: 1}, Fraction(0)) for part in range(line, count)] + [
            ({part: 1, part + 1: -1}, Fraction(0)) for part in range(line - 1)
        ]
        for part, (low, high) in base.shares.items():
            bounds += [({part: 1}, low), ({part: -1}, -high)]
        found = set()
        for tight in combinations(bounds, count - 1):
            solved = _solve([[Fraction(1)] * count, *([Fraction(row.get(part, 0)) for part in range(count)] for row, _ in tight)],
                            [Fraction(1), *(side for _, side in tight)])  # fmt: skip
            if solved and all(sum(factor * solved[part] for part, factor in row.items()) >= side for row, side in bounds):
                found.add(solved)
        yield list(found)


def _solve(rows: Sequence[Sequence[Fraction]], sides: Sequence[Fraction]) -> tuple[Fraction, ...] | None:
    """Solve a square system exactly; None where it has not one answer."""
    rows, size = [[*row, side] for row, side in zip(rows, sides, strict=True)], len(rows)
    for column in range(size):
        pivot = next((at for at in range(column, size) if rows[at][column]), None)
        if pivot is None:
            return None
        rows[column], rows[pivot] = rows[pivot], rows[column]
        rows[column] = [value / rows[column][column] for value in rows[column]]
        for at in range(size):
            if at != column and rows[at][column]:
                rows[at] = [value - rows[at][column] * lead for value, lead in zip(rows[at], rows[column], strict=True)]
    return tuple(row[-1] for row in rows)


def can_be_contradicted(order: Order, one: str, other: str, lines: Sequence[Sequence[tuple[Fraction, ...]]]) -> bool:
    """Say from the corners whether anything that fits contradicts a pair.

    The most by which the second exceeds the first, while it is subject to the order, is found at a corner or where the way between two
    corners meets one per cent.
    """
    ends = [sorted({source.least, source.most}) for source in order.sources[1:]]
    for shares in lines:
        points = [_point(order, one, other, corner, amounts) for corner in shares for amounts in product(*ends)]
        if not points or max(excess for _, excess in points) < (0 if not order.free_at_one else Fraction(1, 10**30)):
            continue
        inside, outside = [p for p in points if p[1] >= 0], [p for p in points if p[1] < 0]
        if any(more > 0 for more, _ in inside) or any(
            more * -below + under * over > 0 for more, over in inside for under, below in outside if under > 0
        ):
            return True
    return False


def _point(order: Order, one: str, other: str, shares: tuple[Fraction, ...], amounts: tuple[Fraction, ...]) -> tuple[Fraction, Fraction]:
    held = held_in(order, shares, amounts)
    return held[other] - held[one], held[other] - ONE * (1 + sum(amounts))


def seeded(number: int) -> Random:
    """Return the dice of one case."""
    return Random(number)
