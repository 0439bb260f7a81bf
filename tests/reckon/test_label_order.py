"""Proofs of order: nothing that fits a declaration contradicts what is printed, and nothing that can be proven is withheld.

`python -m tests.reckon.test_label_order 100000` draws as many bases as it is told to.
"""

import sys
from collections.abc import Callable, Iterator
from fractions import Fraction
from itertools import combinations, permutations
from random import Random

import pytest

from builder.reckon.label.label_order import Order, Sorted, sort_names
from tests.reckon.random_bases import (
    Base,
    can_be_contradicted,
    composition,
    contradicted,
    corners,
    corners_of_figures,
    held_in,
    random_base,
    random_product,
    seeded,
)


def names_of(order: Order) -> list[str]:
    return list(dict.fromkeys(name for source in order.sources for name in source.names))


def fitting(random: Random, base: Base) -> list[tuple[Fraction, ...]]:
    """Draw compositions that fit: the true one, and others of the same length."""
    others = (composition(random, line, base.count - line) for line in random.choices(base.lines(), k=4))
    return [base.truth, *(one for one in others if base.fits(one))]


def judge_printed(number: int) -> Sorted:
    """Hold the list that is printed for one random base against compositions that fit; give the list."""
    random = seeded(number)
    base = random_base(random)
    order = random_product(random, base)
    found = sort_names(order, names_of(order))
    if found.open_pairs:
        return found
    for shares in fitting(random, base):
        amounts = [random.choice((source.least, source.most, (2 * source.least + source.most) / 3)) for source in order.sources[1:]]
        held = held_in(order, shares, amounts)
        for one, other in combinations(found.names, 2):
            assert not contradicted(order, held[one], held[other], sum(amounts, Fraction(1))), (number, one, other, shares, amounts)
    return found


def judge_withheld(number: int, lines: Callable[[Base], Iterator[list[tuple[Fraction, ...]]]], *, ranges: bool, most_parts: int) -> int:
    """Hold every verdict on one random base against the corners of all that fits."""
    random = seeded(number)
    base = random_base(random, most_parts, ranges=ranges)
    order = random_product(random, base)
    corners_by_line = list(lines(base))
    for one, other in permutations(names_of(order), 2):
        assert order.may_precede(one, other) is not can_be_contradicted(order, one, other, corners_by_line), (number, one, other)
    return len(names_of(order))


@pytest.mark.parametrize("bases", [100, pytest.param(1000, marks=pytest.mark.long)])
def test_no_printed_order_is_contradicted(bases: int) -> None:
    judged = [judge_printed(number) for number in range(bases)]
    assert 0.1 < sum(bool(found.open_pairs) for found in judged) / len(judged) < 0.9


@pytest.mark.parametrize("bases", [20, pytest.param(150, marks=pytest.mark.long)])
def test_no_provable_order_is_withheld(bases: int) -> None:
    assert all(judge_withheld(number, corners, ranges=False, most_parts=5) for number in range(bases))


@pytest.mark.parametrize("bases", [12, pytest.param(40, marks=pytest.mark.long)])
def test_no_provable_order_is_withheld_where_the_supplier_gives_figures(bases: int) -> None:
    assert all(judge_withheld(number, corners_of_figures, ranges=True, most_parts=4) for number in range(bases))


def main(times: int) -> None:
    """Judge many bases, and say how many lists were printed."""
    printed = sum(not judge_printed(number).open_pairs for number in range(times))
    print(f"{times} bases: {printed} lists proven, {times - printed} held back, none contradicted", flush=True)
    some, few = times // 5, times // 50
    for number in range(some):
        judge_withheld(number, corners, ranges=False, most_parts=5)
    print(f"{some} bases without figures: every verdict agrees with the corners", flush=True)
    for number in range(few):
        judge_withheld(number, corners_of_figures, ranges=True, most_parts=4)
    print(f"{few} bases with figures: every verdict agrees with the corners")


if __name__ == "__main__":
    main(int(sys.argv[1]))
