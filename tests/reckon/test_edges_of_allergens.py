"""Fragrance allergens at the very threshold: above 0.001 % of what stays on and 0.01 % of what is rinsed off they are named.

Regulation (EC) 1223/2009 Annex III, entries of the fragrance allergens: "exceeds".
"""

from dataclasses import replace
from fractions import Fraction

import pytest

from builder.model.recipe.product import Contact
from builder.reckon.label.ingredient_list import list_ingredients
from tests.reckon.test_ingredient_list import STUDIO, exactly, labelling, scent

WATER = exactly(STUDIO.ingredients["water"], "99.9")

# A tenth of a per cent of a scent, of which so many per cent are linalool.
EDGES = [
    (Contact.LEAVE_ON, "1", False),
    (Contact.LEAVE_ON, "1.01", True),
    (Contact.RINSE_OFF, "10", False),
    (Contact.RINSE_OFF, "10.1", True),
]


@pytest.mark.parametrize(("contact", "percent", "is_named"), EDGES)
def test_what_a_statement_says_is_named_above_the_threshold(contact: Contact, percent: str, *, is_named: bool) -> None:
    stated = scent("our scent", {"Linalool": (0, percent)})
    listed = list_ingredients([WATER, exactly(stated, "0.1")], labelling("EU"), contact)
    assert [entry.inci for entry in listed.entries if entry.is_allergen] == ["Linalool"] * is_named


@pytest.mark.parametrize(("contact", "percent", "is_named"), EDGES)
def test_what_is_published_of_an_oil_is_asked_for_above_the_threshold(contact: Contact, percent: str, *, is_named: bool) -> None:
    lavender = STUDIO.ingredients["lavender essential oil"]
    (part,) = lavender.holds
    held = {"linalool": replace(part["linalool"], high=Fraction(percent) / 100)}
    (asked,) = list_ingredients([WATER, exactly(replace(lavender, holds=(held,)), "0.1")], labelling("EU"), contact).may_hold
    assert [name for name, _ in asked.allergens] == ["Linalool"] * is_named


# The scents are asked about together: half of 0.001 % of each of two, and nothing says what is in them, may hold no more than that.
@pytest.mark.parametrize(("percent", "found"), [("0.0005", 0), ("0.00051", 2)])
def test_scents_of_which_nothing_is_stated_are_asked_about_where_they_come_to_more(percent: str, found: int) -> None:
    two = [exactly(scent(name), percent) for name in ("one", "two")]
    assert len(list_ingredients([exactly(STUDIO.ingredients["water"], 99), *two], labelling("EU")).without_statement) == found


# A tenth of the whole is a scent of which 20 to 40 % are linalool: 2 to 4 % of the whole, which may be more or less than the 3 % of oil.
def test_an_allergen_comes_to_what_its_statement_leaves_open() -> None:
    stated = exactly(scent("our scent", {"Linalool": (20, "40")}), 10)
    parts = [exactly(STUDIO.ingredients["water"], 87), stated, exactly(STUDIO.ingredients["sunflower oil"], 3)]
    listed = list_ingredients(parts, labelling("EU"))
    (linalool,) = (one for one in listed.entries if one.is_allergen)
    assert (linalool.least, linalool.most) == (Fraction(2, 100), Fraction(4, 100))
    assert [sorted(pair) for pair in listed.open_pairs] == [["Linalool", "sunflower oil"]]
