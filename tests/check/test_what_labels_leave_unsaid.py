"""What a label has to say of what slips, stains, looks like food, burns, dusts and scratches: a recipe that is told of, and its twins.

Why each is said stands beside the rule, with its source; here is for which products, and which words of a label are enough.
"""

from collections.abc import Callable, Iterable
from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest

from builder.check.formula.charges_opposed import find_opposed_charges
from builder.check.formula.dust_unsaid import find_dust_unsaid
from builder.check.formula.fire_unsaid import find_fire_unsaid
from builder.check.formula.fizz_and_water import find_fizz_and_water
from builder.check.formula.oil_on_bath import find_oil_on_the_bath
from builder.check.formula.too_rough import find_grains_too_rough
from builder.check.label.label_unsaid import find_what_labels_leave_unsaid
from builder.model.finding import Finding
from builder.model.hazard import Hazard
from builder.model.place import Name, Place
from builder.model.recipe.body_part import BodyPart
from builder.model.recipe.ingredient import Charge, CountsAs, Ingredient
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.recipe.recipe import Choice, Recipe
from builder.model.studio import Studio
from tests.check.test_at_the_edge import CLEAR, mixed
from tests.making import card, figures, lye, phase, recipe, share, told
from tests.reckon.test_guests import LOTION, STUDIO

Rule = Callable[[Studio], Iterable[Any]]
SLIPS, STAINS = replace(card("slips"), hazards=(Hazard.SLIPPERY,)), replace(card("stains"), hazards=(Hazard.STAINS,))
FOAMS = replace(card("foams"), kind=IngredientKind.SURFACTANT)
FOOD = replace(card("cocoa"), like_food=True)
DUST = replace(card("dusts"), hazards=(Hazard.DUST,))
SPIRIT = card("spirit", flash_point=(17, 20))
ROUGH = replace(card("shells"), too_rough_for=(BodyPart.FACE,))
SALT = replace(ROUGH, name="rough salt", kind=IngredientKind.SALT)
PLUS, MINUS = replace(card("plus"), charge=Charge.CATIONIC), replace(card("minus"), charge=Charge.ANIONIC)
SCENT = replace(card("our scent"), kind=IngredientKind.FRAGRANCE)
SPREADS = replace(card("spreads"), kind=IngredientKind.EMULSIFIER)
FATTY = card("our fatty acid", CountsAs.FATTY_ACID)
CARDS = (SLIPS, STAINS, FOAMS, FOOD, DUST, SPIRIT, ROUGH, SALT, PLUS, MINUS, SCENT, SPREADS, FATTY)


def of(product: str, *names: str, **changed: Any) -> Recipe:
    """Return a recipe of as much of each; `choice` names what students may add."""
    whole = {name: share(Fraction(100, len(names))) for name in names}
    choice = changed.pop("choice", "")
    choices = (Choice("colour", (Name(choice), None), share(1)),) if choice else ()
    return replace(recipe(phase("all", whole), choices=choices), **{"product": product, "name": "One", "about": "", **changed})


def found(rule: Rule, one: Recipe, *cards: Ingredient, region: str = "US", **studio: Any) -> list[Finding]:
    shelf = {**STUDIO.ingredients, **{known.key: known for known in (*CARDS, *cards)}}
    here = replace(STUDIO, ingredients=shelf, recipes={"one": one}, profile=replace(STUDIO.profile, region=region), **studio)
    return told(rule(here))


def names(rule: Rule, one: Recipe, *cards: Ingredient, **studio: Any) -> list[str]:
    return [finding.name for finding in found(rule, one, *cards, **studio)]


def said(*cautions: str) -> dict[str, Any]:
    return {"label_cautions": cautions}


