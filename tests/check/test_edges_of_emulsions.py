"""Rules on emulsions at the very figure where they begin to speak, and the way out that they name.

The edges are the figures of content/constants.yaml and of the cards, whose sources stand there: an HLB 3 beside what the oils require is
far off (tables seldom agree closer than 1), emulsifiers of HLB 3 to 6 hold water in oil (Griffin), which holds 75 % at the most, and 40 %
of the free acids of a wax are neutralised in a cream of borax (the cold cream of the USP has 51 to 72 %).
"""

from collections.abc import Iterable
from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest

from builder.check.batches import Batch, BatchFinding
from builder.check.formula.emulsion import find_weak_emulsions
from builder.model.finding import Finding
from builder.model.formula.emulsion import Emulsion
from builder.model.recipe.recipe import Recipe
from tests.check.test_at_the_edge import batch, levels, mixed
from tests.making import sure, told

PAIR = mixed(water="60", polysorbate_80="3", sorbitan_oleate="3")
WAXED = mixed(water="60", emulsifying_wax="6")
BORAX = mixed(water="40", beeswax="10", borax="0.6")


def seen(formula: Recipe, **values: Any) -> Batch:
    """Return a batch whose emulsion comes to these values."""
    one = batch(formula)
    return replace(one, worked=replace(one.worked, emulsion=replace(sure(one.worked.emulsion), **values)))


def remedies(found: Iterable[Finding | BatchFinding]) -> str:
    return " ".join(one.remedy for one in told(found))


@pytest.mark.parametrize(
    ("required", "has", "found"),
    [("10", "13", 0), ("10", "13.01", 1), ("10", "7", 0), ("10", "6.99", 1), (None, "13", 0), ("10", None, 0)],
)
def test_emulsifiers_are_far_off_beyond_three(required: str | None, has: str | None, found: int) -> None:
    one = seen(PAIR, required=required and Fraction(required), has=has and Fraction(has))
    assert levels(find_weak_emulsions(one)) == ["hlb-far-off caution"] * found


# An emulsifier of 3 to 6 is judged by how much of water and oil is water, and not by what the oils require.
@pytest.mark.parametrize(
    ("has", "water", "oil", "found"),
    [
        ("3", "75", "25", 0),
        ("6", "75", "25", 0),
        ("4", "75.1", "24.9", 1),
        ("4", "30", "10", 0),
        ("4", "31", "10", 1),
        ("6.01", "30", "70", 1),
    ],
)
def test_oil_holds_three_quarters_of_water_and_no_more(has: str, water: str, oil: str, found: int) -> None:
    shares: dict[str, Any] = {"water_share": Fraction(water) / 100, "oil_share": Fraction(oil) / 100}
    one = seen(PAIR, required=Fraction(12), has=Fraction(has), **shares)
    assert levels(find_weak_emulsions(one)) == ["hlb-far-off caution"] * found


# Polysorbate 80 has HLB 15, sorbitan oleate 4.3 (Griffin): 12 is met by (12 - 4.3) / 10.7 = 72 % of the first and 28 % of the second.
def test_the_pair_is_told_with_the_shares_that_come_to_what_is_required() -> None:
    found = remedies(find_weak_emulsions(seen(PAIR, required=Fraction(12), has=Fraction(20), share_of_first=Fraction("0.72"))))
    assert "72 % polysorbate 80 and 28 % sorbitan oleate would come to it" in found
    found = remedies(find_weak_emulsions(seen(PAIR, required=Fraction(12), has=Fraction(20), share_of_first=None)))
    assert "Pair an emulsifier of high HLB with one of low HLB" in found


# The card of emulsifying wax has 20 to 40 % of the oils as usual.
@pytest.mark.parametrize(("oil", "found"), [("0.30", 0), ("0.3001", 1), ("0.31", 1), ("0.15", 0)])
def test_a_wax_below_a_fifth_of_the_oils_is_little(oil: str, found: int) -> None:
    one = seen(WAXED, oil_share=Fraction(oil), has=None)
    assert levels(find_weak_emulsions(one)) == ["emulsifier-too-little caution"] * found
    if oil == "0.31":
        assert "Raise it to about 6.2 % of the whole" in remedies(find_weak_emulsions(one))


@pytest.mark.parametrize(("takes_up", "found"), [("0.6", 0), ("0.59", 1)])
def test_what_takes_up_all_of_the_water_needs_no_emulsifier(takes_up: str, found: int) -> None:
    of = mixed(water="60", lanolin="10")
    one = seen(of, takes_up=Fraction(takes_up), water_share=Fraction("0.6"))
    assert levels(find_weak_emulsions(one)) == ["emulsifier-too-little caution"] * found
    # Beside an emulsifier the same is silent.
    assert levels(find_weak_emulsions(seen(WAXED, oil_share=Fraction("0.3"), takes_up=Fraction(takes_up), has=None))) == []


def with_soap(low: str, high: str, formula: Recipe = BORAX, **values: Any) -> Batch:
    one = seen(formula, **values)
    emulsion: Emulsion = sure(one.worked.emulsion)
    made = replace(sure(emulsion.soap), low=Fraction(low) / 100, high=Fraction(high) / 100)
    return replace(one, worked=replace(one.worked, emulsion=replace(emulsion, soap=made)))


@pytest.mark.parametrize(
    ("low", "high", "found"),
    [
        ("25", "39.9", ["emulsifier-too-little caution"]),
        ("25", "40", []),
        ("100", "140", []),
        ("100.1", "140", ["alkali-left-over caution"]),
    ],
)
def test_borax_neutralises_from_40_to_100_per_cent_of_the_acids_of_the_wax(low: str, high: str, found: list[str]) -> None:
    assert levels(find_weak_emulsions(with_soap(low, high))) == found


def test_a_little_soap_is_enough_where_something_else_holds_the_water() -> None:
    assert levels(find_weak_emulsions(with_soap("10", "20", takes_up=Fraction("0.4"), water_share=Fraction("0.4")))) == []
    waxed = mixed(water="40", beeswax="10", borax="0.6", emulsifying_wax="10")
    assert levels(find_weak_emulsions(with_soap("10", "20", waxed))) == []


# 0.6 % of borax neutralises 120 % at the least: 0.5 % would neutralise all.
def test_as_much_borax_is_named_as_the_acids_take_up() -> None:
    assert "Use at most 0.5 % of the whole" in remedies(find_weak_emulsions(with_soap("120", "160")))
