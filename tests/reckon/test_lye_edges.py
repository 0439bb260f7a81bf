"""The edges of the sums of a lye: more than one of a kind, figures that are missing or too good, lye that finds no fat."""

from collections.abc import Mapping
from fractions import Fraction

import pytest

from builder.model.place import Name
from builder.model.recipe.ingredient import CountsAs, Ingredient
from builder.model.recipe.product import Contact, DeclaredBy, Product
from builder.model.recipe.recipe import LyeLiquid, LyePlan, WaterBy
from builder.model.recipe.size import OilsSize
from builder.model.recipe.worked_batch import WorkedBatch
from builder.reckon.lye.equivalents import acid_equivalents, water_in
from builder.reckon.lye.lye import purity_of
from tests.making import KOH, card, cards, fat, grams, lye, parts_of, scale, share, soap, sure, worked

BAR = Product("cold-process soap", "Soap", Contact.RINSE_OFF, True, DeclaredBy.WEIGHT)


def batch(oils: Mapping[str, int], plan: LyePlan, *stock: Ingredient, extra: Mapping[str, int] | None = None) -> WorkedBatch:
    return worked(soap(oils, plan, extra), BAR, OilsSize(grams(1000)), cards(*stock), [scale("0.0001")])


def test_a_purity_that_the_recipe_states_belongs_to_its_alkali() -> None:
    stated = purity_of(cards()["sodium hydroxide"], lye(purity=96).alkalis[0])
    assert (stated.alkali, stated.typical) == ("sodium hydroxide", Fraction("0.96"))


# A scale that is off by 500 g shows 500 g where there may be nothing: however finely the lye is weighed, nobody knows what takes it up.
@pytest.mark.parametrize(("oils", "is_known"), [(500, False), (1000, True)])
def test_a_lye_is_reckoned_where_some_fat_is_there_for_certain(oils: int, *, is_known: bool) -> None:
    scales = [scale("0.01", "450"), scale("500", "5000")]
    made = worked(soap({"fat": 100}, lye()), BAR, OilsSize(grams(oils)), cards(fat("fat", 190)), scales)
    assert [w.scale.division.grams for w in made.grams.weighed] == [500, Fraction("0.01"), Fraction("0.01")]
    assert (made.grams.lye is not None) is is_known


def test_what_a_soap_does_not_have_is_not_shown() -> None:
    result = batch({"fat": 100}, lye(), fat("fat", 190)).grams.lye
    assert sure(result).before_the_cook is None
    assert sure(result).without_waxes is None


def test_without_its_wax_a_soap_has_only_its_fat_for_the_lye() -> None:
    wax = card("beeswax", CountsAs.WAX, saponification=95)
    result = batch({"fat": 90, "beeswax": 10}, lye(superfat=5), fat("fat", 190), wax).grams.lye
    with_wax = Fraction(900 * 190 + 100 * 95)
    assert float(sure(sure(result).without_waxes)) == pytest.approx(float(1 - Fraction("0.95") * with_wax / (900 * 190)), abs=1e-5)


def test_two_acids_both_take_their_lye() -> None:
    citric = card("citric acid", CountsAs.ACID, molar_mass="192.124", protons=3, purity=100)
    lactic = card("lactic acid", CountsAs.ACID, molar_mass="90.078", protons=1, purity=100)
    sheet = batch({"fat": 100}, lye(superfat=5), fat("fat", 190), citric, lactic, extra={"citric acid": 1, "lactic acid": 1})
    assert float(sure(sheet.grams.lye).superfat) == pytest.approx(0.05, abs=1e-5)
    # 0.62455 g and 0.44403 g of sodium hydroxide for 1 g of each (computed).
    plain = batch({"fat": 100}, lye(superfat=5), fat("fat", 190))
    more = float((sheet.grams.alkali - plain.grams.alkali).grams)
    assert more == pytest.approx(10 * (0.62455 + 0.44403), abs=0.005)