@pytest.mark.parametrize(
    ("one", "names_of"),
    [
        (of("bath salts", "sea salt", "slips"), ["slippery-unsaid"]),
        (of("bath salts", "sea salt", choice="slips"), ["slippery-unsaid"]),
        (of("scrub", "sea salt", "slips"), ["slippery-unsaid"]),
        (of("scrub", "sea salt", "slips", used_on=(BodyPart.HAND,)), []),
        (of("scrub", "sea salt", "slips", used_on=(BodyPart.HAND, BodyPart.FACE)), []),
        (of("scrub", "sea salt", "slips", used_on=(BodyPart.HAND, BodyPart.BODY)), ["slippery-unsaid"]),
        (of("bath salts", "sea salt", "slips", **said("The tub gets slippery.")), []),
        (of("bath salts", "sea salt", "slips", directions="Mind that the tub is slippery."), []),
        (of("scrub", CLEAR, "slips"), []),
        (of("cold-process soap", "sea salt", "slips", lye=lye()), []),
        (of("balm", "sunflower oil", "slips"), []),
        (of("bath salts", "sea salt", "stains"), ["stain-unsaid"]),
        (of("bath salts", "sea salt", choice="stains"), ["stain-unsaid"]),
        (of("bath salts", "sea salt", "stains", **said("It can stain.")), []),
        (of("bath salts", "sea salt", "stains", **said("Rinse the tub.")), []),
        (of("bath salts", "sea salt", "stains", **said("Rinse off.")), ["stain-unsaid"]),
        (of("scrub", "sea salt", "stains"), []),
        (of("bath salts", "sea salt", "foams"), ["directions-missing"]),
        (of("bath salts", "sea salt", CLEAR), ["directions-missing"]),
        (of("bath salts", "sea salt", "foams", directions="Pour a capful."), []),
        (of("scrub", "sea salt", "foams"), []),
        (of("bath salts", "sea salt", "cocoa"), ["food-look-alike"]),
        (of("bath salts", "sea salt", choice="cocoa"), ["food-look-alike"]),
        (of("bath salts", "sea salt", "cocoa", **said("Not to be eaten.")), []),
        (of("bath salts", "sea salt", "cocoa", **said("No food.")), []),
        (of("bath salts", "sea salt", "cocoa", **said("Do not drink it.")), []),
        (of("balm", "sunflower oil", "cocoa"), []),
        (of("cold-process soap", "sunflower oil", "cocoa", lye=lye()), []),
        (of("liquid soap", "sunflower oil", "cocoa", lye=lye()), ["food-look-alike"]),
        (of("bath salts", "sea salt", "what nobody knows", "slips"), []),
    ],
)
def test_a_label_says_what_water_and_children_make_of_a_product(one: Recipe, names_of: list[str]) -> None:
    assert names(find_what_labels_leave_unsaid, one) == names_of


# 21 CFR 740.17 is law in the US.
def test_directions_for_foaming_baths_are_asked_for_where_that_is_law() -> None:
    assert names(find_what_labels_leave_unsaid, of("bath salts", "sea salt", "foams"), region="EU") == []


def test_the_youngest_who_make_what_looks_like_food_are_named() -> None:
    make = LOTION.makes[0]
    one = of("bath salts", "sea salt", "cocoa", key=make.recipe.text)
    classes = {str(age): replace(LOTION, key=str(age), youngest=age, makes=(make,)) for age in (12, 8, 16)}
    shelf = {**STUDIO.ingredients, FOOD.key: FOOD}
    here = replace(STUDIO, ingredients=shelf, recipes={one.key: one}, classes=classes)
    (young,) = told(find_what_labels_leave_unsaid(here))
    assert "A class from 8 years on makes it" in young.wrong
    (nobody,) = told(find_what_labels_leave_unsaid(replace(here, classes={})))
    assert "A class from" not in nobody.wrong


# More than half of a liquid that is alcohol goes on burning (content/constants.yaml): what flashes below 23 °C counts, of scent nothing.
@pytest.mark.parametrize(("percent", "changed", "is_found"), [
    ("51", {}, True), ("12", {}, False), ("51", said("Flammable."), False), ("51", said("Keep it from fire."), False),
    ("51", said("No sparks."), False), ("51", {"storage": "Away from heat."}, False), ("51", {"directions": "Spray on."}, True),
    ("51", {"lye": lye()}, False),
])  # fmt: skip
def test_a_label_says_that_a_product_burns(percent: str, changed: dict[str, Any], *, is_found: bool) -> None:
    shares = {"water": share(100 - Fraction(percent)), "spirit": share(percent)}
    one = replace(recipe(phase("all", shares)), **{"product": "lotion", **changed})
    assert names(find_fire_unsaid, one) == ["fire-unsaid"] * is_found


def test_what_burns_late_and_what_counts_as_fat_is_no_spirit() -> None:
    edge = STUDIO.constants["flash point below which a liquid is highly flammable"].typical
    one = replace(recipe(phase("all", {"water": share(40), "spirit": share(60)})), product="lotion")
    for flash, counts, is_found in ((edge, CountsAs.OTHER, False), (edge - 1, CountsAs.OTHER, True), (edge - 1, CountsAs.FAT, False)):
        ours = replace(SPIRIT, counts_as=counts, figures={"flash point": figures(flash)})
        assert names(find_fire_unsaid, one, ours) == ["fire-unsaid"] * is_found
    assert names(find_fire_unsaid, one, replace(SPIRIT, figures={})) == []
    (told_of,) = found(find_fire_unsaid, one)
    assert "holds 60 % of what burns" in told_of.wrong


# The edge of the constant: at that very share it does not go on burning.
def test_a_product_burns_above_the_share_that_is_known() -> None:
    edge = STUDIO.constants["alcohol above which a liquid goes on burning"].typical
    for percent, is_found in ((edge, False), (edge + Fraction(1, 100), True)):
        one = replace(recipe(phase("all", {"water": share(100 - percent), "spirit": share(percent)})), product="lotion")
        assert names(find_fire_unsaid, one) == ["fire-unsaid"] * is_found


