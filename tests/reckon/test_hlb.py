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
    workings = sure(emulsion).workings
    assert [working.result for working in workings] == [Fraction(29, 3), 15]
    # Two thirds of the oil phase are oil, one third is alcohol; the emulsifier is all of its kind.
    shown = [[(one.of, one.value) for one in working.given if one.name == "share"] for working in workings]
    assert shown == [[("oil", Fraction(2, 3)), ("alcohol", Fraction(1, 3))], [("tween", ONE)]]


# PMC3969497, table I, read: 53.3 % of polysorbate 80 (HLB 15) with sorbitan oleate (4.3) come to 10; here 4 parts of 10 are of the first.
@pytest.mark.parametrize("turned", [False, True])
def test_the_pair_of_a_batch_is_told_with_the_share_of_the_higher(*, turned: bool) -> None:
    high, low = (line(name, share, kind=IngredientKind.EMULSIFIER, hlb=hlb) for name, share, hlb in (("high", 4, 15), ("low", 6, "4.3")))
    rest = [line("water", 70, CountsAs.WATER), line("oil", 20, CountsAs.FAT, required_hlb=10)]
    emulsion = sure(reckon_emulsion([*rest, low, high] if turned else [*rest, high, low]))
    assert [one.name for one in emulsion.emulsifiers] == ["high", "low"]
    assert float(sure(emulsion.share_of_first)) == pytest.approx(0.533, abs=0.0006)
    # By hand: 0.4 x 15 + 0.6 x 4.3.
    assert emulsion.has == Fraction("8.58")


def paste(water: int, powder: int) -> list[Line]:
    return [
        line("water", water, CountsAs.WATER, IngredientKind.WATER),
        line("clay", powder, kind=IngredientKind.CLAY),
        line("oil", 100 - water - powder, CountsAs.FAT, IngredientKind.OIL),
    ]


def test_powder_of_the_weight_of_the_water_makes_a_paste() -> None:
    assert reckon_emulsion(paste(30, 29)) is not None
    assert reckon_emulsion(paste(30, 30)) is None


# By hand: 10 parts of wool fat take up 150 to 200 % of their weight, 15 parts at the least; one part of an alkali that neutralises 280 to
# 300 mg/g takes 280 / (2 x 22) to 300 / (2 x 18) times the free acid of two parts of a wax with an acid value of 18 to 22.
def test_what_takes_up_water_and_the_soap_of_a_wax_are_added_up() -> None:
    wool = line("wool fat", 10, CountsAs.WAX, takes_up_water=(150, 200))
    wax = line("wax", 2, CountsAs.WAX, acid_value=(18, 22))
    borax = line("borax", 1, neutralises=(280, 300))
    emulsion = sure(reckon_emulsion([line("water", 40, CountsAs.WATER), wool, wax, borax]))
    assert emulsion.takes_up == Fraction("0.15")
    assert (sure(emulsion.soap).low, sure(emulsion.soap).high) == (Fraction(280, 44), Fraction(300, 36))
    assert sure(reckon_emulsion([line("water", 40, CountsAs.WATER), wool, wax])).soap is None
    assert sure(reckon_emulsion([line("water", 40, CountsAs.WATER), wool, borax])).soap is None


@pytest.mark.parametrize("leaves_out", ["water", "oil"])
def test_without_water_or_oil_there_is_no_emulsion(leaves_out: str) -> None:
    lines = [line("water", 80, CountsAs.WATER, IngredientKind.WATER), line("oil", 20, CountsAs.FAT, IngredientKind.OIL)]
    assert reckon_emulsion([one for one in lines if one.ingredient.name != leaves_out]) is None
    assert reckon_emulsion(lines) is not None


def test_soap_and_ready_made_bases_are_no_emulsions_of_ours() -> None:
    lines = [line("water", 60, CountsAs.WATER), line("oil", 20, CountsAs.FAT), line("base", 20, CountsAs.BASE)]
    assert reckon_emulsion(lines) is None
