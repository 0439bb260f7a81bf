"""What goes stale or spoils, and in what: recipes that are told of, each beside its twins. Why stands beside the rules, with its source."""

from collections.abc import Callable, Iterable
from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest

from builder.check.formula.plants import find_plants_out_of_place
from builder.check.keeping.alcohol import least_alcohol
from builder.check.keeping.keeping import find_what_does_not_keep
from builder.check.keeping.low_risk import grows_nothing
from builder.check.keeping.preservation import find_products_that_do_not_keep
from builder.model.hazard import Hazard
from builder.model.recipe.figure import Known
from builder.model.recipe.ingredient import CountsAs, Ingredient, LabelName, MixesWith
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.recipe.recipe import AmountsAs, Recipe
from builder.model.studio import Studio
from tests.check.test_at_the_edge import BLEND, CLEAR, mixed
from tests.check.test_what_labels_leave_unsaid import of, said
from tests.making import card, figures, grams, lye, phase, recipe, share, told
from tests.reckon.test_guests import STUDIO


def kind(name: str, of_kind: IngredientKind, counts: CountsAs = CountsAs.OTHER, **changed: Any) -> Ingredient:
    return replace(card(name, counts), kind=of_kind, **changed)


LIQUID, SPOILS = CountsAs.LIQUID, (Hazard.SPOILS,)
CARDS = (
    kind("orange juice", IngredientKind.LIQUID, LIQUID), kind("aloe vera juice of ours", IngredientKind.LIQUID, LIQUID),
    kind("green tea", IngredientKind.LIQUID, LIQUID), kind("dry tea", IngredientKind.HERB), kind("fresh mint", IngredientKind.HERB),
    kind("fresh mint extract", IngredientKind.HERB), kind("fresh lemon oil", IngredientKind.ESSENTIAL_OIL),
    kind("our milk", IngredientKind.MILK, LIQUID), kind("milk powder", IngredientKind.MILK),
    kind("petals", IngredientKind.HERB, hazards=SPOILS), kind("dry petals", IngredientKind.HERB),
    kind("coffee", IngredientKind.EXFOLIANT, hazards=SPOILS), kind("pumice", IngredientKind.EXFOLIANT),
    kind("oats", IngredientKind.GRAIN, hazards=SPOILS), kind("oat dust", IngredientKind.GRAIN, hazards=(Hazard.SPOILS, Hazard.DUST)),
    kind("hydrosol", IngredientKind.LIQUID, LIQUID, hazards=SPOILS), kind("our sugar", IngredientKind.SUGAR, hazards=SPOILS),
    kind("odd oil", IngredientKind.OIL, hazards=SPOILS),
    replace(card("syrup", water_content=20), mixes_with=MixesWith.WATER), replace(card("dry sweet"), mixes_with=MixesWith.WATER),
    replace(card("oily syrup", water_content=20), mixes_with=MixesWith.OIL),
    replace(card("spirit", water_content=(4, 6)), label_name=LabelName(("Alcohol",), ("alcohol",), Known.MEMORY)),
)  # fmt: skip
Rule = Callable[[Studio], Iterable[Any]]


def names(rule: Rule, one: Recipe) -> list[str]:
    shelf = {**STUDIO.ingredients, **{known.key: known for known in CARDS}}
    return [f"{found.name} {found.weight}" for found in told(rule(replace(STUDIO, ingredients=shelf, recipes={"one": one})))]


FRESH = "fresh-food-in-product"


@pytest.mark.parametrize(
    ("one", "found"),
    [
        (of("lotion", "water", "orange juice"), [f"{FRESH} stop"]),
        (of("lotion", "water", "sunflower oil", choice="orange juice"), [f"{FRESH} stop"]),
        (of("scrub", "sea salt", "orange juice"), [f"{FRESH} caution"]),
        (of("lotion", "water", "fresh mint"), [f"{FRESH} stop"]),
        (of("balm", "sunflower oil", "fresh mint"), [f"{FRESH} stop"]),
        (of("lotion", "water", "fresh mint extract"), []),
        (of("lotion", "water", "fresh lemon oil"), []),
        (of("lotion", "water", "aloe vera juice"), []),
        # Tea and milk only where water is: dry leaves and milk powder in salts are none.
        (of("lotion", "water", "green tea"), [f"{FRESH} stop"]),
        (of("balm", "sunflower oil", "dry tea"), []),
        (of("lotion", "water", "our milk"), [f"{FRESH} stop"]),
        (of("bath salts", "sea salt", "milk powder"), []),
        (of("cold-process soap", "sunflower oil", "orange juice", lye=lye()), []),
        (of("lotion", "water", "orange juice", single_use=True, **said("Use it at once.")), []),
    ],
)
def test_fresh_food_is_in_what_keeps(one: Recipe, found: list[str]) -> None:
    assert names(find_what_does_not_keep, one) == found


@pytest.mark.parametrize(
    ("changed", "found"),
    [
        (said("Use it at once."), []),
        (said("For a single use."), []),
        ({"directions": "Discard what is left."}, []),
        ({"storage": "Make it on the same day."}, []),
        (said("Keep it cool."), ["single-use-unsaid caution"]),
        ({}, ["single-use-unsaid caution"]),
        ({"keeps": "2 days", **said("Use it at once.")}, ["keeps-unsupported caution"]),
        ({"keeps": "1 day", **said("Use it at once.")}, []),
        ({"keeps": "in the cold", **said("Use it at once.")}, []),
    ],
)
def test_what_is_for_a_single_use_says_so(changed: dict[str, Any], found: list[str]) -> None:
    assert names(find_what_does_not_keep, of("lotion", "water", "sunflower oil", single_use=True, **changed)) == found


