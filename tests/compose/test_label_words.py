"""Net contents and ingredient lists in the words of a region."""

from dataclasses import dataclass, replace
from fractions import Fraction
from typing import cast

import pytest

from builder.compose.label.label_words import ingredient_text, net_contents, variant_name
from builder.model.label.ingredient_list import Declared, IngredientList, Variant
from builder.model.place import Name
from builder.model.recipe.filling import Filling, Portions
from builder.model.recipe.ingredient import DeclaredAs
from builder.model.recipe.product import Contact, DeclaredBy, Product
from builder.model.recipe.quantity import NO_MASS, Density, Mass
from builder.model.recipe.recipe import Fill, MeasuredDensity, Recipe
from builder.model.recipe.worked_batch import WorkedBatch
from tests.making import Number, recipe
from tests.regions import region as region_of
from tests.studios import sound_studio

WATER = MeasuredDensity(Density(Fraction(1)), "water at 4 °C")


@dataclass(frozen=True)
class Batch:
    """As much of a batch as its net contents are read from."""

    recipe: Recipe
    product: Product
    own: Filling


def batch(fill: Number, measure: DeclaredBy = DeclaredBy.WEIGHT, *, made_with_lye: bool = False, cured: Mass | None = None) -> Batch:
    product = Product("lotion", "Lotion", Contact.LEAVE_ON, made_with_lye, measure)
    mass = Mass(Fraction(fill))
    return Batch(
        recipe(density=WATER if measure is DeclaredBy.VOLUME else None),
        product,
        Filling(Fill(Name("jar"), mass), Portions(mass, None, 1, NO_MASS, mass), cured=cured),
    )


def contents(one: Batch, region: str) -> str:
    return net_contents(cast(WorkedBatch, one), one.own, region_of(region))


def written(fill: Number, measure: DeclaredBy = DeclaredBy.WEIGHT, *, made_with_lye: bool = False, region: str = "US") -> str:
    return contents(batch(fill, measure, made_with_lye=made_with_lye), region).replace("\u00a0", " ")


# C.R.C. c. 417 s. 21 (read): what is viscous goes by volume in Canada; 21 CFR 701.13(a) (seen as quoted): by weight in the United States.
def test_a_cream_is_declared_by_volume_in_canada_and_by_weight_in_the_united_states() -> None:
    product = Product("cream", "Cream", Contact.LEAVE_ON, False, DeclaredBy.WEIGHT, declared_by_in={"Canada": DeclaredBy.VOLUME})
    jar = replace(batch("100"), product=product, recipe=recipe(density=MeasuredDensity(Density(Fraction(1)), "weighed")))
    assert contents(jar, "Canada").replace("\u00a0", " ") == "100 mL"
    assert contents(jar, "US").startswith("Net Wt")


# 21 CFR 701.13(m), from memory: 1 3/4 quarts are 56 fluid ounces, 1 quart 1 pint 8 ounces.
def test_a_volume_is_divided_into_the_largest_units() -> None:
    assert written(Fraction(56) * Fraction("29.5735295625"), DeclaredBy.VOLUME).startswith("56 fl oz (1 qt 1 pt 8 fl oz) 1.65 L")


def test_a_volume_without_a_measured_density_is_declared_by_weight() -> None:
    bottle = batch("113", DeclaredBy.WEIGHT)
    by_volume = Batch(bottle.recipe, Product("wash", "Body wash", Contact.RINSE_OFF, False, DeclaredBy.VOLUME), bottle.own)
    assert contents(by_volume, "EU").replace("\u00a0", " ") == "113 g"


def test_a_bar_that_will_lose_water_has_no_weight_yet() -> None:
    assert written("120", made_with_lye=True) == ""


def test_a_bar_declares_what_it_weighs_after_the_cure() -> None:
    bar = batch("110", made_with_lye=True, cured=Mass(Fraction("95.7")))
    assert contents(bar, "US").replace("\u00a0", " ") == "Net Wt 3.37 oz (95.7 g)"


