"""What is asked for where a list of ingredients lacks a name or its order is open, and fats that keep by themselves at the edge."""

from dataclasses import replace
from typing import Any

import pytest

from builder.check.batches import Batch, BatchFinding
from builder.check.keeping.preservation import find_products_that_do_not_keep
from builder.check.label.label_order import MOST_NAMED, find_open_label_orders
from builder.model.label.ingredient_list import IngredientList, Question
from builder.model.place import Name
from builder.model.recipe.figure import Known
from builder.model.recipe.ingredient import LabelName
from builder.model.recipe.recipe import Choice, Cure, ListedAs, Recipe
from tests.check.test_at_the_edge import levels, mixed
from tests.check.test_seldom_met import seen_in
from tests.making import figures, lye, share, soap, sure, told
from tests.reckon.test_guests import STUDIO

BAR = replace(soap({"olive oil": 70, "coconut oil": 30}, lye(), {"kaolin clay": 1}), product="cold-process soap")
MADE = replace(BAR, listed=ListedAs.MADE, cure=Cure("6 weeks", share(0), "ten bars weighed"))
DECLARES, BECOMES = "does not say how an ingredient list declares it", "does not say what its soap is called"


def listing(of: Recipe, **changed: Any) -> Batch:
    """Return a batch whose one list of ingredients says this."""
    one = seen_in("EU", of)
    variant = one.filling.variants[0]
    ingredients: IngredientList = replace(variant.ingredients, **changed)
    return replace(one, filling=replace(one.filling, variants=(replace(variant, ingredients=ingredients),)))


# Only a soap that lists what came out of the pot asks what its fats are called as soap; of clay nothing is made.
@pytest.mark.parametrize(
    ("of", "name", "said"), [(BAR, "olive oil", DECLARES), (MADE, "olive oil", BECOMES), (MADE, "kaolin clay", DECLARES)]
)
def test_a_name_is_asked_for_as_it_is_missing(of: Recipe, name: str, said: str) -> None:
    written = STUDIO.ingredients[name].name
    (found,) = told(find_open_label_orders(listing(of, nameless=(written,), open_pairs=(("one", "other"),))))
    assert found.name == "label-name-missing" and said in found.wrong


def test_a_soap_of_a_fat_whose_soap_has_no_name_gets_no_list() -> None:
    oil = replace(STUDIO.ingredients["olive oil"], saponified_as="")
    one = seen_in("EU", MADE, oil)
    assert all(variant.ingredients.nameless == (oil.name,) for variant in one.filling.variants)
    assert [finding.name for finding in told(find_open_label_orders(one))] == ["label-name-missing"]


@pytest.mark.parametrize(("listed", "found"), [(("Aqua", "Glycerin"), []), (("Aqua", "Glycerin", "aqua"), ["label-name-twice"])])
def test_a_card_lists_each_name_once(listed: tuple[str, ...], found: list[str]) -> None:
    oil = replace(STUDIO.ingredients["olive oil"], label_name=LabelName(listed, listed, Known.SUPPLIER))
    assert [one.name for one in told(find_open_label_orders(seen_in("EU", BAR, oil))) if one.name != "label-order-open"] == found


@pytest.mark.parametrize("more", [-1, 0, 1, 2])
def test_of_many_pairs_the_first_are_named_and_the_others_told_of_once(more: int) -> None:
    pairs = tuple((f"a {number:02}", f"b {number:02}") for number in range(MOST_NAMED + more))
    found = list(find_open_label_orders(listing(mixed(glycerin="3"), open_pairs=pairs, question=None)))
    named = [one.case for one in found if isinstance(one, BatchFinding)]
    assert named == [" and ".join(pair) for pair in pairs[:MOST_NAMED]] + ["other pairs"] * (more > 0)


# With choices less of them closes an order, unless a figure would and both names are of what is weighed.
@pytest.mark.parametrize(
    ("pair", "asked", "lowers"),
    [
        (("glycerin", "sunflower oil"), True, False),
        (("glycerin", "sunflower oil"), False, True),
        (("glycerin", "lavender essential oil"), True, True),
    ],
)
def test_less_of_a_choice_is_asked_for_where_no_figure_helps(pair: tuple[str, str], *, asked: bool, lowers: bool) -> None:
    choices = (Choice("scent", (Name("lavender essential oil"), None), share("0.5")),)
    question = Question("glycerin", "sorbitol", 1) if asked else None
    called = [sure(STUDIO.ingredients[name].label_name).plain[0] for name in pair]
    one = listing(replace(mixed(glycerin="3"), choices=choices), open_pairs=(tuple(called),), question=question)
    (found,) = told(find_open_label_orders(one))
    assert found.remedy.startswith("Lower `at most:`") is lowers


# A fat with 12 % or less that is polyunsaturated goes stale late (common practice, no source).
@pytest.mark.parametrize(("most", "found"), [("12", 0), ("12.1", 1)])
def test_a_fat_with_little_that_goes_stale_keeps_by_itself(most: str, found: int) -> None:
    known = STUDIO.ingredients["sunflower oil"]
    ours = replace(known, figures={**known.figures, "polyunsaturated": figures(0, most)})
    here = replace(STUDIO, ingredients={**STUDIO.ingredients, "sunflower oil": ours})
    assert levels(find_products_that_do_not_keep(replace(here, recipes={"one": mixed()}))) == ["no-antioxidant caution"] * found
