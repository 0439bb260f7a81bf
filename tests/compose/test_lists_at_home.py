"""Ingredient lists on a take-home sheet: one in full, and what each choice adds to it; and what is said of weighing where it is true.

Each list put together again from the words is the one on the label of that bottle, in order of weight (21 CFR 701.3 and EU 1223/2009,
article 19, both from memory: above one per cent by weight, colours last).
"""

import re
from dataclasses import replace
from fractions import Fraction

import pytest
from bs4 import BeautifulSoup

from builder.compose.home.label_lists import label_lists
from builder.model.label.ingredient_list import Declared, IngredientList, Variant
from builder.model.recipe.ingredient import DeclaredAs
from tests.composing import of_example
from tests.making import sure
from tests.page_text import tree_of
from tests.regions import region

ADDED = re.compile(r"(?P<names>.+?) (?:before (?P<next>.+)|last)")


def sheet(name: str) -> BeautifulSoup:
    return tree_of(next(one.html for one in of_example("take-home sheet") if name in one.path))


def lists(name: str) -> dict[str, str]:
    found = {}
    for one in sheet(name).select(".ingredients"):
        choice = sure(one.b).get_text()
        found[choice.rstrip(":")] = " ".join(one.get_text().removeprefix(choice).split())
    return found


def put_together(whole: str, *words: str) -> str:
    """Return a list with what is to be added to it, as somebody with a pen would."""
    for each in words:
        assert each.startswith("add ")
        for one in each.removeprefix("add ").split(" and "):
            said = sure(ADDED.fullmatch(one))
            place = said["next"]
            whole = whole.replace(f", {place}", f", {said['names']}, {place}") if place else f"{whole}, {said['names']}"
    return whole


def test_what_each_choice_adds_to_the_plainest_list_is_said_once() -> None:
    found = lists("meadow-lotion--500-g")
    whole, (scent, color) = found.pop("No scent, no colour"), found.values()
    assert list(found) == ["With lavender essential oil or cedarwood essential oil", "With mica"]
    before, after = whole.split(", Ethylhexylglycerin")
    fragrant = f"{before}, Fragrance, Ethylhexylglycerin{after}"
    assert put_together(whole, scent) == fragrant
    assert put_together(whole, color) == f"{whole}, Mica"
    assert put_together(whole, scent, color) == f"{fragrant}, Mica"


def variant(names: str, *options: str | None, open_pairs: tuple[tuple[str, str], ...] = ()) -> Variant:
    entries = tuple(Declared(name, name, DeclaredAs.INGREDIENT, Fraction(1), Fraction(1)) for name in names.split(", "))
    chosen = tuple(zip(("scent", "colour"), options, strict=True))
    return Variant(chosen, IngredientList(entries, open_pairs=open_pairs))


PLAIN, ROSE = variant("Water, Oil", None, None), variant("Water, Rose, Oil", "rose", None)


def said(*variants: Variant) -> list[tuple[str, str]]:
    return [(one.choice, one.text) for one in label_lists(variants, region("EU"))]


def test_where_choices_together_are_what_each_adds_no_list_stands_for_them_together() -> None:
    mica, both = variant("Water, Oil, Mica", None, "mica"), variant("Water, Rose, Oil, Mica", "rose", "mica")
    shown = said(PLAIN, ROSE, mica, both)
    assert shown == [("No scent, no colour", "Water, Oil"), ("With rose", "add Rose before Oil"), ("With mica", "add Mica last")]


def test_of_two_choices_that_add_at_the_end_the_first_stands_after_the_last_name_however_many_can_be_made() -> None:
    found = lists("still-water-bath-salts--2-containers")
    assert list(found.values()) == [
        "Magnesium Sulfate, Sea Salt, Sodium Bicarbonate, Polysorbate 20",
        "add Fragrance after Polysorbate 20",
        "add Iron Oxides last",
        "add Ultramarines last",
    ]
    assert list(found)[2:] == ["With iron oxide red", "With ultramarine blue"]
    assert "If you added" not in sheet("still-water-bath-salts--2-containers").get_text()


def test_colour_that_is_chosen_first_stands_last_all_the_same() -> None:
    def of(names: str, colour: str | None, scent: str | None) -> Variant:
        return replace(variant(names, None, None), chosen=(("colour", colour), ("scent", scent)))

    shown = said(
        of("Salt", None, None), of("Salt, Mica", "mica", None), of("Salt, Rose", None, "rose"), of("Salt, Rose, Mica", "mica", "rose")
    )
    assert shown[1:] == [("With mica", "add Mica last"), ("With rose", "add Rose after Salt")]


@pytest.mark.parametrize(
    "others",
    [
        # Together they stand at another place than alone.
        (variant("Water, Oil, Mica", None, "mica"), variant("Water, Oil, Rose, Mica", "rose", "mica")),
        # Both before one name: in which order, the words for each do not tell.
        (variant("Water, Clay, Oil", None, "clay"), variant("Water, Clay, Rose, Oil", "rose", "clay")),
        # One that is not proven must not be put together from those that are.
        (variant("Water, Oil, Mica", None, "mica"), variant("Water, Rose, Oil, Mica", "rose", "mica", open_pairs=(("Rose", "Oil"),))),
    ],
)
def test_where_the_order_of_two_choices_is_not_told_by_each_every_list_stands_for_its_own(others: tuple[Variant, Variant]) -> None:
    shown = said(PLAIN, ROSE, *others)
    assert not [choice for choice, _ in shown if choice.startswith("With")]
    assert ("Rose, no colour", "the same, with Rose before Oil") in shown
    proven = [one for one in (PLAIN, ROSE, *others) if one.ingredients.is_proven]
    assert len(shown) == len(proven)


def test_a_list_that_does_more_than_add_stands_in_full() -> None:
    assert said(PLAIN, variant("Oil, Water, Rose", "rose", None))[1] == ("Rose, no colour", "Oil, Water, Rose")


def test_of_what_is_chosen_always_each_list_stands_for_its_own() -> None:
    assert said(ROSE, variant("Water, Rose, Oil, Mica", "rose", "mica"))[1] == ("Rose, mica", "the same, with Mica last")


@pytest.mark.parametrize(
    ("name", "weighs_water"),
    [("meadow-lotion", True), ("kitchen-garden-bar", True), ("hedgerow-bath-tea", False), ("orchard-sugar", False)],
)
def test_water_is_to_be_weighed_where_there_is_any(name: str, weighs_water: bool) -> None:
    rule = sure(sheet(name).select_one(".rule")).get_text()
    assert rule.startswith("Weigh everything, water too." if weighs_water else "Weigh everything. Use")
