"""Lye stated by weight, as notebooks and old books have it: the superfat is the answer. Lye divided by weight of pure hydroxide."""

from collections.abc import Mapping
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.model.recipe.column import Role
from builder.model.recipe.ingredient import CountsAs, Ingredient
from builder.model.recipe.product import Contact, DeclaredBy, Product
from builder.model.recipe.recipe import AmountsAs, DividedBy, LyePlan, WaterBy
from builder.model.recipe.size import TotalSize
from builder.model.recipe.worked_batch import WorkedBatch
from tests.making import KOH, NAOH, Number, card, cards, fat, grams, lye, phase, recipe, scale, soap, sure, worked

BAR = Product("cold-process soap", "Soap", Contact.RINSE_OFF, True, DeclaredBy.WEIGHT)
FINE = [scale("0.0001")]
POUND = Fraction("453.59237")


def by_weight(fats: Mapping[str, int], plan: LyePlan, *stock: Ingredient, total: Number) -> WorkedBatch:
    made = recipe(phase("fats", {name: grams(weight) for name, weight in fats.items()}), amounts_as=AmountsAs.WEIGHTS, lye=plan)
    return worked(made, BAR, TotalSize(grams(total)), cards(*stock), FINE)


# USP 28, Green Soap: 380 g vegetable oil, 20 g oleic acid, 91.7 g potassium hydroxide of 85 % total alkali. Balance computed: neutral where
# the oil has 194.6, 1.3 % too much lye with soybean oil of 192.
@pytest.mark.parametrize(("value", "superfat"), [("194.6", 0), ("192", -0.013)])
def test_usp_green_soap_as_it_is_written(value: str, superfat: Number) -> None:
    oleic = card("oleic acid", CountsAs.FATTY_ACID, saponification=200)
    plan = lye(weighs={"potassium hydroxide": Fraction("91.7")}, purity=85, water=(WaterBy.WEIGHT, 200))
    sheet = by_weight({"vegetable oil": 380, "oleic acid": 20}, plan, fat("vegetable oil", value), oleic, total="691.7")
    assert float(sheet.grams.alkali.grams) == pytest.approx(91.7)
    assert float(sheet.grams.lye_water.grams) == pytest.approx(200)
    assert float(sure(sheet.grams.lye).superfat) == pytest.approx(superfat, abs=0.0005)
    assert sure(sheet.grams.lye).asked == sure(sheet.grams.lye).superfat


@given(st.integers(1, 40), st.integers(50, 5000))
def test_a_batch_of_another_size_keeps_its_shape(times: int, weight: int) -> None:
    plan = lye(weighs={"sodium hydroxide": 120, "potassium hydroxide": 30}, water=(WaterBy.WEIGHT, 330))
    one = by_weight({"a": 600, "b": 400}, plan, fat("a", 190), fat("b", 250), total=1480)
    more = by_weight({"a": 600, "b": 400}, plan, fat("a", 190), fat("b", 250), total=weight * times)
    assert [line.exact.grams for line in one.lines if line.role is Role.ALKALI] == [120, 30]
    assert [line.share for line in one.lines] == [line.share for line in more.lines]
    assert sure(one.grams.lye).asked == sure(more.grams.lye).asked
    # By hand: 1 - (120/39.997 + 30/56.1056) / ((600 * 190 + 400 * 250) / 1000 / 56.1056).
    assert float(sure(one.grams.lye).asked) == pytest.approx(1 - (120 / 39.997 + 30 / 56.1056) / (214 / 56.1056))
    needs = [working for working in more.workings if working.rule == "weight with the oils"]
    assert [round(float(one.result), 6) for one in needs] == [
        round(float(line.exact.grams), 6) for line in more.lines if line.role in (Role.ALKALI, Role.LYE_WATER)
    ]


# Identity, computed: at a KOH share of 60 % of the equivalents the weight share of pure lye is 67.8 %; at 60 % by pure weight it is 51.7 %.
def test_a_lye_divided_by_weight_of_pure_hydroxide() -> None:
    plan = lye({"potassium hydroxide": 60, "sodium hydroxide": 40}, divided_by=DividedBy.HYDROXIDE, purity=None)
    stock = cards(
        fat("fat", 190),
        card("sodium hydroxide", CountsAs.ALKALI, molar_mass=NAOH, purity=98),
        card("potassium hydroxide", CountsAs.ALKALI, molar_mass=KOH, purity=90),
    )
    sheet = worked(soap({"fat": 100}, plan), BAR, TotalSize(grams(1000)), stock, FINE)
    weights = {line.name: line.exact.grams for line in sheet.lines if line.role is Role.ALKALI}
    pure = {"potassium hydroxide": weights["potassium hydroxide"] * 90 / 100, "sodium hydroxide": weights["sodium hydroxide"] * 98 / 100}
    assert pure["potassium hydroxide"] / sum(pure.values()) == Fraction(60, 100)
    (potassium,) = [part for part in sure(sheet.grams.lye).parts if part.alkali == "potassium hydroxide"]
    assert float(potassium.by_equivalents) == pytest.approx(0.517, abs=0.0005)
    assert sure(sheet.grams.lye).asked == Fraction(5, 100)
