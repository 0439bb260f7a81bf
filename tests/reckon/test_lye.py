"""Lye against stoichiometry, published titrations and old recipes whose balance is known."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.check.batches import Batch, BatchFinding, say_once
from builder.check.lye.lye_too_much import find_too_much_lye
from builder.model.recipe.column import Role
from builder.model.recipe.ingredient import CountsAs, Ingredient
from builder.model.recipe.product import Contact, DeclaredBy, Product
from builder.model.recipe.recipe import AmountsAs, DividedBy, LyePlan, WaterBy
from builder.model.recipe.size import OilsSize, TotalSize
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Scale
from builder.model.subject import WholeRecipe
from builder.reckon.lye.lye import lye_basis
from builder.reckon.lye.lye_check import check_lye
from tests.making import CONSTANTS, KOH, NAOH, Number, card, cards, fat, grams, lye, phase, recipe, scale, share, soap, sure, worked

BAR = Product("cold-process soap", "Soap", Contact.RINSE_OFF, True, DeclaredBy.WEIGHT)
FINE = [scale("0.0001")]


def batch(
    oils: Mapping[str, int],
    plan: LyePlan,
    *fats: Ingredient,
    size: Number = 1000,
    scales: Sequence[Scale] = FINE,
    extra: Mapping[str, int] | None = None,
) -> WorkedBatch:
    return worked(soap(oils, plan, extra), BAR, OilsSize(grams(size)), cards(*fats), scales)


def exact(sheet: WorkedBatch, name: str) -> Fraction:
    return sum((line.exact.grams for line in sheet.lines if line.name == name), Fraction(0))


# School problem (worked example, luyentap365): 1 kg of fat takes 3.572 L of 1 M potassium hydroxide; saponification value 200.4.
def test_a_kilogram_of_fat_takes_as_much_potassium_hydroxide_as_it_was_titrated_with() -> None:
    sheet = batch({"fat": 100}, lye("potassium hydroxide", 0), fat("fat", "200.4"))
    assert float(exact(sheet, "potassium hydroxide") / KOH) == pytest.approx(3.572, abs=0.0005)


# Factors computed from molar masses: 0.712890 g NaOH per g KOH for the same hydroxide.
def test_sodium_for_potassium_hydroxide() -> None:
    sodium = batch({"fat": 100}, lye("sodium hydroxide"), fat("fat", 190))
    potassium = batch({"fat": 100}, lye("potassium hydroxide"), fat("fat", 190))
    ratio = exact(sodium, "sodium hydroxide") / exact(potassium, "potassium hydroxide")
    assert float(ratio) == pytest.approx(0.712890, abs=5e-6)


# Identities, computed: at a KOH share of 60 % of the equivalents the weight share of pure lye is 67.8 %; at 60 % by weight it is 51.7 %.
def test_a_mixed_lye_by_equivalents_and_by_weight() -> None:
    mix = {"potassium hydroxide": 60, "sodium hydroxide": 40}
    by_equivalents = batch({"fat": 100}, lye(mix), fat("fat", 190))
    potassium, sodium = exact(by_equivalents, "potassium hydroxide"), exact(by_equivalents, "sodium hydroxide")
    assert float(potassium / (potassium + sodium)) == pytest.approx(0.678, abs=0.0005)
    by_weight = batch({"fat": 100}, lye(mix, divided_by=DividedBy.WEIGHT), fat("fat", 190))
    potassium, sodium = exact(by_weight, "potassium hydroxide"), exact(by_weight, "sodium hydroxide")
    assert potassium / (potassium + sodium) == Fraction(60, 100)
    assert float((potassium / KOH) / (potassium / KOH + sodium / NAOH)) == pytest.approx(0.517, abs=0.0005)


def test_a_mixed_lye_shows_both_of_its_shares() -> None:
    mix = {"potassium hydroxide": 60, "sodium hydroxide": 40}
    potassium, sodium = sure(batch({"fat": 100}, lye(mix), fat("fat", 190)).grams.lye).parts
    assert (potassium.alkali, sodium.alkali) == ("potassium hydroxide", "sodium hydroxide")
    assert float(potassium.by_equivalents) == pytest.approx(0.60, abs=1e-5)
    assert float(potassium.by_weight) == pytest.approx(0.678, abs=0.0005)
    assert potassium.by_equivalents + sodium.by_equivalents == potassium.by_weight + sodium.by_weight == 1


# 1 : 1 from 97 % is 48.5 % hydroxide by weight.
def test_a_ready_mixed_lye_brings_its_own_water() -> None:
    plan = lye(superfat=5, purity=97, ready_mixed=share("48.5"))
    mixed = batch({"fat": 100}, plan, fat("fat", 190))
    solid = batch({"fat": 100}, lye(superfat=5, purity=97), fat("fat", 190))
    assert exact(mixed, "sodium hydroxide solution, 48.5 %") == 2 * exact(solid, "sodium hydroxide")
    assert exact(mixed, "water") == exact(solid, "water") - exact(solid, "sodium hydroxide")
    assert sure(mixed.grams.lye).concentration == pytest.approx(sure(solid.grams.lye).concentration, abs=1e-6)
    assert sure(mixed.grams.lye).superfat == pytest.approx(sure(solid.grams.lye).superfat, abs=1e-6)


def test_the_three_ways_to_state_water_agree() -> None:
    by_concentration = batch({"fat": 100}, lye(water=(WaterBy.CONCENTRATION, "0.25")), fat("fat", 190))
    by_ratio = batch({"fat": 100}, lye(water=(WaterBy.RATIO, 3)), fat("fat", 190))
    of_oils = exact(by_ratio, "water") / 1000
    by_percent = batch({"fat": 100}, lye(water=(WaterBy.PERCENT_OF_OILS, of_oils)), fat("fat", 190))
    assert exact(by_concentration, "water") == exact(by_ratio, "water") == exact(by_percent, "water")


def test_fat_after_the_cook_counts_afterwards() -> None:
    late = phase("after the cook", {"shea": share(10)}, after_the_cook=True)
    plan = lye(superfat=10)
    made = recipe(phase("oils", {"fat": share(90)}), late, amounts_as=AmountsAs.PERCENT_OF_OILS, lye=plan)
    sheet = worked(made, BAR, OilsSize(grams(1000)), cards(fat("fat", 190), fat("shea", 190)), FINE)
    assert float(sure(sheet.grams.lye).superfat) == pytest.approx(0.10, abs=1e-5)
    assert float(sure(sure(sheet.grams.lye).before_the_cook)) == pytest.approx(0.0, abs=1e-5)


def test_a_wax_that_does_not_react_takes_no_lye() -> None:
    wax = card("beeswax", CountsAs.WAX, saponification=95)
    sheet = batch({"fat": 95, "beeswax": 5}, lye(superfat=5), fat("fat", 190), wax)
    assert float(sure(sheet.grams.lye).superfat) == pytest.approx(0.05, abs=1e-5)
    assert sure(sure(sheet.grams.lye).without_waxes) < sure(sheet.grams.lye).superfat


percent = st.integers(0, 40)
value = st.fractions(150, 280, max_denominator=100)
weights = st.fractions(10, 5000, max_denominator=10)


@given(value, percent, weights, st.sampled_from(["sodium hydroxide", "potassium hydroxide"]), st.integers(80, 100))
def test_the_superfat_asked_for_is_the_superfat_of_the_exact_amounts(
    number: Fraction, superfat: int, size: Fraction, alkali: str, purity: int
) -> None:
    sheet = batch({"fat": 100}, lye(alkali, superfat, purity=purity), fat("fat", number), size=size)
    hydroxide = exact(sheet, alkali) * purity / 100 / (NAOH if alkali == "sodium hydroxide" else KOH)
    assert 1 - hydroxide / (size * number / 1000 / KOH) == Fraction(superfat, 100)


@given(value, value, percent, weights, st.sampled_from(["1", "0.1", "5"]))
def test_lye_is_never_rounded_up(one: Fraction, other: Fraction, superfat: int, size: Fraction, division: str) -> None:
    scales = [scale(division)]
    sheet = batch({"a": 60, "b": 40}, lye(superfat=superfat), fat("a", one), fat("b", other), size=size, scales=scales)
    for weighed in sheet.grams.weighed:
        if weighed.line.role is Role.ALKALI:
            assert weighed.mass <= weighed.line.exact
            assert weighed.line.exact - weighed.mass < weighed.scale.division
        else:
            assert abs((weighed.mass - weighed.line.exact).grams) <= weighed.scale.division.grams / 2


@given(value, percent, st.integers(2, 9))
def test_scaling_does_not_change_the_superfat(number: Fraction, superfat: int, times: int) -> None:
    small = worked(soap({"fat": 100}, lye(superfat=superfat)), BAR, TotalSize(grams(500)), cards(fat("fat", number)), FINE)
    big = worked(soap({"fat": 100}, lye(superfat=superfat)), BAR, TotalSize(grams(500 * times)), cards(fat("fat", number)), FINE)
    assert [line.exact * times for line in small.lines] == [line.exact for line in big.lines]


@given(value, percent, percent)
def test_more_superfat_never_takes_more_lye(number: Fraction, one: int, other: int) -> None:
    less, more = sorted((one, other))
    with_less = batch({"fat": 100}, lye(superfat=less), fat("fat", number))
    with_more = batch({"fat": 100}, lye(superfat=more), fat("fat", number))
    assert exact(with_more, "sodium hydroxide") <= exact(with_less, "sodium hydroxide")


@given(value, value, st.integers(1, 99), st.randoms(use_true_random=False))
def test_the_order_of_the_oils_does_not_matter(one: Fraction, other: Fraction, part: int, random: Random) -> None:
    oils = [("a", part), ("b", 100 - part)]
    first = batch(dict(oils), lye(), fat("a", one), fat("b", other))
    random.shuffle(oils)
    second = batch(dict(oils), lye(), fat("b", other), fat("a", one))
    assert {line.name: line.exact for line in first.lines} == {line.name: line.exact for line in second.lines}


@given(st.integers(1, 99))
def test_the_hydroxide_needed_does_not_depend_on_the_split(part: int) -> None:
    sheet = batch({"fat": 100}, lye({"potassium hydroxide": part, "sodium hydroxide": 100 - part}), fat("fat", 190))
    hydroxide = exact(sheet, "potassium hydroxide") / KOH + exact(sheet, "sodium hydroxide") / NAOH
    assert hydroxide == Fraction(95, 100) * 190 / KOH


@settings(max_examples=6)
@given(st.integers(0, 2**32), st.integers(0, 10), st.sampled_from(["1", "0.1"]))
def test_the_worst_case_is_the_worst_of_10_000_random_draws(seed: int, superfat: int, division: str) -> None:
    random = Random(seed)
    olive, coconut = fat("olive", 184, 196), fat("coconut", 248, 265)
    alkali = card("sodium hydroxide", CountsAs.ALKALI, molar_mass=NAOH, purity=(95, 100))
    stock = cards(olive, coconut) | {"sodium hydroxide": alkali}
    made = soap({"olive": 70, "coconut": 30}, lye(superfat=superfat))
    sheet = worked(made, BAR, OilsSize(grams(500)), stock, [scale(division)])
    result = sheet.grams.lye
    for _ in range(10_000):
        oils = hydroxide = 0.0
        for weighed in sheet.grams.weighed:
            half = float(weighed.scale.division.grams) / 2
            mass = float(weighed.mass.grams) + random.uniform(-half, half)
            if weighed.line.role is Role.OIL:
                figure = weighed.line.ingredient.figure("saponification")
                oils += mass * random.uniform(float(sure(figure).low), float(sure(sure(figure).high))) / 1000 / float(KOH)
            elif weighed.line.role is Role.ALKALI:
                hydroxide += mass * random.uniform(0.95, 1.0) / float(NAOH)
        assert float(sure(result).lowest) - 1e-9 <= 1 - hydroxide / oils <= float(sure(result).highest) + 1e-9


def test_an_acid_is_given_its_lye() -> None:
    citric = card("citric acid", CountsAs.ACID, molar_mass="192.124", protons=3, purity=100)
    sheet = batch({"fat": 100}, lye(superfat=5), fat("fat", 190), citric, extra={"citric acid": 2})
    plain = batch({"fat": 100}, lye(superfat=5), fat("fat", 190))
    # 1 g of anhydrous citric acid takes 0.62455 g of sodium hydroxide (computed).
    assert float(exact(sheet, "sodium hydroxide") - exact(plain, "sodium hydroxide")) == pytest.approx(20 * 0.62455, abs=0.01)
    assert float(sure(sheet.grams.lye).superfat) == pytest.approx(0.05, abs=1e-5)


# Simmons & Appleton 1908, ch. V: 56 lb each of coconut, tallow and castor with 83 lb of lye of 72 °Tw (32.93 % NaOH): 7 % excess.
# And 56 lb coconut, 56 lb tallow, 56 lb lye: 0.9 % excess. Balance computed with the book's saponification equivalents.
@pytest.mark.parametrize(
    ("fats", "lye_pounds", "excess"),
    [({"coconut": "215.1", "tallow": "284.8"}, 56, 0.009), ({"coconut": "215.1", "tallow": "284.8", "castor": "310"}, 83, 0.071)],
)
def test_two_lye_heavy_recipes_of_1908_come_out_below_zero(fats: Mapping[str, str], lye_pounds: int, excess: float) -> None:
    stock = cards(*(fat(name, Fraction(56100) / Fraction(equivalent)) for name, equivalent in fats.items()))
    made = soap({name: Fraction(100, len(fats)) for name in fats}, lye(superfat=0))
    sheet = worked(made, BAR, OilsSize(grams(56 * len(fats))), stock, FINE)
    poured = grams(lye_pounds * 0.3293)
    weighed = [replace(w, mass=poured) if w.line.role is Role.ALKALI else w for w in sheet.grams.weighed]
    result = check_lye(weighed, replace(lye_basis(sure(made.lye), stock), koh=Fraction("56.1")))
    assert result.superfat < 0
    assert float(-result.superfat) == pytest.approx(excess, abs=0.004)
    column = replace(sheet.grams, lye=result)
    batch = Batch("the pan of 1908", WholeRecipe("test"), replace(sheet, columns=(column,)), sheet.own, CONSTANTS)
    (found,) = say_once(one for one in find_too_much_lye(batch) if isinstance(one, BatchFinding))
    assert (found.name, found.stops, found.acceptable) == ("lye-too-much", True, False)
