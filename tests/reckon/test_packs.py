"""Packs cover the need, and no other combination is cheaper: every combination is tried beside it."""

import os
from collections.abc import Sequence
from fractions import Fraction
from itertools import product
from math import ceil

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.reckon.supplies.packs import MOST_STEPS, Pack, cheapest_packs
from tests.whole_run import LONG

SIZES = st.integers(1, 40).map(Fraction) | st.fractions(min_value=1, max_value=40, max_denominator=7)
PRICES = st.integers(0, 3000).map(lambda cents: Fraction(cents, 100))


def price(counts: tuple[int, ...], packs: Sequence[Pack]) -> Fraction:
    return sum((count * pack.price for count, pack in zip(counts, packs, strict=True)), Fraction(0))


def holds(counts: tuple[int, ...], packs: Sequence[Pack]) -> Fraction:
    return sum((count * pack.size for count, pack in zip(counts, packs, strict=True)), Fraction(0))


def cheapest_of_all(needed: Fraction, packs: Sequence[Pack]) -> Fraction:
    """Return the least price of all combinations that cover a need; more of one pack than covers it alone can never be cheaper."""
    ranges = [range(ceil(needed / pack.size) + 1) for pack in packs]
    return min(price(counts, packs) for counts in product(*ranges) if holds(counts, packs) >= needed)


@settings(max_examples=150 if LONG in os.environ else 40, deadline=None)
@given(
    st.fractions(min_value=Fraction(1, 10), max_value=60, max_denominator=10),
    st.lists(st.builds(Pack, SIZES.filter(lambda size: size >= 4), PRICES), min_size=1, max_size=3),
)
def test_packs_cover_the_need_and_no_combination_is_cheaper(needed: Fraction, packs: Sequence[Pack]) -> None:
    counts, proven = cheapest_packs(needed, *packs)
    assert holds(counts, packs) >= needed
    assert all(count >= 0 for count in counts)
    assert proven
    assert price(counts, packs) == cheapest_of_all(needed, packs)


# 250 g at 3.00 and 1 kg at 10.00: up to 750 g the small ones are cheaper, 900 g is dearer in four small ones than in a large one.
def test_by_hand() -> None:
    packs = [Pack(Fraction(250), Fraction(3)), Pack(Fraction(1000), Fraction(10))]
    found = {needed: cheapest_packs(Fraction(needed), *packs)[0] for needed in (1, 250, 251, 750, 900, 1000, 1001, 1250, 2700)}
    assert found == {
        1: (1, 0), 250: (1, 0), 251: (2, 0), 750: (3, 0), 900: (0, 1), 1000: (0, 1), 1001: (1, 1), 1250: (1, 1), 2700: (3, 2),
    }  # fmt: skip


# 130 g: the kilogram is the cheapest by weight and costs 10.00; two of 100 g cost 4.00, five of 30 g 3.50, one of each 2.70.
def test_the_best_value_may_not_be_needed_at_all() -> None:
    packs = [Pack(Fraction(1000), Fraction(10)), Pack(Fraction(100), Fraction(2)), Pack(Fraction(30), Fraction(7, 10))]
    assert cheapest_packs(Fraction(130), *packs) == ((0, 1, 1), True)


# 350 g at one cent a gram in every pack: 250 g and 100 g cost 3.50, four of 100 g 4.00, two of 250 g 5.00, the kilogram 10.00.
def test_where_all_are_of_the_same_value_the_largest_may_not_be_needed() -> None:
    packs = [Pack(Fraction(size), Fraction(size, 100)) for size in (1000, 250, 100)]
    assert cheapest_packs(Fraction(350), *packs) == ((0, 1, 1), True)


def test_of_two_at_the_same_price_the_fewest_packs_count() -> None:
    packs = [Pack(Fraction(250), Fraction(5, 2)), Pack(Fraction(1000), Fraction(10))]
    assert cheapest_packs(Fraction(900), *packs) == ((0, 1), True)


@pytest.mark.long
def test_the_search_ends_whatever_is_asked() -> None:
    many = [Pack(Fraction(1000 + 7 * number), Fraction(1000 + 7 * number, 100) + Fraction(number, 1000)) for number in range(12)]
    counts, proven = cheapest_packs(Fraction(10**12 + 1), *many)
    assert holds(counts, many) >= 10**12 + 1
    assert not proven
    assert MOST_STEPS <= 10_000


def test_free_packs_cost_nothing() -> None:
    packs = [Pack(Fraction(10), Fraction(0)), Pack(Fraction(100), Fraction(5))]
    counts, _ = cheapest_packs(Fraction(95), *packs)
    assert (price(counts, packs), holds(counts, packs)) == (Fraction(0), Fraction(100))


@pytest.mark.long
def test_of_very_many_packs_the_best_are_tried() -> None:
    packs = [Pack(Fraction(100 + number), Fraction(100 + number, 7) + Fraction(number * number, 10**5)) for number in range(2000)]
    counts, proven = cheapest_packs(Fraction(12_345), *packs)
    assert holds(counts, packs) >= 12_345
    assert not proven


# By hand: 400 g more than so many kilograms at 10.00 are cheaper in a pack of 400 g at 5.00 than in another kilogram.
def test_what_is_left_over_is_proven_however_many_packs_it_takes() -> None:
    kilograms = 2 * MOST_STEPS
    packs = [Pack(Fraction(1000), Fraction(10)), Pack(Fraction(400), Fraction(5))]
    assert cheapest_packs(Fraction(1000 * kilograms + 400), *packs) == ((kilograms, 1), True)


def test_packs_of_one_value_are_settled_however_much_is_needed() -> None:
    packs = [Pack(Fraction(250), Fraction(5)), Pack(Fraction(1000), Fraction(20)), Pack(Fraction(500), Fraction(10))]
    assert cheapest_packs(Fraction(346_500), *packs) == ((0, 346, 1), True)