def declared(inci: str, plain: str, declared_as: DeclaredAs = DeclaredAs.INGREDIENT, **colour: str) -> Declared:
    return Declared(inci, plain, declared_as, Fraction(1, 10), Fraction(1, 10), colour)


LIST = IngredientList(
    (
        declared("Aqua", "water"),
        declared("Glycerin", "glycerin"),
        declared("Parfum", "Fragrance", DeclaredAs.FRAGRANCE),
        declared("Ultramarines", "ultramarine blue", DeclaredAs.COLOUR, us="Ultramarines", eu="CI 77007"),
    )
)

STOCK = sound_studio()[0]
REGIONS = STOCK.regions


def test_english_names_stand_first_in_the_united_states() -> None:
    assert ingredient_text(LIST, REGIONS["US"]) == "Water (Aqua), Glycerin, Fragrance, Ultramarines"


# 21 CFR 701.2 and 701.3(c), and the form of the ingredient dictionary: the first is the example of the label rules of the reference
# collection, the others from memory. A name that nobody knows has its English first; what the supplier wrote with brackets stands.
@pytest.mark.parametrize(
    ("inci", "plain", "written"),
    [
        ("Prunus Amygdalus Dulcis Oil", "sweet almond oil", "Prunus Amygdalus Dulcis (Sweet Almond) Oil"),
        ("Helianthus Annuus Seed Oil", "sunflower oil", "Helianthus Annuus (Sunflower) Seed Oil"),
        ("Butyrospermum Parkii Butter", "shea butter", "Butyrospermum Parkii (Shea) Butter"),
        ("Elaeis Guineensis Kernel Oil", "palm kernel oil", "Elaeis Guineensis (Palm) Kernel Oil"),
        ("Citrus Aurantium Amara Flower Water", "x", "Citrus Aurantium Amara (Bitter Orange) Flower Water"),
        ("Cera Alba", "beeswax", "Beeswax"),
        ("Paraffinum Liquidum", "mineral oil", "Mineral Oil"),
        ("Sucrose", "sugar", "Sucrose"),
        ("Olea Europaea (Olive) Fruit Oil", "olive oil", "Olea Europaea (Olive) Fruit Oil"),
        ("Bactris Gasipaes Fruit Oil", "peach palm oil", "Peach palm oil (Bactris Gasipaes Fruit Oil)"),
        ("Cetearyl Alcohol", "cetearyl alcohol", "Cetearyl Alcohol"),
    ],
)
def test_latin_names_have_their_english_in_the_united_states_alone(inci: str, plain: str, written: str) -> None:
    listed = IngredientList((declared(inci, plain),))
    assert ingredient_text(listed, REGIONS["US"]) == written
    assert ingredient_text(listed, REGIONS["EU"]) == inci


def test_no_card_of_the_stock_is_latin_alone_in_the_united_states() -> None:
    region, endings = (
        REGIONS["US"],
        ("Oil", "Butter", "Extract", "Powder", "Flower", "Leaf", "Root", "Water", "Wax", "Seed", "Juice", "Starch"),
    )
    for card in STOCK.ingredients.values():
        for inci, plain in zip(card.label_name.inci, card.label_name.plain, strict=True) if card.label_name else ():
            written = ingredient_text(IngredientList((declared(inci, plain),)), region)
            latin = len(inci.split()) > 2 and inci.endswith(endings) and plain.casefold() not in inci.casefold()
            assert "(" in written or not latin, inci


def test_inci_names_and_colour_numbers_stand_elsewhere() -> None:
    assert ingredient_text(LIST, REGIONS["EU"]) == "Aqua, Glycerin, Parfum, CI 77007"


def test_a_variant_is_named_by_what_was_chosen() -> None:
    assert variant_name(Variant((("scent", "Lavender oil"), ("colour", None)), LIST)) == "lavender oil, no colour"
