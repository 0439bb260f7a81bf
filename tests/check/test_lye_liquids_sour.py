"""How much of the lye a sour liquid may take, however the water is stated: at most half (content/constants.yaml, common practice).

By hand: two parts of liquid to one of pure sodium hydroxide, of which p % is acetic acid, bring 2 p / 100 / 60.052 mol of acid to
1 / 39.997 mol of lye, so that p = 37.54 % takes up half of it.
"""

from dataclasses import replace
from fractions import Fraction

import pytest

from builder.check.lye.lye_liquids import find_unfit_lye_liquids
from builder.model.place import Name
from builder.model.recipe.ingredient import Ingredient
from builder.model.recipe.recipe import LyeLiquid, LyePlan, StatedPurity, WaterBy
from tests.check.test_at_the_edge import levels
from tests.making import figures, lye, share, soap
from tests.reckon.test_guests import STUDIO

ALL, HALF = (LyeLiquid(Name("vinegar"), Fraction(1)),), tuple(LyeLiquid(Name(one), Fraction(1, 2)) for one in ("vinegar", "water"))


def found(plan: LyePlan, strength: str, *also: Ingredient) -> bool:
    vinegar = STUDIO.ingredients["vinegar"]
    ours = replace(vinegar, figures={**vinegar.figures, "purity": figures(strength), "water content": figures(80)})
    shelf = {**STUDIO.ingredients, **{one.key: one for one in (ours, *also)}}
    here = replace(STUDIO, ingredients=shelf, recipes={"one": soap({"olive oil": 100}, plan)})
    return levels(find_unfit_lye_liquids(here)) == ["lye-liquid-too-sour stop"]


# Potassium hydroxide has 56.106 g to the mol, of 90 % sodium hydroxide 44.441 g bring a mol: with more liquid to the mol less acid in it
# takes up half: 37.54 % x 39.997 / 56.106 = 26.76 %, and 37.54 % x 0.9 = 33.78 %. Of a lye that is half vinegar it is twice 37.54 %.
# And so it is where ready-mixed lye of 50 % brings half of the water itself, whether it is mixed or bought.
@pytest.mark.parametrize(
    ("plan", "edge"),
    [
        (lye(liquids=ALL, purity=100, water=(WaterBy.RATIO, 2)), "37.54"),
        (lye(liquids=ALL, purity=100, water=(WaterBy.CONCENTRATION, "1/3")), "37.54"),
        (lye(liquids=ALL, purity=100, water=(WaterBy.WEIGHT, 120), weighs={"sodium hydroxide": 60}), "37.54"),
        (lye("potassium hydroxide", liquids=ALL, purity=100, water=(WaterBy.RATIO, 2)), "26.76"),
        (lye({"sodium hydroxide": 90, "potassium hydroxide": 10}, liquids=ALL, purity=100, water=(WaterBy.RATIO, 2)), "26.76"),
        (lye(liquids=ALL, purity=90, water=(WaterBy.RATIO, 2)), "33.78"),
        (lye(liquids=HALF, purity=100, water=(WaterBy.RATIO, 2)), "75.07"),
        (lye(liquids=ALL, purity=100, water=(WaterBy.RATIO, 2), ready_mixed=share(50)), "75.07"),
        (lye(liquids=ALL, water=(WaterBy.RATIO, 2), ready_mixed=share(50), bought=StatedPurity(*3 * (Fraction(1, 2),))), "75.07"),
    ],
)
def test_half_of_the_lye_may_be_taken_and_no_more(plan: LyePlan, edge: str) -> None:
    assert not found(plan, str(Fraction(edge) - Fraction("0.02")))
    assert found(plan, str(Fraction(edge) + Fraction("0.02")))


# As before, of 90 %: the card has 90 to 98 %, and of the weaker there is more, with more liquid.
def test_where_nothing_is_stated_the_least_purity_of_the_card_counts() -> None:
    known = STUDIO.ingredients["sodium hydroxide"]
    ours = replace(known, figures={**known.figures, "purity": figures(90, 98)})
    plan = lye(liquids=ALL, water=(WaterBy.RATIO, 2))
    assert not found(plan, "33.76", ours) and found(plan, "33.80", ours)


@pytest.mark.parametrize("lacks", ["molar mass", "purity"])
def test_an_alkali_of_which_too_little_is_known_is_a_finding_of_its_own(lacks: str) -> None:
    known = STUDIO.ingredients["sodium hydroxide"]
    ours = replace(known, figures={name: figure for name, figure in known.figures.items() if name != lacks})
    here = replace(STUDIO, ingredients={**STUDIO.ingredients, "sodium hydroxide": ours})
    plan = lye(liquids=ALL, water=(WaterBy.RATIO, 2))
    assert levels(find_unfit_lye_liquids(replace(here, recipes={"one": soap({"olive oil": 100}, plan)}))) == []


@pytest.mark.parametrize("lacks", ["molar mass", "purity", "protons"])
def test_an_acid_of_which_too_little_is_known_is_a_finding_of_its_own(lacks: str) -> None:
    known = STUDIO.ingredients["vinegar"]
    ours = replace(known, figures={name: figure for name, figure in known.figures.items() if name != lacks})
    here = replace(STUDIO, ingredients={**STUDIO.ingredients, "vinegar": ours})
    plan = lye(liquids=ALL, purity=100, water=(WaterBy.RATIO, 2))
    assert levels(find_unfit_lye_liquids(replace(here, recipes={"one": soap({"olive oil": 100}, plan)}))) == []


# Citric acid has three protons to 192.124 g: of two parts of liquid to one of sodium hydroxide p % bring 6 p / 100 / 192.124 mol to
# 1 / 39.997 mol of lye, so that p = 40.03 % takes up half of it.
@pytest.mark.parametrize(("strength", "is_found"), [("40.02", False), ("40.04", True)])
def test_each_proton_of_an_acid_takes_up_lye(strength: str, *, is_found: bool) -> None:
    known, vinegar = STUDIO.ingredients["citric acid"], STUDIO.ingredients["vinegar"]
    solution = replace(vinegar, figures={**known.figures, "purity": figures(strength), "water content": figures(80)})
    here = replace(STUDIO, ingredients={**STUDIO.ingredients, "vinegar": solution})
    plan = lye(liquids=ALL, purity=100, water=(WaterBy.RATIO, 2))
    found = levels(find_unfit_lye_liquids(replace(here, recipes={"one": soap({"olive oil": 100}, plan)})))
    assert found == ["lye-liquid-too-sour stop"] * is_found
