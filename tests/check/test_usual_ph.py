"""Which pH a product usually has: that of its kind, or of a cream that a soap holds, where an alkali and a fatty acid make that soap.

Creams of beeswax and borax, or of stearic acid and a mild alkali, are held by a soap: content/constants.yaml with its source.
"""

from dataclasses import replace

import pytest

from builder.check.formula.formulas import FormulaPart, Formulation
from builder.check.formula.usual_ph import HELD_BY_SOAP, usual_ph_of
from builder.model.place import NOWHERE
from builder.model.recipe.recipe import Recipe
from tests.making import lye, phase, recipe, share
from tests.reckon.test_guests import STUDIO

PLAIN, WITH_LYE = recipe(phase("all", {"water": share("100")})), recipe(phase("all", {"water": share("100")}), lye=lye())


def usual(formula: Recipe, *names: str, constants_known: bool = True) -> str:
    parts = tuple(FormulaPart(STUDIO.ingredients[name], NOWHERE) for name in names)
    studio = STUDIO if constants_known else replace(STUDIO, constants={})
    found = usual_ph_of(Formulation(formula, STUDIO.products["lotion"], parts, ()), studio)
    assert found is not None
    held = studio.constants.get(HELD_BY_SOAP)
    assert (found[1] is held) == (found[0] == "lotion that a soap holds")
    assert found[1] in (held, STUDIO.products["lotion"].usual_ph)
    return found[0]


@pytest.mark.parametrize("names", [("water", "borax", "beeswax"), ("water", "stearic acid", "triethanolamine")])
def test_an_alkali_and_a_fatty_acid_hold_a_cream_by_their_soap(names: tuple[str, ...]) -> None:
    assert usual(PLAIN, *names) == "lotion that a soap holds"


@pytest.mark.parametrize("names", [("water",), ("water", "borax", "olive oil"), ("water", "beeswax"), ("olive oil", "emulsifying wax")])
def test_one_of_the_two_alone_makes_no_soap(names: tuple[str, ...]) -> None:
    assert usual(PLAIN, *names) == "lotion"


def test_soap_made_with_lye_is_no_such_cream_and_what_is_not_published_is_not_said() -> None:
    assert usual(WITH_LYE, "water", "borax", "beeswax") == "lotion"
    assert usual(PLAIN, "water", "borax", "beeswax", constants_known=False) == "lotion"