def test_an_assay_above_a_hundred_per_cent_counts_as_a_hundred() -> None:
    pure = card("acid", CountsAs.ACID, molar_mass=100, protons=1, purity=100)
    assayed = card("acid", CountsAs.ACID, molar_mass=100, protons=1, purity="100.5")
    assert acid_equivalents(grams(10), assayed) == acid_equivalents(grams(10), pure) == Fraction(1, 10)


def test_water_counts_whole_a_liquid_by_its_figure_and_an_unknown_one_not_at_all() -> None:
    assert water_in(card("water", CountsAs.WATER)) == 1
    assert water_in(card("goat milk", CountsAs.LIQUID, water_content=87)) == Fraction(87, 100)
    assert water_in(card("mystery juice", CountsAs.LIQUID)) == 0
    plan = lye(liquids=(LyeLiquid(Name("mystery juice"), Fraction(1)),))
    assert sure(batch({"fat": 100}, plan, fat("fat", 190), card("mystery juice", CountsAs.LIQUID)).grams.lye).in_water == 1


def test_lye_that_finds_no_fat_is_weighed_as_free() -> None:
    sheet = batch({"fat": 100}, lye(superfat=-5), fat("fat", 190))
    assert float(sure(sheet.soap).free_alkali / sheet.grams.alkali) == pytest.approx(5 / 105, abs=1e-6)


def test_two_fatty_acids_free_the_water_of_both() -> None:
    acids = [card(name, CountsAs.FATTY_ACID, saponification=value) for name, value in (("stearic", 197), ("oleic", 199))]
    sheet = batch({"stearic": 50, "oleic": 50}, lye(superfat=0), *acids)
    mol = (Fraction(500 * 197) + 500 * 199) / 1000 / KOH
    assert float((sure(sheet.soap).water - sheet.grams.lye_water).grams) == pytest.approx(float(mol) * 18.0153, abs=0.001)


def test_two_ready_mixed_solutions_bring_the_water_of_both() -> None:
    mix = {"potassium hydroxide": 50, "sodium hydroxide": 50}
    plan = lye(mix, superfat=3, purity=90, ready_mixed=share(40), water=(WaterBy.CONCENTRATION, "0.25"))
    sheet = batch({"fat": 100}, plan, fat("fat", 190))
    solid = batch({"fat": 100}, lye(mix, superfat=3, purity=90, water=(WaterBy.CONCENTRATION, "0.25")), fat("fat", 190))
    assert parts_of(sure(sheet.soap)) == sheet.grams.total
    assert float((sure(sheet.soap).water - sure(solid.soap).water).grams) == pytest.approx(0, abs=0.001)
    assert float(sure(sheet.grams.lye).concentration) == pytest.approx(0.25, abs=1e-5)


def test_nothing_is_left_for_the_fats_after_the_cook_where_there_are_none() -> None:
    made = batch({"fat": 100}, lye(superfat=5), fat("fat", 190)).soap
    assert float(sure(made).soaps[0].unsaponified.grams) == pytest.approx(50, abs=0.001)


# By hand: of 1000 g at 190 mg/g 5 % stay free, so that 128.68 g of lye are exact. Lye loses up to a division and gains nothing, fat may be
# half of one off: 1 - 0.95 x (128.68 - 10) / 128.68 / 1.005 = 12.82 % beside 5 %, and on a fine scale for lye 1 - 0.95 / 0.995 = 4.52 %.
@pytest.mark.parametrize(("of_lye", "moves"), [("10", 0.07819), ("0.001", 0.004774)])
def test_rounding_may_take_a_division_of_the_lye_and_half_a_division_of_the_fat(of_lye: str, moves: float) -> None:
    scales = [scale(of_lye, up_to=500), scale("10")]
    result = worked(soap({"fat": 100}, lye(superfat=5, purity=100)), BAR, OilsSize(grams(1000)), cards(fat("fat", 190)), scales).grams.lye
    assert float(sure(result).rounding_may_move) == pytest.approx(moves, abs=0.00001)
