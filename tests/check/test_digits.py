"""With how many digits findings tell what does not come out even: as many as somebody weighs or compares by, worked by hand.

An HLB, a strength and a superfat are told with three digits, a weight and a volume with four, what a scale shows of too little with two.
"""

from dataclasses import replace
from fractions import Fraction
from typing import Any

from builder.check.batches import Batch, BatchFinding
from builder.check.formula.emulsion import find_weak_emulsions
from builder.check.lye.lye_liquids import find_unfit_lye_liquids
from builder.check.lye.lye_rounding import find_superfat_moved_by_rounding
from builder.check.lye.lye_too_strong import find_too_strong_lye
from builder.check.lye.saponification_far_off import find_saponification_far_off
from builder.check.lye.superfat_as_answer import find_unusual_superfat
from builder.check.recipe.amount_for_scale import find_amounts_scales_cannot_weigh
from builder.check.recipe.fill_and_container import find_fills_that_do_not_fit
from builder.check.recipe.portions_short import find_short_portions
from builder.model.place import NOWHERE, Name
from builder.model.recipe.quantity import Density
from builder.model.recipe.recipe import Fill, LyeLiquid, MeasuredDensity, Recipe, WaterBy
from builder.model.recipe.size import TotalSize
from builder.reckon import reckon_recipe
from tests.check.test_at_the_edge import batch, mixed
from tests.check.test_edges_of_emulsions import PAIR
from tests.check.test_edges_of_emulsions import seen as emulsion
from tests.check.test_edges_of_lye import seen
from tests.check.test_seldom_met import seen_in
from tests.making import figures, grams, lye, scale, soap, told
from tests.reckon.test_guests import STUDIO


def case(found: Any) -> str:
    (one,) = found
    assert isinstance(one, BatchFinding)
    return one.case


# 31/3 are 10.333, 16/3 are 5.3333, 50/3 are 16.667, 72.34 % leaves 27.66 %.
def test_an_hlb_has_three_digits() -> None:
    (far,) = told(find_weak_emulsions(emulsion(PAIR, required=Fraction(31, 3), has=Fraction(50, 3), share_of_first=Fraction("0.7234"))))
    assert "an HLB of about 10.3 " in far.wrong and "the emulsifiers have 16.7:" in far.wrong
    assert "72.3 % polysorbate 80 and 27.7 % sorbitan oleate would come to it" in far.remedy
    shares: dict[str, Any] = {"water_share": Fraction(4, 5), "oil_share": Fraction(1, 5)}
    (inner,) = told(find_weak_emulsions(emulsion(PAIR, required=Fraction(12), has=Fraction(16, 3), **shares)))
    assert "the emulsifiers have an HLB of 5.33, " in inner.wrong and "Here 80 % of water and oil is water" in inner.wrong


# Of 1000 g 12.345 67 % are 123.4567 g; 1/3 is told as 33.3 %.
def test_a_superfat_has_three_digits_and_so_has_a_strength() -> None:
    assert case(find_unusual_superfat(seen(asked=Fraction(1, 3)))).endswith("(33.3 %)")
    bar = soap({"olive oil": 100}, lye(water=(WaterBy.CONCENTRATION, "0.123456")))
    assert case(find_too_strong_lye(seen_in("US", bar, scales=(scale("0.0001"),)))).endswith("(12.3 %)")


# 40 % of acetic acid in two parts of liquid to one of sodium hydroxide take up 2 x 0.4 / 60.052 x 39.997 of it: 53.28 %.
def test_what_a_sour_liquid_takes_has_two_digits() -> None:
    known = STUDIO.ingredients["vinegar"]
    ours = replace(known, figures={**known.figures, "purity": figures(40), "water content": figures(80)})
    plan = lye(liquids=(LyeLiquid(Name("vinegar"), Fraction(1)),), purity=100, water=(WaterBy.RATIO, 2))
    here = replace(STUDIO, ingredients={**STUDIO.ingredients, "vinegar": ours}, recipes={"one": soap({"olive oil": 100}, plan)})
    (found,) = told(find_unfit_lye_liquids(here))
    assert "So much vinegar would take up 53 % of the lye" in found.wrong


