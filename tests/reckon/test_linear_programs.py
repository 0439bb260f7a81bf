"""The exact solver of shares and orders beside a solver in floats: HiGHS, through `scipy.optimize.linprog` (an outside library).

Both are handed the same program, written here from the declaration and not from the code: shares that add up to one, within their bounds,
descending along the chain. What lies closer to zero than floats can tell is left out.
"""

from collections.abc import Mapping, Sequence
from fractions import Fraction
from itertools import pairwise, permutations, product
from random import Random

import pytest
import scipy  # whose parts are loaded when they are asked for

from builder.model.label.declaration import Polytope, polytopes_of
from builder.reckon.label.label_order import ListedAmount, Order
from builder.reckon.label.shares import most_of
from tests.making import Number
from tests.reckon.random_bases import ALONE, random_base, random_product, seeded
from tests.reckon.test_label_order import names_of

CLOSE = 1e-7
ONE = 0.01


def most_in_floats(polytope: Polytope, weights: Sequence[Fraction]) -> float:
    """Return the most of a weighted sum over one polytope."""
    count = len(polytope.low)
    falls = [[(part == after) - (part == before) for part in range(count)] for before, after in pairwise(polytope.chain)]
    found = scipy.optimize.linprog(
        [-float(weight) for weight in weights],
        A_ub=falls or None,
        b_ub=[0] * len(falls) or None,
        A_eq=[[1] * count],
        b_eq=[1],
        bounds=[(float(low), float(high)) for low, high in zip(polytope.low, polytope.high, strict=True)],
    )
    assert found.success, found.message
    return -float(found.fun)


@pytest.mark.parametrize("number", range(60))
def test_the_most_of_a_weighted_sum(number: int) -> None:
    random = seeded(number)
    base = random_base(random, 7)
    source = random_product(random, base).sources[0]
    weights = [Fraction(random.randrange(-20, 21), random.choice((1, 3, 7))) for _ in source.names]
    exact = most_of(source.polytopes, weights)
    assert float(exact) == pytest.approx(max(most_in_floats(one, weights) for one in source.polytopes), abs=CLOSE)


def most_by_which_the_second_exceeds(order: Order, polytopes: tuple[Polytope, ...], first: str, second: str) -> float | None:
    """Return the most of second - first while the second comes to one per cent of the product; None where it never does.

    The unknowns are amounts: of each source in all, and of each of its parts.
    """
    objective, at_least, rows, sides, equal, bounds = [], [], [], [], [], []
    width = sum(1 + len(source.names) for source in order.sources)
    start = 0
    for source, polytope in zip(order.sources, polytopes, strict=True):
        whole, parts = start, range(start + 1, start + 1 + len(source.names))
        objective += [0, *((name == second) - (name == first) for name in source.names)]
        at_least += [-ONE * source.counts, *(float(name == second) for name in source.names)]
        equal.append(row(width, {whole: -1, **dict.fromkeys(parts, 1)}))
        bounds += [(float(source.least), float(source.most)), *((0, None) for _ in source.names)]
        for part, low, high in zip(parts, polytope.low, polytope.high, strict=True):
            rows += [row(width, {part: 1, whole: -float(high)}), row(width, {part: -1, whole: float(low)})]
        for before, after in pairwise(polytope.chain):
            rows.append(row(width, {parts[after]: 1, parts[before]: -1}))
        start += 1 + len(source.names)
    sides = [0] * len(rows)
    found = scipy.optimize.linprog(
        [-one for one in objective],
        A_ub=[*rows, [-one for one in at_least]],
        b_ub=[*sides, 0],
        A_eq=equal,
        b_eq=[0] * len(equal),
        bounds=bounds,
    )
    return -found.fun if found.success else None


def row(width: int, entries: Mapping[int, Number]) -> list[float]:
    return [float(entries.get(column, 0)) for column in range(width)]


def judge(order: Order, names: Sequence[str]) -> int:
    """Hold every verdict on some names of a product against the solver in floats; return how many there were."""
    judged = 0
    ways = list(product(*(source.polytopes for source in order.sources)))
    for first, second in permutations(names, 2):
        most = [most_by_which_the_second_exceeds(order, way, first, second) for way in ways]
        found = [one for one in most if one is not None]
        if any(abs(one) < CLOSE for one in found):
            continue  # A tie, where the exact rules for one per cent decide.
        judged += 1
        assert order.may_precede(first, second) is not any(one > 0 for one in found), (first, second)
    return judged


@pytest.mark.parametrize("bases", [8, pytest.param(40, marks=pytest.mark.long)])
def test_a_verdict_on_an_order_is_that_of_the_solver_in_floats(bases: int) -> None:
    orders = [random_product(random, random_base(random, 5)) for random in map(seeded, range(bases))]
    assert sum(judge(order, names_of(order)) for order in orders) > 7 * bases


def two_blends(random: Random) -> Order:
    """Draw a product of a base and of a blend that hold some of the same, of neither of which the line at one per cent need be known."""
    base, blend = random_base(random, 4), random_base(random, 4)
    parts = tuple(f"part {number}" for number in range(base.count))
    names = tuple(random.sample(("part 0", "part 1", "own", "other"), blend.count))
    most = Fraction(random.choice((25, 60, 150, 400, 1000)), 1000)
    sources = [ListedAmount("base", parts, Fraction(1), Fraction(1), polytopes_of(base.count, base.below, base.shares))]
    sources.append(ListedAmount("blend", names, most / random.choice((1, 2)), most, polytopes_of(blend.count, blend.below, blend.shares)))
    return Order(sources, free_at_one=random.random() < 0.5)


@pytest.mark.parametrize("products", [12, pytest.param(60, marks=pytest.mark.long)])
def test_a_verdict_on_what_two_blends_hold_is_that_of_the_solver_in_floats(products: int) -> None:
    orders = [two_blends(seeded(number)) for number in range(products)]
    assert sum(judge(order, names_of(order)) for order in orders) > 7 * products


# Two blends in water and what students may add of a third, of each of which the line at one per cent is not known: 4 x 4 x 3 ways.
def test_a_verdict_on_what_three_blends_hold_is_that_of_the_solver_in_floats() -> None:
    near_one = {2: (Fraction("0.0093"), Fraction("0.0107"))}
    sources = [
        ListedAmount("one", ("b", "a", "c", "d"), Fraction(1), Fraction(1), polytopes_of(4, None, near_one)),
        ListedAmount("two", ("c", "b", "a", "d"), Fraction("0.4"), Fraction("0.4"), polytopes_of(4, None, {})),
        ListedAmount("dose", ("a", "d", "c"), Fraction("0.0025"), Fraction("0.025"), polytopes_of(3, None, {})),
        ListedAmount("water", ("water",), Fraction(8), Fraction(8), ALONE),
    ]
    order = Order(sources, free_at_one=False)
    assert judge(order, ["a", "d"]) and not order.may_precede("a", "d")
