"""What passes as nothing but soap: 21 CFR 701.20(a), read: the bulk of the nonvolatile matter is an alkali salt of fatty acids, and the
cleaning comes from it. The examples are worked out by hand: the share of soap in all that is not water."""

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction

import pytest

from builder.model.recipe.figure import Known
from builder.model.recipe.ingredient import CountsAs, Ingredient, LabelName
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.recipe.product import Contact, DeclaredBy, Product
from builder.model.recipe.size import TotalSize
from tests.making import card, fat, grams, lye, phase, recipe, scale, share, soap, worked
from tests.studios import sound_studio

STOCK = sound_studio()[0].ingredients
MELTED, BOILED = (
    Product("melt-and-pour soap", "Soap", Contact.RINSE_OFF, False, DeclaredBy.WEIGHT),
    Product("cold-process soap", "Soap", Contact.RINSE_OFF, True, DeclaredBy.WEIGHT),
)


def base(**shares: tuple[int, int] | None) -> Ingredient:
    names = tuple(name.replace("_", " ") for name in shares)
    stated = {number: (Fraction(ends[0]) / 100, Fraction(ends[1]) / 100) for number, ends in enumerate(shares.values()) if ends}
    label = LabelName(names, names, Known.SUPPLIER, stated)
    return replace(card("base", CountsAs.BASE), kind=IngredientKind.SOAP_BASE, label_name=label)


def is_soap(a_base: Ingredient, **also: int) -> bool:
    lines = {"base": share(100 - sum(also.values()))} | {name.replace("_", " "): share(percent) for name, percent in also.items()}
    made = recipe(phase("all", lines))
    cards = {**STOCK, "base": a_base}
    return worked(made, MELTED, TotalSize(grams(1000)), cards, (scale("0.01"),)).is_true_soap


@pytest.mark.parametrize(
    ("shares", "proven"),
    [
        # 35 of 60 that stay are soap, then 30 of 60, then 29 of 60.
        ({"Aqua": (40, 40), "Sodium_Stearate": (35, 35), "Glycerin": (25, 25)}, True),
        ({"Aqua": (40, 40), "Sodium_Stearate": (30, 30), "Glycerin": (30, 30)}, True),
        ({"Aqua": (40, 40), "Glycerin": (31, 31), "Sodium_Stearate": (29, 29)}, False),
        # At the worst 40 of water and 32 of glycerin leave 28 of 60, at the best 40 of 65.
        ({"Aqua": (35, 40), "Glycerin": (25, 32), "Sodium_Stearate": (10, 20), "Sodium_Laurate": (10, 20)}, False),
        # No shares, so that all may be glycerin but for its place in the order.
        ({"Glycerin": None, "Aqua": None, "Sodium_Stearate": None}, False),
        ({"Sodium_Palmate": None, "Sodium_Cocoate": None, "Aqua": None}, True),
        # A detergent, and a name that nobody knows.
        ({"Sodium_Stearate": (60, 60), "Aqua": (30, 30), "Sodium_Lauryl_Sulfate": (10, 10)}, False),
        ({"Sodium_Stearate": (60, 60), "Aqua": (30, 30), "Disodium_Ricinoleamido_Sulfosuccinate": (10, 10)}, False),
    ],
)
def test_a_melted_base_is_soap_only_where_its_list_proves_it(shares: Mapping[str, tuple[int, int] | None], proven: bool) -> None:
    assert is_soap(base(**shares)) is proven


def test_a_base_whose_list_nobody_has_copied_is_not_proven() -> None:
    assert not is_soap(replace(base(Aqua=None), label_name=None))


def test_what_is_stirred_in_counts() -> None:
    # 35 of 60 that stay in the base; of 70 % base and 30 % sugar 24.5 of 72.
    good = base(Aqua=(40, 40), Sodium_Stearate=(35, 35), Glycerin=(25, 25))
    assert is_soap(good, kaolin_clay=2)
    assert not is_soap(good, white_sugar=30)
    assert not is_soap(good, sodium_cocoyl_isethionate=5)


def test_what_lye_makes_is_soap_unless_something_else_is_most_of_it() -> None:
    def made(extra: Mapping[str, int] | None) -> bool:
        plain = soap({"olive oil": 70, "coconut oil": 30}, lye(), extra)
        return worked(plain, BOILED, TotalSize(grams(1000)), STOCK, (scale("0.01"),)).is_true_soap

    assert made(None)
    assert made({"activated charcoal": 1})
    assert not made({"table salt": 150})
    assert not made({"sodium lauryl sulfate": 5})


# By hand, 100 g of a fat of 190 mg/g: with 13.55 g of sodium hydroxide it gives 10.40 g of glycerol and 103.15 g of soap, which is half of
# what stays with 92.75 g of salt.
@pytest.mark.parametrize(("salt", "proven"), [(92, True), (94, False)])
def test_soap_is_half_of_what_stays_or_more(salt: int, *, proven: bool) -> None:
    plain = soap({"fat": 100}, lye(superfat=0, purity=100), {"table salt": salt})
    stock = {**STOCK, "fat": fat("fat", 190)}
    assert worked(plain, BOILED, TotalSize(grams(1000)), stock, (scale("0.0001"),)).is_true_soap is proven


def test_a_lotion_is_no_soap() -> None:
    made = recipe(phase("all", {"water": share(98), "sodium lauryl sulfate": share(2)}))
    lotion = Product("body wash", "Body wash", Contact.RINSE_OFF, False, DeclaredBy.VOLUME)
    assert not worked(made, lotion, TotalSize(grams(1000)), STOCK, (scale("0.01"),)).is_true_soap
