"""Which strength of lye is usual goes by the alkali that most of the soap is made with, wherever it stands in the recipe."""

from dataclasses import replace
from fractions import Fraction

import pytest

from builder.check.batches import Batch, BatchFinding
from builder.check.lye.lye_too_strong import find_too_strong_lye
from builder.model.recipe.product import Contact, DeclaredBy, Product
from builder.model.recipe.recipe import WaterBy
from builder.model.recipe.size import OilsSize
from builder.model.subject import WholeRecipe
from tests.check.test_at_the_edge import levels
from tests.making import cards, fat, grams, lye, scale, share, soap, sure, told, worked
from tests.reckon.test_guests import STUDIO

PASTE = Product("liquid soap", "Liquid soap", Contact.RINSE_OFF, True, DeclaredBy.WEIGHT)


# One part of potassium hydroxide to three of water, 25 %, is usual for soft soap, and 20 % too; for bars 20 % is weak (common practice, no
# source). Sodium hydroxide in a soft soap makes no bar of it, nor potassium hydroxide in a bar a soft soap, up to half of the whole.
@pytest.mark.parametrize(
    ("alkalis", "found"),
    [
        ({"sodium hydroxide": 10, "potassium hydroxide": 90}, []),
        ({"potassium hydroxide": 90, "sodium hydroxide": 10}, []),
        ({"sodium hydroxide": 90, "potassium hydroxide": 10}, ["lye-water-unusual"]),
        ({"potassium hydroxide": 10, "sodium hydroxide": 90}, ["lye-water-unusual"]),
        ({"potassium hydroxide": 49, "sodium hydroxide": 51}, ["lye-water-unusual"]),
        ({"potassium hydroxide": 51, "sodium hydroxide": 49}, []),
    ],
)
def test_a_mixed_lye_is_judged_by_its_larger_part(alkalis: dict[str, int], found: list[str]) -> None:
    plan = lye(alkalis, water=(WaterBy.CONCENTRATION, "0.20"))
    made = worked(soap({"fat": 100}, plan), PASTE, OilsSize(grams(1000)), cards(fat("fat", 190)), [scale("0.01")])
    batch = Batch("a soap", WholeRecipe("test"), made, made.own, STUDIO.constants)
    said = [one.finding.name for one in find_too_strong_lye(batch) if isinstance(one, BatchFinding)]
    assert said == found


def judged(strength: str, alkali: str = "sodium hydroxide", ready_mixed: str | None = None) -> list[str]:
    """Return what is found where the lye is of this strength as weighed, mixed from a solution or not."""
    plan = lye(alkali, ready_mixed=share(ready_mixed) if ready_mixed else None)
    made = worked(soap({"fat": 100}, plan), PASTE, OilsSize(grams(1000)), cards(fat("fat", 190)), [scale("0.01")])
    found = replace(sure(made.grams.lye), in_water=Fraction(strength) / 100)
    made = replace(made, columns=tuple(replace(column, lye=found) for column in made.columns))
    return levels(find_too_strong_lye(Batch("a soap", WholeRecipe("test"), made, made.own, STUDIO.constants)))


# A saturated solution of sodium hydroxide has 50 % at 25 degC (Sipos 2000, read): what is above does not dissolve. From 25 to 40 % is usual
# for bars, from 15 to 40 % for soft soap (common practice, no source).
@pytest.mark.parametrize(
    ("alkali", "strength", "found"),
    [
        ("sodium hydroxide", "50", ["lye-water-unusual caution"]),
        ("sodium hydroxide", "50.01", ["lye-too-strong stop"]),
        *(("sodium hydroxide", edge, []) for edge in ("25", "40")),
        *(("sodium hydroxide", beyond, ["lye-water-unusual caution"]) for beyond in ("24.9", "40.1")),
        *(("potassium hydroxide", edge, []) for edge in ("15", "40")),
        ("potassium hydroxide", "14.9", ["lye-water-unusual caution"]),
    ],
)
def test_a_lye_is_too_strong_above_what_dissolves(alkali: str, strength: str, found: list[str]) -> None:
    assert judged(strength, alkali) == found


@pytest.mark.parametrize(("strength", "found"), [("50", []), ("50.01", ["lye-too-strong stop"])])
def test_a_solution_is_judged_by_its_own_strength_whatever_water_comes_to_it(strength: str, found: list[str]) -> None:
    assert judged("33", ready_mixed=strength) == found
    # With a solution more than half of the water may be in it: then the lye in the pot alone is no stop.
    assert judged("51", ready_mixed="50") == ["lye-water-unusual caution"]


# A solution of 33 % brings all the water of a lye of 33 %, and more than a lye of 34 % has: what is weighed beside it is nothing, or less.
@pytest.mark.parametrize(("strength", "found"), [("0.32", []), ("0.33", []), ("0.34", ["water-below-zero stop"])])
def test_a_solution_may_bring_all_the_water_and_no_more(strength: str, found: list[str]) -> None:
    plan = lye(purity=100, ready_mixed=share(33), water=(WaterBy.CONCENTRATION, strength))
    made = worked(soap({"fat": 100}, plan), PASTE, OilsSize(grams(1000)), cards(fat("fat", 190)), [scale("0.01")])
    assert levels(find_too_strong_lye(Batch("a soap", WholeRecipe("test"), made, made.own, STUDIO.constants))) == found


# Of 1000 g of oils a lye of 33.95 % needs a solution of as much, and whole per cent are told: 34 %; of 40.2 % it is 41 %.
@pytest.mark.parametrize(("strength", "least"), [("0.3395", 34), ("0.402", 41)])
def test_as_strong_a_solution_is_asked_for_as_brings_no_more_water(strength: str, least: int) -> None:
    plan = lye(purity=100, ready_mixed=share(33), water=(WaterBy.CONCENTRATION, strength))
    made = worked(soap({"fat": 100}, plan), PASTE, OilsSize(grams(1000)), cards(fat("fat", 190)), [scale("0.01")])
    (found,) = told(find_too_strong_lye(Batch("a soap", WholeRecipe("test"), made, made.own, STUDIO.constants)))
    assert f"use a stronger ready-mixed solution: of {least} % at least." in found.remedy