@pytest.mark.parametrize(
    ("one", "found"),
    [
        (of("lotion", "water", "petals"), ["spoils-in-water"]),
        (of("lotion", "water", "dry petals"), ["plants-in-oil"]),
        (of("lotion", "water", "our sugar"), ["spoils-in-water"]),
        (of("lotion", "water", "odd oil"), []),
        (of("lotion", "hydrosol", "sunflower oil"), ["spoils-in-water"]),
        # Bought flower water is silent in what is preserved in whole.
        (of("lotion", "hydrosol", "sunflower oil", BLEND), []),
        (of("lotion", "water", "petals", BLEND), ["spoils-in-water"]),
        (of("balm", "sunflower oil", "petals"), ["plants-in-oil"]),
        (of("balm", "sunflower oil", "dry petals"), ["plants-in-oil"]),
        (of("balm", "sunflower oil", "oats"), []),
        (of("balm", "sunflower oil", "petals", single_use=True), []),
        (of("lotion", "water", "petals", single_use=True), []),
        (of("bath salts", "sea salt", "dry petals"), ["plants-in-drain"]),
        (of("bath salts", "sea salt", "dry petals", single_use=True), ["plants-in-drain"]),
        (of("bath salts", "sea salt", "coffee"), ["plants-in-drain"]),
        (of("bath salts", "sea salt", "pumice"), []),
        (of("bath salts", "sea salt", "oats"), ["plants-in-drain"]),
        (of("bath salts", "sea salt", "oat dust"), []),
        (of("bath salts", "sea salt", "dry petals", directions="Tie it into a pouch."), []),
        (of("bath salts", "sea salt", "dry petals", **said("Strain the water.")), []),
        (of("bath salts", "sea salt", choice="dry petals"), ["plants-in-drain"]),
        (of("cold-process soap", "sunflower oil", "dry petals", lye=lye()), []),
    ],
)
def test_plants_stay_where_they_spoil_scratch_or_clog(one: Recipe, found: list[str]) -> None:
    assert names(find_plants_out_of_place, one) == [f"{name} caution" for name in found]


NONE, STALE, WET = "no-preservative", "no-antioxidant caution", "water-gets-in caution"


@pytest.mark.parametrize(
    ("one", "found"),
    [
        (of("lotion", "water", "glycerin"), [f"{NONE} stop"]),
        (of("scrub", "water", "glycerin"), [f"{NONE} caution"]),
        (of("lotion", "water", "glycerin", BLEND), []),
        (of("lotion", "water", "glycerin", single_use=True), []),
        (of("lotion", "glycerin", choice="water"), [f"{NONE} stop"]),
        (of("balm", "beeswax", "sunflower oil"), [STALE]),
        (of("balm", "beeswax", "sunflower oil", "vitamin E"), []),
        (of("balm", "beeswax", "jojoba oil"), []),
        (of("scrub", CLEAR, "sunflower oil"), []),
        (of("lotion", "water", "sunflower oil", BLEND, keeps="3 months"), []),
        (of("lotion", "water", "sunflower oil", BLEND, keeps="4 months"), [STALE]),
        # What wet hands reach into, and what in it feeds what grows.
        (of("scrub", "our sugar", "glycerin"), [WET]),
        (of("scrub", "sea salt", "glycerin"), []),
        (of("scrub", "our sugar", "glycerin", BLEND), []),
        (of("bath salts", "our sugar", "glycerin"), []),
        (of("scrub", "our sugar", CLEAR), []),
        # A syrup in what is else free of water.
        (of("balm", "beeswax", "syrup"), [f"{NONE} caution"]),
        (of("balm", "beeswax", "dry sweet"), []),
        (of("balm", "beeswax", "oily syrup"), []),
        (of("balm", "beeswax", "syrup", BLEND), []),
        (of("bath salts", "sea salt", "syrup"), []),
        (of("cold-process soap", "sunflower oil", "water", lye=lye()), []),
        (of("lotion", "water", "what nobody knows"), []),
    ],
)
def test_what_holds_water_or_oil_keeps_by_something(one: Recipe, found: list[str]) -> None:
    assert names(find_products_that_do_not_keep, one) == found


# Spirit of 4 to 6 % of water is alcohol to 94 % at the least: of half of it in a whole there are 47 %.
@pytest.mark.parametrize(
    ("one", "alcohol"),
    [
        (mixed(spirit="50", water="50"), "0.47"),
        (recipe(phase("all", {"spirit": grams(50), "water": grams(150)}), amounts_as=AmountsAs.WEIGHTS), "0.235"),
        (mixed(spirit="50"), "0.47"),
        (mixed(water="50"), "0"),
        (recipe(phase("all", {"spirit": share(50), "olive oil": share(100)}), amounts_as=AmountsAs.PERCENT_OF_OILS), "0"),
    ],
)
def test_alcohol_counts_without_the_water_that_it_brings(one: Recipe, alcohol: str) -> None:
    here = replace(STUDIO, ingredients={**STUDIO.ingredients, **{known.key: known for known in CARDS}})
    assert least_alcohol(one, here) == Fraction(alcohol)


# ISO 29621: above 20 % of alcohol nothing grows.
@pytest.mark.parametrize(("spirit", "nothing"), [("25", False), ("25.01", True)])
def test_above_a_fifth_of_alcohol_nothing_grows(spirit: str, *, nothing: bool) -> None:
    ours = replace(CARDS[-1], figures={"water content": figures(20)})
    here = replace(STUDIO, ingredients={**STUDIO.ingredients, "spirit": ours})
    assert grows_nothing(mixed(spirit=spirit, water="50"), here) is nothing
