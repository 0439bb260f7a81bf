"""A solution of lye that is bought tells its own strength; the solid is asked about only where the recipe is made from it at home."""

from dataclasses import replace
from fractions import Fraction

import pytest

from builder.check.recipe.figures_missing import find_figures_missing
from builder.model.dates.studio_class import HomeSize, Make
from builder.model.place import Name
from builder.model.recipe.recipe import StatedPurity
from tests.check.test_at_the_edge import levels
from tests.making import grams, lye, share, soap
from tests.reckon.test_guests import LOTION, STUDIO

AT_HOME = (HomeSize("500 g", total=grams(500)),)
BOUGHT = lye(bought=StatedPurity(Fraction("0.48"), Fraction("0.49"), Fraction("0.5")), ready_mixed=share(49))


@pytest.mark.parametrize(
    ("recipe", "sizes", "found"), [("test", AT_HOME, ["purity-missing stop"]), ("test", (), []), ("another", AT_HOME, [])]
)
def test_the_solid_is_asked_about_where_it_is_weighed_at_home(recipe: str, sizes: tuple[HomeSize, ...], found: list[str]) -> None:
    known = STUDIO.ingredients["sodium hydroxide"]
    left = {name: figure for name, figure in known.figures.items() if name != "purity"}
    solid = replace(known, figures=left, replaces=None)
    one = replace(LOTION, makes=(Make(Name(recipe), at_home=sizes),))
    here = replace(STUDIO, ingredients={**STUDIO.ingredients, "sodium hydroxide": solid}, classes={"one": one})
    assert levels(find_figures_missing(replace(here, recipes={"test": soap({"olive oil": 100}, BOUGHT)}))) == found
    # Of the solid itself the purity is asked for in any case.
    assert levels(find_figures_missing(replace(here, recipes={"test": soap({"olive oil": 100}, lye())}))) == ["purity-missing stop"]
