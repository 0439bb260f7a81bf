"""Ready-mixed lye that is bought: counted by its own strength, without any solid, against figures worked out by hand."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import datetime
from fractions import Fraction
from typing import Any

import pytest

from builder.model.dates.studio_class import ClassDate
from builder.model.place import NOWHERE, Name
from builder.model.recipe.ingredient import CountsAs, Ingredient
from builder.model.recipe.product import Contact, DeclaredBy, Product
from builder.model.recipe.quantity import NO_MASS
from builder.model.recipe.recipe import LyePlan, StatedPurity, WaterBy
from builder.model.recipe.size import OilsSize
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.model.supplies.supply import Supply, SupplyKind
from builder.reckon.supplies.costs import cost_of_batch, cost_of_class
from builder.reckon.teaching.classes import reckon_class
from tests.making import KOH, NAOH, card, cards, fat, grams, lye, scale, share, soap, sure, worked
from tests.studios import sound_studio

BAR = Product("cold-process soap", "Soap", Contact.RINSE_OFF, True, DeclaredBy.WEIGHT)
HERE = [scale("0.000001")]
# Cards without a purity: nothing is known of any solid.
BARE = {
    "sodium hydroxide": card("sodium hydroxide", CountsAs.ALKALI, molar_mass=NAOH),
    "potassium hydroxide": card("potassium hydroxide", CountsAs.ALKALI, molar_mass=KOH),
}
STUDIO, _ = sound_studio()


def bought(
    alkali: str | Mapping[str, int] = "sodium hydroxide", strength: int = 50, low: int | None = None, high: int | None = None, **named: Any
) -> LyePlan:
    stated = StatedPurity(*(Fraction(str(one)) / 100 for one in (strength, low or strength, high or strength)))
    return lye(alkali, ready_mixed=share(strength), bought=stated, **named)


def batch(plan: LyePlan, known: Mapping[str, Ingredient] = BARE, *, at_home: bool = False) -> WorkedBatch:
    return worked(soap({"fat": 100}, plan), BAR, OilsSize(grams(500)), {**cards(fat("fat", 190)), **known}, HERE, from_solid=at_home)


def weights(sheet: WorkedBatch) -> dict[str, float]:
    return {w.line.name: float(w.mass.grams) for w in sheet.grams.weighed}


# By hand, molar masses 39.997 and 56.1056 (IUPAC atomic weights): 500 g x 190 mg/g / 56.1056 = 1.693235 mol of fat; 95 % of it is 1.608573
# mol of sodium hydroxide = 64.3381 g, in 128.676 g of a solution of 50 %. At 33 % the lye holds 64.3381 x 67/33 = 130.626 g of water, of
# which the solution brings 64.338.
def test_a_solution_is_weighed_by_its_own_strength() -> None:
    sheet = batch(bought())
    assert weights(sheet) == pytest.approx({"fat": 500, "sodium hydroxide solution, 50 %": 128.676, "water": 66.288}, abs=0.001)
    assert float(sure(sheet.grams.lye).superfat) == pytest.approx(0.05, abs=1e-6)
    assert float(sure(sheet.grams.lye).concentration) == pytest.approx(0.33, abs=1e-6)


# By hand: 1.608573 mol x 56.1056 = 90.2500 g of potassium hydroxide, in 200.555 g of a solution of 45 %; water to lye 2 : 1 is 180.500 g,
# of which the solution brings 110.306.
def test_so_is_one_of_potassium_hydroxide() -> None:
    sheet = batch(bought("potassium hydroxide", 45, water=(WaterBy.RATIO, 2)))
    assert weights(sheet) == pytest.approx({"fat": 500, "potassium hydroxide solution, 45 %": 200.555, "water": 70.194}, abs=0.001)
    assert float(sure(sheet.grams.lye).superfat) == pytest.approx(0.05, abs=1e-6)


def test_two_solutions_share_the_mol() -> None:
    sheet = batch(bought({"potassium hydroxide": 60, "sodium hydroxide": 40}, 30, water=(WaterBy.CONCENTRATION, "0.25")))
    mol = 0.95 * 500 * 0.190 / 56.1056
    assert weights(sheet)["potassium hydroxide solution, 30 %"] == pytest.approx(0.6 * mol * 56.1056 / 0.30, abs=0.001)
    assert weights(sheet)["sodium hydroxide solution, 30 %"] == pytest.approx(0.4 * mol * 39.997 / 0.30, abs=0.001)


# A bottle of 51 % brings 51/50 of the alkali that it is counted for, one of 49 % 49/50.
def test_the_range_of_the_certificate_is_the_range_of_the_superfat() -> None:
    found = batch(bought(strength=50, low=49, high=51)).grams.lye
    assert float(sure(found).lowest) == pytest.approx(1 - 0.95 * 51 / 50, abs=1e-6)
    assert float(sure(found).highest) == pytest.approx(1 - 0.95 * 49 / 50, abs=1e-6)
    assert [float(end) for end in sure(found).purities[0].hydroxide] == pytest.approx([0.49, 0.50, 0.51])
    assert not sure(found).purities[0].assumed


def test_what_is_known_of_the_solid_changes_nothing() -> None:
    weak = {"sodium hydroxide": card("sodium hydroxide", CountsAs.ALKALI, molar_mass=NAOH, purity=(90, 92))}
    assert weights(batch(bought(), weak)) == weights(batch(bought()))
    assert sure(batch(bought(), weak).grams.lye).lowest == sure(batch(bought()).grams.lye).lowest


def test_its_water_is_water_in_the_soap_and_the_soap_weighs_what_went_in() -> None:
    made = batch(bought()).soap
    # 64.338 g of water come with the solution and 66.288 g beside it.
    assert float(sure(made).water.grams) == pytest.approx(130.626, abs=0.001) and sure(made).rest_of_alkali == NO_MASS


def test_at_home_the_solid_of_the_stock_is_weighed() -> None:
    stock = card("sodium hydroxide", CountsAs.ALKALI, molar_mass=NAOH, purity=(95, 100))
    own = {"sodium hydroxide": replace(BARE["sodium hydroxide"], replaces=stock)}
    # 64.3381 g of hydroxide in what is counted as 97.5 % pure, the middle of what is sold.
    assert weights(batch(bought(), own, at_home=True))["sodium hydroxide"] == pytest.approx(64.3381 / 0.975, abs=0.001)


def studio(**named: Any) -> Studio:
    recipe = STUDIO.recipes["plain-bar"]
    plan = replace(sure(recipe.lye), ready_mixed=share(50), bought=StatedPurity(*3 * (Fraction(1, 2),)))
    return replace(STUDIO, recipes={**STUDIO.recipes, "plain-bar": replace(recipe, lye=plan)}, **named)


def test_the_class_buys_the_solution_and_no_solid() -> None:
    here = studio()
    plan = reckon_class(here, here.classes["one-bar"], ClassDate(datetime(2027, 3, 6), 8))[0]
    needs = {need.name: need.used for need in cost_of_class(here, plan).needs}
    assert not {"Sodium hydroxide", "sodium hydroxide"} & set(needs)
    (solution,) = plan.made[0].ready_mixed
    assert solution.bought
    taken = next(w.mass for w in plan.made[0].batch.grams.weighed if w.line.strength is not None)
    # A tenth more than the pot takes stays in bottles.
    assert float(needs["Sodium hydroxide solution, 50 %"]) == pytest.approx(float(taken.grams) * 1.1, abs=0.06)


def test_a_pack_of_the_solution_has_its_price() -> None:
    name = Name("caustic soda solution, 50 %", NOWHERE)
    pack = Supply(SupplyKind.INGREDIENT, name, grams(1000), "1 kg", Fraction(10))
    here = studio(supplies=(pack,))
    sheet = reckon_class(here, here.classes["one-bar"], ClassDate(datetime(2027, 3, 6), 8))[0].made[0].batch
    needs = {need.name: need for need in cost_of_batch(here, sheet).needs}
    assert sure(needs["Sodium hydroxide solution, 50 %"].purchase).packs[0].supply is pack
