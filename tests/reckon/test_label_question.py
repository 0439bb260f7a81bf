"""Which one figure is asked for: the one that settles most of what is open, if it lies in the middle of what it can be. All by hand."""

from collections.abc import Sequence
from fractions import Fraction

import pytest

from builder.model.label.declaration import polytopes_of
from builder.model.label.ingredient_list import Question
from builder.reckon.label import shares
from builder.reckon.label.label_order import ListedAmount, Order
from builder.reckon.label.label_question import MOST_PAIRS, find_question

Amounts = dict[str, int]


def product(blends: dict[str, tuple[str, int]], single: Amounts) -> Order:
    """Return the orders of a product: blends by name, with their parts (a letter each) and parts by weight, and what is one name each."""
    several = [
        ListedAmount(name, tuple(parts), Fraction(n), Fraction(n), polytopes_of(len(parts), None, {}))
        for name, (parts, n) in blends.items()
    ]
    alone = [ListedAmount(name, (name,), Fraction(n), Fraction(n), polytopes_of(1, None, {})) for name, n in single.items()]
    return Order([*several, *alone], free_at_one=True)


def asked(order: Order, *pairs: str) -> Question | None:
    """Ask about pairs of names, "a oil"; each name is called by its capital."""
    split = [(one.split()[0], one.split()[1]) for one in pairs]
    return find_question(order, split, {name: name.upper() for source in order.sources for name in source.names})


# Of 50 g of a, b and c in descending order a is 33 to 100 %, in the middle 66.7 %: 33.3 g, more than 27 g of oil. Then b is at most 33.3 %
# or 16.7 g, less than 17 g of wax. If b is in the middle of 0 to 50 %, it is 12.5 g, and a is 25 to 37.5 g: that leaves a and the oil open.
def test_the_figure_that_settles_most_is_asked_for() -> None:
    order = product({"blend": ("abc", 50)}, {"oil": 27, "wax": 17})
    assert asked(order, "a oil", "b wax") == Question("blend", "A", 2)


# Nothing is settled by a, of which 66.7 % are 33.3 g, and b then 8.3 to 16.7 g beside 10 g of wax; b in the middle is 12.5 g.
def test_a_figure_in_the_middle_settles_its_own_pair() -> None:
    assert asked(product({"blend": ("abc", 50)}, {"wax": 10}), "b wax") == Question("blend", "B", 1)


# Of 100 g the fourth and fifth of five parts are at most 25 and 20 g, and 1 g each where the line stands before them: less than the wax and
# the water. The fourth in the middle, 12.5 g, is more than the wax and leaves the fifth open; the fifth, 10 g, leaves 10 to 22.5 g to the
# fourth.
def test_the_line_is_asked_for_where_it_settles_more_than_any_share() -> None:
    order = product({"blend": ("abcde", 100)}, {"wax": 11, "water": 2})
    assert asked(order, "d wax", "e water") == Question("blend", "", 2)


def test_no_blend_has_a_say_where_no_name_of_one_is_open() -> None:
    order = product({"blend": ("abc", 50)}, {"oil": 27, "wax": 17})
    assert asked(order, "oil wax") is None
    assert asked(order) is None


def test_the_share_of_what_is_in_question_is_asked_for_before_the_line() -> None:
    # 60 g of a and b, and 60 g of c and d: in the middle a is 75 % and 45 g, and c still anything from 30 to 60 g.
    order = product({"one": ("ab", 60), "two": ("cd", 60)}, {})
    assert asked(order, "a c") == Question("one", "A", 0)


@pytest.mark.parametrize("more", [0, 4])
def test_a_few_pairs_are_enough_to_choose_by(more: int) -> None:
    pairs: Sequence[str] = ["a oil"] * (MOST_PAIRS + more)
    assert asked(product({"blend": ("ab", 50)}, {"oil": 30}), *pairs) == Question("blend", "A", MOST_PAIRS)


# A list copied from a supplier that names one thing twice; each choice of a student makes another list of the same base.
def test_what_an_answer_leaves_of_a_base_is_worked_out_once(monkeypatch: pytest.MonkeyPatch) -> None:
    base, solved, solve = polytopes_of(7, None, {}), list[int](), shares._in_polytope
    monkeypatch.setattr(shares, "_in_polytope", lambda *one: solved.append(1) or solve(*one))  # type: ignore[func-returns-value]
    times = []
    for n in range(2):
        order = Order([ListedAmount("base", tuple("abccdef"), Fraction(900 + n), Fraction(1000 + n), base)], free_at_one=True)
        assert asked(order, "a b", "b c", "c d", "d e")
        times.append(len(solved))
        solved.clear()
    assert times[1] < times[0] / 2, times
