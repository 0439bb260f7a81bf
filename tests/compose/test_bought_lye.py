"""Documents on lye that is bought as a solution: nobody is told to dissolve anything, and it is not said to be mixed."""

from dataclasses import replace
from datetime import datetime
from fractions import Fraction

from builder.compose.lye.lye_words import staff_lye
from builder.compose.teaching.weighing_words import mixing_lines
from builder.model.dates.studio_class import ClassDate
from builder.model.recipe.recipe import StatedPurity
from builder.reckon.teaching.classes import reckon_class
from tests.making import share, sure
from tests.studios import sound_studio

STUDIO, _ = sound_studio()


def words(bought: bool) -> str:
    recipe = STUDIO.recipes["plain-bar"]
    stated = StatedPurity(Fraction("0.50"), Fraction("0.49"), Fraction("0.51")) if bought else None
    plan = replace(sure(recipe.lye), ready_mixed=share(50), bought=stated)
    studio = replace(STUDIO, recipes={**STUDIO.recipes, "plain-bar": replace(recipe, lye=plan)})
    made = reckon_class(studio, studio.classes["one-bar"], ClassDate(datetime(2027, 3, 6), 8))[0]
    view = staff_lye(made.made[0].batch, made.weighing.solutions, "a")
    return " ".join([*mixing_lines(made), *sure(view).assumptions])


def test_what_is_bought_is_got_ready_and_its_certificate_counts() -> None:
    said = words(bought=True)
    assert "stirred slowly" not in said and "Mix " not in said
    assert "ready as it was bought, with its certificate" in said
    assert "bought as a solution, counted as 50% by weight (from 49% to 51%)" in said
    assert "bottle of sodium hydroxide solution" in said


def test_what_staff_mix_is_mixed_of_the_solid() -> None:
    said = words(bought=False)
    assert "stirred slowly" in said and "bought" not in said
