"""What comes out of a pot of soap, against stoichiometry and an old glycerol yield; the causes of a wide range; the smallest batch."""

from collections.abc import Mapping, Sequence
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.model.place import Name
from builder.model.recipe.ingredient import CountsAs, Ingredient
from builder.model.recipe.product import Contact, DeclaredBy, Product
from builder.model.recipe.quantity import Share
from builder.model.recipe.recipe import AmountsAs, Cure, LyeLiquid, LyePlan, WaterBy
from builder.model.recipe.size import OilsSize
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Scale
from tests.making import KOH, NAOH, Number, card, cards, fat, grams, lye, parts_of, phase, recipe, scale, share, soap, sure, worked

BAR = Product("cold-process soap", "Soap", Contact.RINSE_OFF, True, DeclaredBy.WEIGHT)
FINE = [scale("0.0001")]


def batch(
    oils: Mapping[str, Number],
    plan: LyePlan,
    *stock: Ingredient,
    size: Number = 1000,
    scales: Sequence[Scale] = FINE,
    extra: Mapping[str, int] | None = None,
) -> WorkedBatch:
    return worked(soap(oils, plan, extra), BAR, OilsSize(grams(size)), cards(*stock), scales)


# 1 kg of a fat that takes 3.572 L of 1 M potassium hydroxide, of which 3.443 mol for its esters, yields 105.69 g of glycerol (school
# problem: SV 200.4, ester value 193.2). Of an ester value of 193.2 alone the yield is 193.2 x 0.054715 % = 10.57 %.
def test_the_glycerol_of_a_neutral_fat() -> None:
    made = batch({"fat": 100}, lye("potassium hydroxide", 0), fat("fat", "193.2")).soap
    assert float(sure(made).glycerol.grams) == pytest.approx(105.69, abs=0.05)


# Computed factors: 0.76750 g of glycerol per g of NaOH and 0.54715 g per g of KOH used on triglyceride.
@pytest.mark.parametrize(("alkali", "factor"), [("sodium hydroxide", 0.76750), ("potassium hydroxide", 0.54715)])
def test_glycerol_by_alkali_used(alkali: str, factor: float) -> None:
    sheet = batch({"fat": 100}, lye(alkali, 0), fat("fat", 190))
    assert float(sure(sheet.soap).glycerol / sheet.grams.alkali) == pytest.approx(factor, abs=2e-5)


# Tristearin C57H110O6, 891.48 g/mol: three mol of NaOH make three of sodium stearate, 306.46 g/mol (computed from atomic weights).
def test_tristearin_becomes_sodium_stearate() -> None:
    value = 3 * Fraction("56105.6") / Fraction("891.48")
    made = batch({"tristearin": 100}, lye(superfat=0), fat("tristearin", value), size=Fraction("891.48")).soap
    assert float(sure(made).soaps[0].soap.grams) == pytest.approx(3 * 306.46, abs=0.05)
    assert float(sure(made).soaps[0].unsaponified.grams) == pytest.approx(0, abs=0.005)


# Stearic acid C18H36O2, 284.477 g/mol, with one mol of NaOH: 306.46 g of soap and one mol of water, no glycerol.
def test_a_fatty_acid_frees_water_and_no_glycerol() -> None:
    acid = card("stearic acid", CountsAs.FATTY_ACID, saponification=KOH * 1000 / Fraction("284.477"))
    sheet = batch({"stearic acid": 100}, lye(superfat=0), acid, size=Fraction("284.477"))
    assert sure(sheet.soap).glycerol.grams == 0
    assert float(sure(sheet.soap).soaps[0].soap.grams) == pytest.approx(306.46, abs=0.01)
    assert float((sure(sheet.soap).water - sheet.grams.lye_water).grams) == pytest.approx(18.0153, abs=0.001)


# 1.3432 g of anhydrous trisodium citrate from 1 g of anhydrous citric acid (computed).
def test_citric_acid_becomes_citrate() -> None:
    citric = card("citric acid", CountsAs.ACID, molar_mass="192.124", protons=3, purity=100)
    made = batch({"fat": 100}, lye(superfat=5), fat("fat", 190), citric, extra={"citric acid": 2}).soap
    salt = sure(made).salts[0]
    assert salt.ingredient.name == "citric acid"
    assert float(salt.salt.grams) == pytest.approx(20 * 1.3432, abs=0.005)


