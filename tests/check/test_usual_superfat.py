"""The usual soap, with 5 % of its fat left over, is met in silence on usual scales, and told of where scales are too coarse for the batch.

Common practice, no source: 5 % to 8 % of superfat for bars of the body; batches of 500 g to 1 kg of oils at home; a kitchen scale of 1 g,
and a pocket scale of 0.1 g beside it.
"""

import re
from dataclasses import replace
from fractions import Fraction

import pytest

from builder.check.batches import Batch
from builder.check.lye.lye_too_much import find_too_much_lye
from builder.model.finding import Finding
from builder.model.recipe.size import OilsSize
from builder.model.studio import Scale
from builder.model.subject import WholeRecipe
from builder.reckon import reckon_recipe
from tests.check.test_at_the_edge import levels
from tests.making import grams, lye, scale, soap, sure, told
from tests.studios import sound_studio

# Its sodium hydroxide is as the pharmacopoeia has it, 95 % to 100 %: no certificate narrows that.
STUDIO, _ = sound_studio()
BARS = {
    "olive and coconut": {"olive oil": 70, "coconut oil": 30},
    "four oils": {"olive oil": 60, "coconut oil": 25, "sunflower oil": 10, "castor oil": 5},
    "palm": {"olive oil": 40, "palm oil": 30, "coconut oil": 25, "castor oil": 5},
    "lard": {"lard": 60, "coconut oil": 25, "olive oil": 15},
    "olive alone": {"olive oil": 100},
}
COARSE = (scale("1", "5000"),)
USUAL = (*COARSE, scale("0.1", "500"))


def found(bar: str, superfat: str, oils: int, scales: tuple[Scale, ...]) -> list[Finding]:
    studio = replace(STUDIO, profile=replace(STUDIO.profile, scales=scales))
    made = reckon_recipe(studio, soap(BARS[bar], lye(superfat=superfat)), OilsSize(grams(oils)))
    return told(find_too_much_lye(Batch("a batch", WholeRecipe("test"), made, made.own, STUDIO.constants)))


@pytest.mark.parametrize("bar", BARS)
@pytest.mark.parametrize("oils", [500, 750, 1000])
@pytest.mark.parametrize("superfat", ["5", "6", "8"])
def test_the_usual_soap_is_met_in_silence(bar: str, oils: int, superfat: str) -> None:
    assert found(bar, superfat, oils, USUAL) == []


# Three per cent are less than the figures of oils and beads are apart; with 1 g to a step a small batch is off by more than 1 % of its lye.
@pytest.mark.parametrize(("superfat", "oils", "scales"), [("3", 1000, USUAL), ("4", 500, USUAL), ("5", 250, COARSE), ("5", 500, COARSE)])
@pytest.mark.parametrize("bar", BARS)
def test_what_may_leave_lye_is_told(bar: str, superfat: str, oils: int, scales: tuple[Scale, ...]) -> None:
    assert levels(found(bar, superfat, oils, scales)) == ["lye-range-below-zero caution"]


# The batch that the finding names is big enough, and no more than people make: rounding helps one batch and harms the next.
@pytest.mark.parametrize("bar", BARS)
def test_the_batch_that_is_named_is_big_enough(bar: str) -> None:
    (one,) = found(bar, "5", 500, COARSE)
    named = int(sure(re.search(r"Weigh on a finer scale, make a batch of about (\d+) g or more", one.remedy))[1])
    soap_of = reckon_recipe(STUDIO, soap(BARS[bar], lye(superfat="5")), OilsSize(grams(500)))
    oils = named * 500 / float(soap_of.grams.total.grams)
    assert all(found(bar, "5", round(oils * part / 10), COARSE) == [] for part in (10, 11, 12, 15, 20))
    assert named <= 10_000


# By hand, for olive oil of 190 mg/g: 190 / 56.1056 mol of hydroxide to a kilogram; 1 % of it as sodium hydroxide (39.997 g/mol) in a
# kilogram of oil with its lye of 33 %. A batch is an irritant from 0.5 % of sodium hydroxide on (Regulation (EC) 1272/2008, Annex VI).
def test_one_per_cent_below_zero_is_a_tenth_of_a_per_cent_of_free_alkali() -> None:
    needed = Fraction(190) / Fraction("56.1056") * Fraction("39.997")
    free = needed / 100 / (1000 + needed / Fraction("0.33")) * 100
    assert Fraction("0.09") < free < Fraction("0.1")
    assert -STUDIO.constants["superfat that is clearly below zero"].typical * free < Fraction("0.5")
