"""Which purity counts: the studio's own pack in its own pots, and what is sold where others buy theirs."""

from dataclasses import replace
from fractions import Fraction

import pytest

from builder.model.lye.lye_result import LyeResult
from builder.model.recipe.figure import Figures, Known
from builder.model.recipe.ingredient import CountsAs, Ingredient
from builder.model.recipe.product import Contact, DeclaredBy, Product
from builder.model.recipe.recipe import LyePlan, StatedPurity
from builder.model.recipe.size import OilsSize
from tests.making import NAOH, card, cards, fat, grams, lye, scale, share, soap, sure, worked

BAR = Product("cold-process soap", "Soap", Contact.RINSE_OFF, True, DeclaredBy.WEIGHT)
HERE = [scale("0.000001")]
# The pharmacopoeia's limits for sodium hydroxide, 95.0 to 100.5 % (USP-NF, from memory); hydroxide itself cannot pass the whole.
SOLD = card("sodium hydroxide", CountsAs.ALKALI, molar_mass=NAOH, purity=(95, "100.5"))


def superfat(plan: LyePlan, alkali: Ingredient = SOLD, *, at_home: bool = False) -> LyeResult:
    known = cards(fat("fat", 190)) | {alkali.key: alkali}
    return sure(worked(soap({"fat": 100}, plan), BAR, OilsSize(grams(1000)), known, HERE, from_solid=at_home).grams.lye)


def stated(typical: int, low: int, high: int) -> StatedPurity:
    return StatedPurity(*(Fraction(str(number)) / 100 for number in (typical, low, high)))


def test_a_stated_range_is_the_range_of_the_superfat() -> None:
    found = superfat(lye(purity=stated(99, 97, 100), superfat=5))
    # The alkali is weighed for 99 %; a pack of 100 % brings 100/99 of it, one of 97 % brings 97/99.
    assert float(found.lowest) == pytest.approx(1 - 0.95 * 100 / 99, abs=1e-6)
    assert float(found.highest) == pytest.approx(1 - 0.95 * 97 / 99, abs=1e-6)


def test_at_home_the_range_of_what_is_sold_counts_and_no_certificate() -> None:
    found = superfat(lye(purity=98, superfat=5), at_home=True)
    middle = (95 + 100) / 2
    assert float(found.lowest) == pytest.approx(1 - 0.95 * 100 / middle, abs=1e-6)
    assert float(found.highest) == pytest.approx(1 - 0.95 * 95 / middle, abs=1e-6)
    assert found.purities[0].assumed
    here = superfat(lye(purity=98, superfat=5))
    assert float(here.highest - here.lowest) == pytest.approx(0, abs=1e-6)


@pytest.mark.parametrize("known", [Known.SUPPLIER, Known.MEASURED])
def test_at_home_a_card_with_the_certificate_of_the_studio_gives_way_to_the_one_that_it_replaces(known: Known) -> None:
    figure = replace(sure(SOLD.figure("purity")), low=Fraction(99), high=Fraction(99), known=known)
    own = replace(SOLD, figures={**SOLD.figures, "purity": Figures(sure(figure))}, replaces=SOLD)
    plan = lye(superfat=5)
    assert float(superfat(plan, own).lowest) == pytest.approx(0.05, abs=1e-6)
    assert superfat(plan, at_home=True, alkali=own).lowest == superfat(plan, at_home=True).lowest
    assert superfat(lye(superfat=5, ready_mixed=share(40)), own).purities[0].typical == Fraction(99, 100)


def test_at_home_a_pack_stronger_than_what_is_usually_sold_may_be_the_studio_s_own() -> None:
    weak = card("sodium hydroxide", CountsAs.ALKALI, molar_mass=NAOH, purity=(88, 92))
    found = superfat(lye(purity=97, superfat=5), at_home=True, alkali=weak)
    assert float(found.lowest) == pytest.approx(1 - 0.95 * 97 / 90, abs=1e-6)