def test_the_superfat_stays_as_fat_of_each_in_proportion() -> None:
    made = batch({"a": 60, "b": 40}, lye(superfat=8), fat("a", 190), fat("b", 250)).soap
    assert [float(one.unsaponified.grams) for one in sure(made).soaps] == pytest.approx([48, 32], abs=0.001)


def test_what_goes_in_after_the_cook_stays_first() -> None:
    late = phase("after the cook", {"shea": share(10)}, after_the_cook=True)
    made = recipe(phase("oils", {"fat": share(90)}), late, amounts_as=AmountsAs.PERCENT_OF_OILS, lye=lye(superfat=6))
    sheet = worked(made, BAR, OilsSize(grams(1000)), cards(fat("fat", 190), fat("shea", 190)), FINE)
    fats = {one.ingredient.name: float(one.unsaponified.grams) for one in sure(sheet.soap).soaps}
    assert fats["fat"] == pytest.approx(0, abs=0.01)
    assert fats["shea"] == pytest.approx(60, abs=0.01)


def test_a_bar_loses_what_the_studio_weighed() -> None:
    made = soap({"fat": 100}, lye())
    made = type(made)(**{**made.__dict__, "cure": Cure("6 weeks", share(12), "ten bars weighed")})
    sheet = worked(made, BAR, OilsSize(grams(1000)), cards(fat("fat", 190)), FINE)
    assert sheet.own.cured == grams(88)


number = st.fractions(150, 280, max_denominator=50)


@given(number, number, st.integers(1, 99), st.integers(-8, 30), st.integers(85, 100), st.booleans(), st.integers(0, 3))
def test_what_comes_out_weighs_what_went_in(
    one: Fraction, other: Fraction, part: int, superfat: int, purity: int, mixed: bool, citric_percent: int
) -> None:
    """The balance holds to the last digit, with wax, acid, ready-mixed lye, late fat and even too much lye."""
    citric = card("citric acid", CountsAs.ACID, molar_mass="192.124", protons=3, purity=100)
    wax = card("wax", CountsAs.WAX, saponification=95)
    plan = lye(superfat=superfat, purity=purity, ready_mixed=share(40) if mixed else None, water=(WaterBy.CONCENTRATION, "0.25"))
    extra = {"citric acid": citric_percent, "clay": 1} if citric_percent else {"clay": 1}
    oils: dict[str, Number] = {"a": Fraction(part * 95, 100), "b": 95 - Fraction(part * 95, 100), "wax": 5}
    sheet = batch(oils, plan, fat("a", one), fat("b", other), wax, citric, card("clay"), extra=extra, scales=[scale("0.01")])
    assert parts_of(sure(sheet.soap)) == sheet.grams.total == sure(sheet.soap).total


def test_milk_in_place_of_water_makes_the_lye_stronger_than_it_weighs() -> None:
    milk = card("goat milk", CountsAs.LIQUID, water_content=87)
    plan = lye(liquids=(LyeLiquid(Name("goat milk"), Fraction(1)),))
    result = batch({"fat": 100}, plan, fat("fat", 190), milk).grams.lye
    assert float(sure(result).concentration) == pytest.approx(0.33, abs=1e-5)
    assert float(sure(result).in_water) == pytest.approx(0.33 / (0.33 + 0.67 * 0.87), abs=1e-5)


def test_a_part_of_the_liquid_may_go_in_later() -> None:
    milk = card("goat milk", CountsAs.LIQUID, water_content=87)
    plan = lye(liquids=(LyeLiquid(Name("water"), Fraction(1)), LyeLiquid(Name("goat milk"), Fraction("0.4"), later=True)))
    sheet = batch({"fat": 100}, plan, fat("fat", 190), milk)
    stated = batch({"fat": 100}, lye(), fat("fat", 190)).grams.lye_water
    amounts = {line.name: line.exact for line in sheet.lines}
    assert amounts["goat milk"] == amounts["water"] * Fraction(2, 3)
    assert float((amounts["goat milk"] + amounts["water"]).grams) == pytest.approx(float(stated.grams), abs=0.001)
    assert sure(sheet.grams.lye).concentration > Fraction("0.33")


