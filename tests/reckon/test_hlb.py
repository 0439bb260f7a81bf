"""HLB arithmetic against published worked examples.

Sources: OCL 2022 (ocl210096), tables 4 and 5, read; PMC3969497, table I, read. The pairs of the latter were worked back from its figures,
so that they prove the rule and not the figures.
"""

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.model.recipe.column import Line, Role
from builder.model.recipe.figure import Figure, Known
from builder.model.recipe.ingredient import CountsAs
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.recipe.quantity import Mass
from builder.reckon.formula.emulsions import reckon_emulsion
from builder.reckon.formula.hlb import mixture_of, share_of_high
from tests.making import SOURCE, Number, card, sure

ONE = Fraction(1)


def figure(value: Number) -> Figure:
    return Figure(Fraction(value), Fraction(value), "HLB", SOURCE, "here", Known.READ)


def line(name: str, share: int, counts_as: CountsAs = CountsAs.OTHER, kind: IngredientKind = IngredientKind.OTHER, **figures: Any) -> Line:
    made = card(name, counts_as, **figures)
    made = replace(made, kind=kind, figures={key.replace("hlb", "HLB"): value for key, value in made.figures.items()})
    return Line(made, "all", Role.OTHER, Mass(Fraction(share)), Fraction(share) / 100)


def test_required_hlb_of_a_published_cream() -> None:
    # OCL 2022, table 4: 34 g of oils; glyceryl stearate and stearic acid count among them. Published: 10.33.
    oils = [("1.5", "12"), ("7.5", "11.5"), ("7.5", "3.8"), ("12.5", "15"), ("5", "6.2")]
    required = mixture_of([(Fraction(share), figure(hlb)) for share, hlb in oils])
    assert abs(sure(required) - Fraction("10.33")) < Fraction("0.005")


def test_no_pair_reaches_beyond_its_ends() -> None:
    assert share_of_high(Fraction(16), Fraction(15), Fraction(4)) is None
    assert share_of_high(Fraction(3), Fraction(15), Fraction(4)) is None
    assert share_of_high(Fraction(5), Fraction(5), Fraction(5)) is None


@given(st.fractions(1, 20), st.fractions(1, 20), st.fractions(0, 1))
def test_a_pair_mixed_as_said_has_the_hlb_that_is_wanted(high: Fraction, low: Fraction, part: Fraction) -> None:
    if low < high:
        wanted = low + (high - low) * part
        share = sure(share_of_high(wanted, high, low))
        assert mixture_of([(share, figure(high)), (1 - share, figure(low))]) == wanted


def test_one_unknown_oil_leaves_the_whole_unknown() -> None:
    assert mixture_of([(ONE, figure(7)), (ONE, None)]) is None
    assert mixture_of([]) is None


def test_water_is_not_counted_and_fatty_alcohols_are() -> None:
    lines = [
        line("water", 80, CountsAs.WATER, IngredientKind.WATER),
        line("oil", 10, CountsAs.FAT, IngredientKind.OIL, required_hlb=7),
        line("alcohol", 5, kind=IngredientKind.THICKENER, required_hlb=15),
        line("tween", 5, kind=IngredientKind.EMULSIFIER, hlb=15),
    ]
    emulsion = reckon_emulsion(lines)
    assert sure(emulsion).oil_share == Fraction("0.15")
    assert sure(emulsion).required == Fraction(29, 3)
    assert sure(emulsion).has == 15
    assert [working.result for working in sure(emulsion).workings] == [Fraction(29, 3), 15]


@pytest.mark.parametrize("leaves_out", ["water", "oil"])
def test_without_water_or_oil_there_is_no_emulsion(leaves_out: str) -> None:
    lines = [line("water", 80, CountsAs.WATER, IngredientKind.WATER), line("oil", 20, CountsAs.FAT, IngredientKind.OIL)]
    assert reckon_emulsion([one for one in lines if one.ingredient.name != leaves_out]) is None
    assert reckon_emulsion(lines) is not None


def test_soap_and_ready_made_bases_are_no_emulsions_of_ours() -> None:
    lines = [line("water", 60, CountsAs.WATER), line("oil", 20, CountsAs.FAT), line("base", 20, CountsAs.BASE)]
    assert reckon_emulsion(lines) is None
