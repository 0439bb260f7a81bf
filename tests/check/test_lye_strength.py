"""Which strength of lye is usual goes by the alkali that most of the soap is made with, wherever it stands in the recipe."""

import pytest

from builder.check.batches import Batch, BatchFinding
from builder.check.lye.lye_too_strong import find_too_strong_lye
from builder.model.recipe.product import Contact, DeclaredBy, Product
from builder.model.recipe.recipe import WaterBy
from builder.model.recipe.size import OilsSize
from builder.model.subject import WholeRecipe
from tests.making import cards, fat, grams, lye, scale, soap, worked
from tests.reckon.test_guests import STUDIO

PASTE = Product("liquid soap", "Liquid soap", Contact.RINSE_OFF, True, DeclaredBy.WEIGHT)


# One part of potassium hydroxide to three of water, 25 %, is usual for soft soap, and 20 % too; for bars 20 % is weak (common practice, no
# source). 10 % sodium hydroxide in a soft soap makes no bar of it, nor 10 % potassium hydroxide in a bar a soft soap.
@pytest.mark.parametrize(
    ("alkalis", "found"),
    [
        ({"sodium hydroxide": 10, "potassium hydroxide": 90}, []),
        ({"potassium hydroxide": 90, "sodium hydroxide": 10}, []),
        ({"sodium hydroxide": 90, "potassium hydroxide": 10}, ["lye-water-unusual"]),
        ({"potassium hydroxide": 10, "sodium hydroxide": 90}, ["lye-water-unusual"]),
    ],
)
def test_a_mixed_lye_is_judged_by_its_larger_part(alkalis: dict[str, int], found: list[str]) -> None:
    plan = lye(alkalis, water=(WaterBy.CONCENTRATION, "0.20"))
    made = worked(soap({"fat": 100}, plan), PASTE, OilsSize(grams(1000)), cards(fat("fat", 190)), [scale("0.01")])
    batch = Batch("a soap", WholeRecipe("test"), made, made.own, STUDIO.constants)
    said = [one.finding.name for one in find_too_strong_lye(batch) if isinstance(one, BatchFinding)]
    assert said == found