def test_two_liquids_share_the_water() -> None:
    milk = card("oat milk", CountsAs.LIQUID, water_content=90)
    plan = lye(liquids=(LyeLiquid(Name("water"), Fraction("0.75")), LyeLiquid(Name("oat milk"), Fraction("0.25"))))
    amounts = {line.name: line.exact for line in batch({"fat": 100}, plan, fat("fat", 190), milk).lines}
    assert amounts["water"] == 3 * amounts["oat milk"]


def test_the_widest_range_is_named_first() -> None:
    narrow, wide = fat("olive oil", 189, 191), fat("shea butter", 160, 190)
    result = sure(batch({"olive oil": 60, "shea butter": 40}, lye(purity=98), narrow, wide).grams.lye)
    assert [cause.ingredient for cause in result.causes] == ["shea butter", "olive oil"]
    taken = sum((cause.takes for cause in result.causes), Fraction(0)) + result.by_scales
    assert result.superfat - taken >= result.lowest - Fraction(1, 1000)


def test_an_alkali_of_unknown_purity_is_a_cause() -> None:
    alkali = card("sodium hydroxide", CountsAs.ALKALI, molar_mass=NAOH, purity=(95, 100))
    stock = cards(fat("fat", 190)) | {"sodium hydroxide": alkali}
    for ready_mixed in (None, Share(Fraction("0.4"))):
        made = soap({"fat": 100}, lye(ready_mixed=ready_mixed))
        result = worked(made, BAR, OilsSize(grams(1000)), stock, FINE).grams.lye
        assert sure(result).causes[0].takes == pytest.approx(float(Fraction("0.95") * (100 / Fraction("97.5") - 1)), abs=1e-4)


@given(st.sampled_from(["0.01", "0.1", "1", "5"]))
def test_a_coarser_scale_wants_a_bigger_batch(division: str) -> None:
    made = soap({"fat": 100}, lye())
    stock = cards(fat("fat", 190))
    fine = worked(made, BAR, OilsSize(grams(500)), stock, [scale(division)])
    coarse = worked(made, BAR, OilsSize(grams(500)), stock, [scale(str(Fraction(division) * 10))])
    assert sure(fine.smallest) < sure(coarse.smallest)


def test_the_smallest_batch_can_be_weighed() -> None:
    made = soap({"olive": 70, "coconut": 30}, lye(), extra={"clay": 1})
    stock = cards(fat("olive", 190), fat("coconut", 256), card("clay"))
    scales = [scale("0.1")]
    smallest = worked(made, BAR, OilsSize(grams(500)), stock, scales).smallest
    # Clay is the smallest amount: 1 % of the oils, ten divisions of 0.1 g are 1 g, so 100 g of oils and about 145 g in all.
    assert smallest == grams(150)


def test_scales_that_are_too_coarse_for_lye_want_more_than_ten_divisions() -> None:
    """Two oils on a scale of 5 g: ten divisions of the smaller one are 50 g, but the lye wants a bigger batch."""
    made = soap({"olive": 50, "coconut": 50}, lye())
    sheet = worked(made, BAR, OilsSize(grams(500)), cards(fat("olive", 190), fat("coconut", 256)), [scale("5")])
    assert sure(sheet.smallest) > grams(500)


def test_no_batch_is_sensible_on_a_scale_for_lorries() -> None:
    made = soap({"fat": 100}, lye())
    sheet = worked(made, BAR, OilsSize(grams(10**6)), cards(fat("fat", 190)), [scale("100000", "10000000")])
    assert sheet.smallest is None


def test_a_lye_of_ready_mixed_solution_alone_needs_no_water_beside_it() -> None:
    plan = lye(superfat=5, purity=100, ready_mixed=share(33), water=(WaterBy.CONCENTRATION, "0.33"))
    sheet = batch({"fat": 100}, plan, fat("fat", 190))
    assert [line.name for line in sheet.lines] == ["fat", "sodium hydroxide solution, 33 %"]


# European Pharmacopoeia 0135, hydrous wool fat: a quarter is water, and 67 to 79 mg/g stand for the whole.
def test_the_water_in_hydrous_wool_fat_is_water() -> None:
    wool = card("hydrous wool fat", CountsAs.WAX, saponification=(67, 79), water_content=25)
    sheet = batch({"fat": 90, "hydrous wool fat": 10}, lye(superfat=0), fat("fat", 190), wool)
    assert float((sure(sheet.soap).water - sheet.grams.lye_water).grams) == pytest.approx(25, abs=0.001)
    assert parts_of(sure(sheet.soap)) == sheet.grams.total