@pytest.mark.parametrize(
    ("one", "is_found"),
    [
        (of("balm", "dusts"), True),
        (of("balm", "dusts", "sunflower oil"), False),
        (of("balm", "dusts", "water"), False),
        (of("balm", "dusts", "lotion base"), False),
        (of("balm", "dusts", "sea salt"), True),
        (of("balm", "sea salt"), False),
        (of("bath salts", "dusts"), False),
        (of("balm", "dusts", **said("Do not breathe it in.")), False),
        (of("balm", "dusts", **said("Do not inhale.")), False),
        (of("balm", "dusts", **said("Keep it from the nose.")), False),
        (of("balm", "dusts", **said("It raises dust.")), False),
        (of("balm", "dusts", **said("Shake it.")), True),
    ],
)
def test_a_loose_powder_says_that_it_is_not_to_be_breathed_in(one: Recipe, *, is_found: bool) -> None:
    assert names(find_dust_unsaid, one) == ["dust-unsaid"] * is_found


@pytest.mark.parametrize(
    ("one", "is_found"),
    [
        (of("scrub", "shells", "sunflower oil", name="A facial scrub"), True),
        (of("scrub", "shells", "sunflower oil", name="For the face"), True),
        (of("scrub", "shells", "sunflower oil", name="A surface scrub"), False),
        (of("scrub", "shells", "sunflower oil", used_on=(BodyPart.FACE,)), True),
        (of("scrub", "shells", "sunflower oil", used_on=(BodyPart.BODY,)), False),
        (of("scrub", "sunflower oil", used_on=(BodyPart.FACE,), choice="shells"), True),
        (of("scrub", "rough salt", "sunflower oil", used_on=(BodyPart.FACE,)), True),
        # Salt is dissolved in what holds water, shells are not.
        (of("scrub", "rough salt", "water", used_on=(BodyPart.FACE,)), False),
        (of("scrub", "shells", "water", used_on=(BodyPart.FACE,)), True),
        (of("cold-process soap", "rough salt", "sunflower oil", used_on=(BodyPart.FACE,), lye=lye()), False),
    ],
)
def test_grains_scratch_the_face(one: Recipe, *, is_found: bool) -> None:
    assert names(find_grains_too_rough, one) == ["too-rough"] * is_found


@pytest.mark.parametrize(
    ("one", "why"),
    [
        (of("bath salts", "sea salt", "sunflower oil"), "makes them slip"),
        (of("bath salts", "sea salt", "our scent"), "neat scent then meets the skin"),
        # Scent first: neat on the water it meets the skin undiluted.
        (of("bath salts", "sunflower oil", "our scent"), "neat scent then meets the skin"),
        (of("bath salts", "sea salt", choice="our scent"), "neat scent then meets the skin"),
        (of("bath salts", "sea salt", choice="sunflower oil"), ""),
        (of("bath salts", "sea salt", "our scent", "spreads"), ""),
        (of("bath salts", "sea salt", "our scent", "foams"), ""),
        (of("bath salts", "sea salt", "our fatty acid"), ""),
        (of("scrub", "sea salt", "our scent"), ""),
        (of("bath salts", "sea salt"), ""),
    ],
)
def test_oil_floats_on_the_bath_unless_something_spreads_it(one: Recipe, why: str) -> None:
    told_of = found(find_oil_on_the_bath, one)
    assert [finding.name for finding in told_of] == ["oil-floats-on-bath"] * bool(why)
    assert all(why in finding.wrong for finding in told_of)


@pytest.mark.parametrize(
    ("one", "what"),
    [
        (of("lotion", "plus", "minus"), "and minus is anionic"),
        (of("lotion", "plus", "water"), ""),
        (of("lotion", "minus", "water"), ""),
        (of("cold-process soap", "plus", "sunflower oil", lye=lye()), "and the soap is anionic"),
        (of("melt-and-pour soap", CLEAR, "plus"), "is anionic"),
        (of("melt-and-pour soap", CLEAR, "minus"), ""),
    ],
)
def test_two_of_opposite_charge_bind_each_other(one: Recipe, what: str) -> None:
    told_of = found(find_opposed_charges, one)
    assert [finding.name for finding in told_of] == ["charges-opposed"] * bool(what)
    assert all(what in finding.wrong for finding in told_of)


@pytest.mark.parametrize(
    ("one", "is_found"),
    [
        (of("bath bomb", "sodium bicarbonate", "citric acid", "water"), True),
        (of("bath bomb", "sodium bicarbonate", "citric acid"), False),
        (of("bath bomb", "sodium bicarbonate", "water"), False),
        (of("bath bomb", "citric acid", "water"), False),
        (of("cold-process soap", "sodium bicarbonate", "citric acid", "water", lye=lye()), False),
    ],
)
def test_what_fizzes_and_water_do_not_go_together(one: Recipe, *, is_found: bool) -> None:
    assert names(find_fizz_and_water, one) == ["fizz-and-water"] * is_found


# A file of which something could not be read, or a name that nobody knows, is a finding of its own.
def test_of_what_is_not_known_whole_nothing_is_said() -> None:
    for one in (mixed(water="50"), of("bath salts", "sea salt", "slips")):
        assert names(find_what_labels_leave_unsaid, replace(one, in_part=True, place=Place("recipes/one.yaml"))) == []
