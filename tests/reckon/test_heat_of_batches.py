"""What the lye of a batch warms to as it dissolves, and how long lye and hot batches cool: by hand, and by the sums of test_heat.py.

Heats of dissolving: 1113 J/g of sodium hydroxide, 1027 J/g of potassium hydroxide (CRC Handbook, read); water takes 4.184 J/(g K).
"""

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction

import pytest

from builder.model.formula.warmth import CoolsTo
from builder.model.recipe.ingredient import CountsAs, Ingredient
from builder.model.recipe.product import Contact, DeclaredBy, Product
from builder.model.recipe.quantity import Temperature
from builder.model.recipe.recipe import LyePlan, Recipe, WaterBy
from builder.model.recipe.size import TotalSize
from builder.model.recipe.worked_batch import WorkedBatch
from builder.reckon.formula.heat import cooling, dissolving
from tests.making import Number, card, cards, fat, grams, lye, phase, recipe, scale, share, soap, sure, worked
from tests.reckon.test_guests import STUDIO

BAR = Product("cold-process soap", "Soap", Contact.RINSE_OFF, True, DeclaredBy.WEIGHT)
LOTION = Product("lotion", "Lotion", Contact.LEAVE_ON, False, DeclaredBy.WEIGHT)
CONSTANTS, FINE = STUDIO.constants, [scale("0.0001")]
ROOM = 21
TENDER, QUICK = card("tender", add_below=(40, 45)), card("quick", add_below=(35, 60))
STOCK = cards(fat("fat", 190), TENDER, QUICK, card("honey water", CountsAs.LIQUID), card("oil", CountsAs.FAT))


def bar(plan: LyePlan, *, heat: int = 0) -> WorkedBatch:
    of = soap({"fat": 100}, plan)
    if heat:
        of = replace(of, phases=(replace(of.phases[0], heat_to=Temperature(Fraction(heat))),))
    return worked(of, BAR, TotalSize(grams(1000)), STOCK, FINE, CONSTANTS)


def of_strength(percent: str, alkali: str | Mapping[str, Number] = "sodium hydroxide", purity: int = 100) -> LyePlan:
    return lye(alkali, purity=purity, water=(WaterBy.CONCENTRATION, Fraction(percent) / 100))


# 0.25 x 1113 / 4.184 = 66.5 K, of which four tenths show at the least; at 26 % it is 69.2 K: more than 90 °C, too near to boiling to say.
@pytest.mark.parametrize(
    ("percent", "purity", "strength", "rise", "near_boiling"),
    [("25", 100, 0.25, 66.5, False), ("25", 98, 0.245, 65.17, False), ("25.9", 100, 0.259, 68.9, False), ("26", 100, 0.26, 69.16, True)],
)
def test_lye_warms_by_what_dissolving_frees(percent: str, purity: int, strength: float, rise: float, *, near_boiling: bool) -> None:
    found = sure(bar(of_strength(percent, purity=purity)).dissolving)
    assert float(found.strength) == pytest.approx(strength, abs=1e-5)
    assert float(found.most) == pytest.approx(ROOM + rise, abs=0.06)
    assert float(found.least) == pytest.approx(ROOM + 0.4 * rise, abs=0.06)
    assert found.near_boiling is near_boiling


def test_two_alkalis_warm_it_each_by_its_own_heat() -> None:
    made = bar(of_strength("20", {"sodium hydroxide": 50, "potassium hydroxide": 50}))
    weights = {w.line.name: float(w.mass.grams) for w in made.grams.weighed}
    whole = float((made.grams.alkali + made.grams.lye_water).grams)
    rise = (weights["sodium hydroxide"] * 1113 + weights["potassium hydroxide"] * 1027) / whole / 4.184
    assert float(sure(made.dissolving).most) == pytest.approx(ROOM + rise, abs=0.001)


def test_what_comes_dissolved_or_is_not_known_warms_nothing() -> None:
    ready = lye(purity=100, ready_mixed=share(40), water=(WaterBy.CONCENTRATION, "0.25"))
    assert bar(ready).dissolving is None
    unknown = {name: figure for name, figure in CONSTANTS.items() if not name.startswith("heat of dissolving")}
    assert dissolving(bar(of_strength("25")).grams, unknown) is None
    assert worked(recipe(phase("all", {"water": share(100)})), LOTION, TotalSize(grams(100)), STOCK, FINE, CONSTANTS).dissolving is None


def cools(made: WorkedBatch) -> CoolsTo | None:
    assert len(made.cools) < 2
    return made.cools[0] if made.cools else None


def test_lye_cools_to_the_heat_of_the_oils() -> None:
    made = bar(of_strength("25"), heat=40)
    freed, solution = sure(made.dissolving), made.grams.alkali + made.grams.lye_water
    ends = (freed.least, freed.most)
    found = sure(cools(made))
    assert found.what == "lye"
    assert found.in_air == cooling(solution, Fraction("3.5"), ends, Fraction(40), CONSTANTS)
    assert found.in_water == cooling(solution, Fraction("3.5"), ends, Fraction(40), CONSTANTS, in_water=True)


# Lye of 25 % comes to 87.5 °C at the most: oils at 90 °C wait for nothing, nor do oils that nobody heats.
@pytest.mark.parametrize("heat", [0, 90])
def test_lye_that_is_cooler_than_the_oils_waits_for_nothing(heat: int) -> None:
    assert cools(bar(of_strength("25"), heat=heat)) is None


def hot(lines: Mapping[str, Number], *, heats: tuple[int, ...] = (70, 75)) -> CoolsTo | None:
    halves = [phase(f"half {number}", {"water": share(20)}, heat_to=Temperature(Fraction(heat))) for number, heat in enumerate(heats)]
    return cooled(recipe(*halves, phase("cool", {name: share(percent) for name, percent in lines.items()})))


def cooled(of: Recipe, *stock: Ingredient) -> CoolsTo | None:
    return cools(worked(of, LOTION, TotalSize(grams(500)), {**STOCK, **{one.key: one for one in stock}}, FINE, CONSTANTS))


def test_a_batch_cools_from_its_hottest_to_what_bears_least() -> None:
    expected = cooling(grams(500), Fraction("3.9"), (Fraction(75), Fraction(75)), Fraction(35), CONSTANTS)
    found = sure(hot({"tender": 30, "quick": 30}))
    assert (found.what, found.in_air) == ("batch", expected)
    assert sure(hot({"tender": 60})).in_air.ends == 40


def test_without_heat_or_water_or_what_is_tender_nothing_is_waited_for() -> None:
    assert hot({"oil": 60}) is None
    assert hot({"tender": 80, "oil": 20}, heats=()) is None
    dry = phase("melted", {"oil": share(60)}, heat_to=Temperature(Fraction(75)))
    assert cooled(recipe(dry, phase("cool", {"tender": share(40)}))) is None
    wet = replace(dry, lines=phase("x", {"oil": share(30), "honey water": share(30)}).lines)
    assert cooled(recipe(wet, phase("cool", {"tender": share(40)}))) is not None
