"""Liquids in place of the water of a lye, sour ones among them, and all the water that a pot holds."""

from collections.abc import Mapping
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.model.place import Name
from builder.model.recipe.ingredient import CountsAs
from builder.model.recipe.product import Contact, DeclaredBy, Product
from builder.model.recipe.recipe import DividedBy, LyeLiquid, LyePlan, WaterBy
from builder.model.recipe.size import OilsSize
from builder.model.recipe.worked_batch import WorkedBatch
from tests.making import card, cards, fat, grams, lye, parts_of, scale, share, soap, sure, worked

BAR = Product("cold-process soap", "Soap", Contact.RINSE_OFF, True, DeclaredBy.WEIGHT)
FINE = [scale("0.0001")]
VINEGAR = card("vinegar", CountsAs.ACID, molar_mass="60.052", protons=1, purity=5, water_content=95)
MILK = card("milk", CountsAs.LIQUID, water_content=87)
OIL = fat("fat", 190)


def batch(plan: LyePlan, extra: Mapping[str, int] | None = None, size: int = 1000) -> WorkedBatch:
    return worked(soap({"fat": 100}, plan, extra), BAR, OilsSize(grams(size)), cards(OIL, VINEGAR, MILK), FINE)


def of(name: str, percent: int, later: bool = False) -> LyeLiquid:
    return LyeLiquid(Name(name), Fraction(percent) / 100, later)


def exact(sheet: WorkedBatch, name: str) -> float:
    return sum(float(line.exact.grams) for line in sheet.lines if line.ingredient.name == name)


# 1 g of acetic acid takes 0.66604 g of sodium hydroxide (computed from IUPAC atomic weights), which the lye has to bring beside what the
# fat takes.
@pytest.mark.parametrize("water", [(WaterBy.CONCENTRATION, "0.33"), (WaterBy.RATIO, "2"), (WaterBy.PERCENT_OF_OILS, "0.35")])
@pytest.mark.parametrize("later", [False, True])
def test_vinegar_in_place_of_water_is_given_its_lye(water: tuple[WaterBy, str], later: bool) -> None:
    liquids = (of("water", 100), of("vinegar", 40, later=True)) if later else (of("vinegar", 100),)
    plain, sour = batch(lye(water=water)), batch(lye(water=water, liquids=liquids))
    taken = exact(sour, "vinegar") * 0.05 * 0.66604
    assert taken > 3
    assert exact(sour, "sodium hydroxide") == pytest.approx(exact(plain, "sodium hydroxide") + taken, abs=1e-4)
    assert float(sure(sour.grams.lye).superfat) == pytest.approx(0.05, abs=1e-5)


def test_the_lye_of_a_sour_liquid_keeps_its_stated_strength() -> None:
    sheet = batch(lye(liquids=(of("water", 50), of("vinegar", 50)), water=(WaterBy.CONCENTRATION, "0.30")))
    assert float(sure(sheet.grams.lye).concentration) == pytest.approx(0.30, abs=1e-5)
    solid, water, vinegar = (float(sheet.grams.alkali.grams), exact(sheet, "water"), exact(sheet, "vinegar"))
    assert water == pytest.approx(vinegar)
    assert float(sure(sheet.grams.lye).in_water) == pytest.approx(solid / (solid + water + 0.95 * vinegar), abs=1e-6)


# 1 g of acetic acid gives 82.034 / 60.052 = 1.36605 g of sodium acetate (computed from atomic weights); its water is water.
def test_vinegar_becomes_acetate_and_water() -> None:
    sheet = batch(lye(superfat=5), {"vinegar": 10})
    salt = sure(sheet.soap).salts[0]
    assert salt.ingredient.name == "vinegar"
    assert float(salt.salt.grams) == pytest.approx(100 * 0.05 * 1.36605, abs=0.001)
    of_acid = 100 * 0.05 / 60.052 * 18.0153
    assert float((sure(sheet.soap).water - sheet.grams.lye_water).grams) == pytest.approx(95 + of_acid, abs=0.001)


def test_the_water_of_a_milk_is_water_and_the_rest_stays() -> None:
    sheet = batch(lye(liquids=(of("water", 60), of("milk", 40), of("milk", 25, later=True))))
    in_lye = sum(w.mass.grams for w in sheet.grams.weighed if w.line.ingredient is MILK and w.line.phase == "lye")
    later = sum(w.mass.grams for w in sheet.grams.weighed if w.line.ingredient is MILK and w.line.phase == "after the lye")
    plain = sum(w.mass.grams for w in sheet.grams.weighed if w.line.ingredient.name == "water")
    assert float(sure(sheet.soap).water.grams) == pytest.approx(float(plain + (in_lye + later) * Fraction(87, 100)))
    assert sum(float(mass.grams) for card, mass in sure(sheet.soap).others if card.name == "milk") == pytest.approx(
        float(in_lye + later) * 0.13
    )
    assert float(sure(sheet.grams.lye).water_beside.grams) == pytest.approx(float(later) * 0.87)


@given(
    st.integers(0, 100), st.integers(0, 50), st.sampled_from([*WaterBy]), st.integers(0, 9), st.booleans(), st.sampled_from([*DividedBy])
)
def test_what_comes_out_weighs_what_went_in_and_the_superfat_is_met(
    sour: int, later: int, by: WaterBy, extra: int, ready_mixed: bool, divided: DividedBy
) -> None:
    value = {WaterBy.CONCENTRATION: "0.3", WaterBy.RATIO: "2.2", WaterBy.PERCENT_OF_OILS: "0.4", WaterBy.WEIGHT: "0.4"}[by]
    liquids = (of("water", 100 - sour), of("vinegar", sour), of("vinegar", later, later=True))
    plan = lye(
        "sodium hydroxide" if ready_mixed else {"sodium hydroxide": 60, "potassium hydroxide": 40},
        superfat=6, water=(by, value), liquids=liquids, divided_by=divided, ready_mixed=share(50) if ready_mixed else None,
    )  # fmt: skip
    sheet = batch(plan, {"vinegar": extra} if extra else None)
    assert parts_of(sure(sheet.soap)) == sheet.grams.total
    if sheet.grams.lye is not None:
        assert float(sheet.grams.lye.superfat) == pytest.approx(0.06, abs=1e-5)
    assert all(w.mass.grams >= 0 for w in sheet.grams.weighed)


def test_the_sum_of_the_lye_shows_the_acid_of_phases_and_liquids_together() -> None:
    sheet = batch(lye(liquids=(of("vinegar", 100),)), {"vinegar": 10})
    (needed,) = [working for working in sheet.workings if working.rule == "alkali equivalents needed"]
    acid = next(one.value for one in needed.given if one.name == "acid")
    assert float(acid) == pytest.approx(exact(sheet, "vinegar") * 0.05 / 60.052)
    fat_taken = next(one.value for one in needed.given if one.name == "fat")
    assert needed.result == fat_taken * Fraction(95, 100) + acid


def test_a_liquid_is_never_more_than_all_water() -> None:
    juice = card("juice", CountsAs.LIQUID, water_content="100.5")
    stock = cards(OIL, juice)
    sheet = worked(soap({"fat": 100}, lye(liquids=(of("juice", 100),))), BAR, OilsSize(grams(1000)), stock, FINE)
    assert sure(sheet.soap).others == ()
    assert parts_of(sure(sheet.soap)) == sheet.grams.total