# 135 mg of sodium hydroxide are 135 x 56.1056 / 39.997 = 189.37 mg of potassium hydroxide: olive oil has 184 to 196.
def test_a_value_in_the_other_alkali_has_four_digits() -> None:
    olive = STUDIO.ingredients["olive oil"]
    own = replace(olive, figures={**olive.figures, "saponification": figures(135)}, replaces=olive)
    shelf = {name: own if one is olive else one for name, one in STUDIO.ingredients.items()}
    (found,) = told(find_saponification_far_off(replace(STUDIO, ingredients=shelf)))
    assert "135 mg of that are 189.4 mg of potassium hydroxide" in found.remedy


def filling(weight: Fraction, density: str | None = None, measured: str = "") -> Recipe:
    jar = next(one for one in STUDIO.containers.values() if one.name == "4 fl oz jar")
    found = MeasuredDensity(Density(Fraction(density)), "weighed in a flask") if density else None
    return replace(mixed(glycerin="3"), fill=Fill(Name(jar.name), grams(weight), measured=measured), density=found)


# 4 fl oz are 118.294 mL (NIST Handbook 44). 400/3 g are 133.333 g; 250 g in it are 2.113 g/mL.
def test_weights_and_volumes_have_four_digits() -> None:
    here = replace(STUDIO, classes={})
    (open_one,) = told(find_fills_that_do_not_fit(replace(here, recipes={"one": filling(Fraction(400, 3))})))
    assert "Whether 133.3 g of " in open_one.wrong and "jar: 118.3 mL, of which" in open_one.wrong
    (heavy,) = told(find_fills_that_do_not_fit(replace(here, recipes={"one": filling(Fraction(250), measured="one weighed")})))
    assert "(118.3 mL) is 2.1 g/mL" in heavy.wrong
    (dense,) = told(find_fills_that_do_not_fit(replace(here, recipes={"one": filling(Fraction(400, 3), "0.98765")})))
    assert "At the measured density of 0.988 g/mL" in dense.wrong


# 0.001 234 of 1000 g are 1.234 g: of so few divisions a scale shows two digits.
def test_what_is_too_little_for_a_scale_has_two_digits() -> None:
    one = seen_in("US", mixed(glycerin="0.1234"), scales=(scale("1"),))
    assert "(1.2 g on a scale that reads to 1 g)" in case(find_amounts_scales_cannot_weigh(one))


# By hand: 400/3 g fill one container, and 10 g none; a scale of 0.012 346 g is told with four digits.
def test_what_fills_a_container_and_what_a_scale_reads_have_four_digits() -> None:
    formula = replace(mixed(glycerin="3"), fill=Fill(Name("4 fl oz jar"), grams(Fraction(400, 3)), measured="one weighed"))
    finely = replace(STUDIO, profile=replace(STUDIO.profile, scales=(scale("0.0001"),)))
    small = reckon_recipe(finely, formula, TotalSize(grams(10)))
    one = Batch("a batch", batch(formula).of, small, small.own, STUDIO.constants)
    (found,) = told(find_short_portions(one))
    assert "smaller than the 133.3 g that fill one container" in found.wrong
    home = replace(seen(asked=Fraction("0.05"), rounding_may_move=Fraction("0.02"), division="0.012346"), size_place=NOWHERE)
    assert "on a scale that reads to 0.01235 g" in case(find_superfat_moved_by_rounding(home))


def test_of_an_alkali_of_which_nothing_is_known_nobody_is_asked() -> None:
    olive = STUDIO.ingredients["olive oil"]
    own = replace(olive, figures={**olive.figures, "saponification": figures(135)}, replaces=olive)
    for missing in ("sodium hydroxide", "potassium hydroxide"):
        for lost in (None, replace(STUDIO.ingredients[missing], figures={})):
            shelf = {name: own if one is olive else one for name, one in STUDIO.ingredients.items() if name != missing}
            here = replace(STUDIO, ingredients=shelf | ({missing: lost} if lost else {}))
            (found,) = told(find_saponification_far_off(here))
            assert "Look at the certificate again. If it is as written" in found.remedy
