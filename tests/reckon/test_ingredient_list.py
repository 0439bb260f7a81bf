"""Ingredient lists: merging, ranges, the regions' one per cent, allergens, and what to ask a supplier for.

The rules are read from the texts named in `content/regions.yaml` and the table of allergens; a rule known from memory says so there.
"""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest

from builder.model.label.ingredient_list import IngredientList
from builder.model.label.labelling import Labelling
from builder.model.recipe.figure import Known
from builder.model.recipe.ingredient import AllergenList, AllergenStatement, CountsAs, DeclaredAs, Ingredient, LabelName, MixesWith
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.recipe.product import Contact
from builder.reckon.label.ingredient_list import list_ingredients
from builder.words.fold import fold
from tests.making import SOURCE, Number, card
from tests.studios import sound_studio

STUDIO, _ = sound_studio()


def labelling(region: str) -> Labelling:
    return replace(STUDIO, profile=replace(STUDIO.profile, region=region)).labelling


def exactly(one: Ingredient, percent: Number) -> tuple[Ingredient, Fraction, Fraction]:
    amount = Fraction(str(percent)) / 100
    return one, amount, amount


def blend(*names: str, **said: Any) -> Ingredient:
    return Ingredient(
        "base", IngredientKind.LOTION_BASE, CountsAs.BASE, MixesWith.BOTH, label_name=LabelName(names, names, Known.SUPPLIER, **said)
    )


def scent(
    name: str,
    contains: Mapping[str, tuple[int, Number]] | None = None,
    covers: AllergenList = AllergenList.EXTENDED,
    inci: str = "Some Oil",
) -> Ingredient:
    held = {fold(one): (Fraction(str(low)) / 100, Fraction(str(high)) / 100) for one, (low, high) in (contains or {}).items()}
    statement = None if contains is None else AllergenStatement(covers, held, SOURCE, "here", Known.SUPPLIER)
    label = LabelName((inci,), (name,), Known.READ)
    return Ingredient(
        name,
        IngredientKind.ESSENTIAL_OIL,
        CountsAs.OTHER,
        MixesWith.OIL,
        label_name=label,
        declared_as=DeclaredAs.FRAGRANCE,
        allergen_statement=statement,
    )


def names(listed: IngredientList) -> list[str]:
    return [entry.inci for entry in listed.entries]


# 21 CFR 701.3(f) (memory) and C.R.C. c. 869 s. 21.4 (read): 1 % or less is free.
# Regulation 1223/2009 Article 19(1)(g) (read): less than 1 % is.
@pytest.mark.parametrize(("region", "is_free"), [("US", True), ("EU", False), ("UK", False), ("Canada", True)])
def test_exactly_one_per_cent_is_free_where_the_text_says_so(region: str, is_free: bool) -> None:
    up_to_two = {1: (Fraction(1, 100), Fraction(2, 100))}
    halves = [exactly(blend("Aqua", "Glycerin", shares=up_to_two), 50), exactly(blend("Olus Oil", "Panthenol", shares=up_to_two), 50)]
    listed = list_ingredients(halves, labelling(region))
    assert {entry.inci: entry.most for entry in listed.entries}["Panthenol"] == Fraction(1, 100)
    pairs = {frozenset(pair) for pair in listed.open_pairs}
    assert (frozenset({"Glycerin", "Panthenol"}) in pairs) is not is_free


@pytest.mark.parametrize("region", ["US", "EU", "UK", "Canada"])
def test_a_base_alone_is_listed_as_its_supplier_lists_it(region: str) -> None:
    declared = ("Aqua", "Glycerin", "Cetearyl Alcohol", "Phenoxyethanol", "Tocopherol")
    listed = list_ingredients([exactly(blend(*declared), 100)], labelling(region))
    assert (tuple(names(listed)), listed.open_pairs) == (declared, ())


# From the reference on labels (derived there): of k parts the i-th is at most 1/i of the base, and the first at least 1/k, but for
# what may stand below one per cent in any order.
def test_the_parts_of_a_declared_list_have_the_ranges_that_follow_from_it() -> None:
    listed = list_ingredients([exactly(blend("Aqua", "Glycerin", "Panthenol"), 100)])
    ends = [(entry.least, entry.most) for entry in listed.entries]
    assert [most for _, most in ends] == [1, Fraction(1, 2), Fraction(1, 3)]
    assert [least for least, _ in ends] == [Fraction(1, 3), 0, 0]


def test_the_same_ingredient_from_several_sources_is_added_up_under_one_name() -> None:
    aqua = LabelName(("Aqua",), ("water",), Known.MEMORY)
    water = Ingredient("water", IngredientKind.WATER, CountsAs.WATER, MixesWith.WATER, label_name=aqua)
    listed = list_ingredients([exactly(blend("Water", "Glycerin"), 50), exactly(water, 30), exactly(card("glycerin"), 20)], labelling("US"))
    assert names(listed) == ["Water", "Glycerin"]
    assert (listed.entries[0].least, listed.entries[1].least) == (Fraction(55, 100), Fraction(20, 100))


def test_a_figure_of_the_supplier_settles_what_is_open_and_is_what_is_asked_for() -> None:
    weighed = [exactly(blend("Aqua", "Glycerin", "Stearate"), 97), exactly(card("honey"), 3)]
    open_list = list_ingredients(weighed)
    assert open_list.question is not None
    assert (open_list.question.part, open_list.question.settles) == ("Stearate", 2)
    told = blend("Aqua", "Glycerin", "Stearate", shares={2: (Fraction(20, 100), Fraction(25, 100))})
    assert list_ingredients([exactly(told, 97), exactly(card("honey"), 3)]).open_pairs == ()


def test_the_line_at_one_per_cent_settles_what_stands_below_it() -> None:
    weighed = [exactly(blend("Aqua", "Glycerin", "Tocopherol", below=2), 97), exactly(card("honey"), 3)]
    assert {frozenset(pair) for pair in list_ingredients(weighed).open_pairs} == {frozenset({"Glycerin", "honey"})}


def test_a_colour_within_a_base_stands_last_at_any_level() -> None:
    white = blend("Aqua", "Titanium Dioxide", "Glycerin", colours=frozenset({1}), nano=frozenset({1}))
    listed = list_ingredients([exactly(white, 100)], labelling("EU"))
    assert names(listed) == ["Aqua", "Glycerin", "Titanium Dioxide"]
    assert listed.entries[-1].is_nano


# Regulation (EU) 2023/1545 (read): above 0.001 % where the product stays on, above 0.01 % where it is rinsed off.
# Exactly that is not listed.
@pytest.mark.parametrize(
    ("contact", "most", "is_named"),
    [
        (Contact.LEAVE_ON, "0.1", False),
        (Contact.LEAVE_ON, "0.10001", True),
        (Contact.RINSE_OFF, "1", False),
        (Contact.RINSE_OFF, "1.00001", True),
        (Contact.BATH, "1", False),
    ],
)
def test_an_allergen_is_named_above_its_threshold(contact: Contact, most: str, is_named: bool) -> None:
    listed = list_ingredients([exactly(card("oil"), 99), exactly(scent("violet", {"Linalool": (0, most)}), 1)], labelling("EU"), contact)
    assert ("Linalool" in names(listed)) is is_named
    assert listed.without_statement == ()


# Regulation (EU) 2023/1545, entry 70 (read): citral, geranial and neral are added and shown as citral.
def test_isomers_are_added_and_shown_under_one_name() -> None:
    one, other = scent("lemon", {"Geranial": (0, "0.06")}), scent("verbena", {"Neral": (0, "0.05"), "Linalool": (0, "0.05")})
    listed = list_ingredients([exactly(card("oil"), 98), exactly(one, 1), exactly(other, 1)], labelling("EU"))
    assert names(listed) == ["Oil", "Parfum", "Citral"]
    assert listed.entries[-1].most == Fraction("0.0011") / 100


def test_a_whole_oil_is_an_allergen_itself_where_the_extended_list_holds() -> None:
    lavender = STUDIO.ingredients["lavender essential oil"]
    weighed = [exactly(card("oil"), 99), exactly(lavender, 1)]
    assert "Lavandula Oil/ Extract" in names(list_ingredients(weighed, labelling("EU")))
    assert "Lavandula Oil/ Extract" not in names(list_ingredients(weighed, labelling("UK")))


@pytest.mark.parametrize(("region", "missing"), [("US", ()), ("EU", ("violet",)), ("UK", ()), ("Canada", ("violet",))])
def test_a_statement_has_to_cover_the_list_of_the_region(region: str, missing: tuple[str, ...]) -> None:
    weighed = [exactly(card("oil"), 99), exactly(scent("violet", {}, covers=AllergenList.ORIGINAL), 1)]
    assert list_ingredients(weighed, labelling(region)).without_statement == missing


# Regulation (EU) 2023/1545 (read): whatever the source. A base with scent in it holds allergens as a scent does.
def test_a_scented_base_needs_a_statement_and_brings_what_it_holds() -> None:
    base = blend("Aqua", "Glycerin", "Parfum", "Linalool", below=2)
    assert list_ingredients([exactly(base, 100)], labelling("EU")).without_statement == ("base",)
    assert list_ingredients([exactly(base, 100)], labelling("US")).without_statement == ()
    held = {"linalool": (Fraction(0), Fraction(1, 1000)), "geraniol": (Fraction(0), Fraction(1, 5000))}
    stated = replace(base, allergen_statement=AllergenStatement(AllergenList.EXTENDED, held, SOURCE, "here", Known.SUPPLIER))
    listed = list_ingredients([exactly(stated, 50), exactly(card("oil"), 50)], labelling("EU"))
    assert listed.without_statement == ()
    assert sorted(names(listed)) == ["Aqua", "Geraniol", "Glycerin", "Linalool", "Oil", "Parfum"]
    most = {entry.inci: entry.most for entry in listed.entries}
    assert (most["Geraniol"], most["Linalool"]) == (Fraction(1, 10000), Fraction(1, 200))


def test_scents_too_weak_to_pass_any_threshold_need_no_statement() -> None:
    weighed = [exactly(card("oil"), "99.999"), exactly(scent("violet"), "0.001")]
    assert list_ingredients(weighed, labelling("EU")).without_statement == ()


# C.R.C. c. 869 s. 21.4(3) (read): parfum and aroma may stand at the end whatever their amount.
def test_scent_stands_last_in_canada_and_in_its_place_elsewhere() -> None:
    weighed = [exactly(card("oil"), 80), exactly(scent("violet", {}), 15), exactly(card("wax"), 5)]
    assert names(list_ingredients(weighed, labelling("Canada")))[-1] == "Parfum"
    assert names(list_ingredients(weighed, labelling("EU"))) == ["Oil", "Parfum", "Wax"]


# 21 CFR 701.3(a), read: an ingredient that is both flavour and fragrance is designated by each function, or by name; nothing is called
# flavour that people would not take for one. Article 19(1)(g) of Regulation 1223/2009, read: parfum or aroma.
@pytest.mark.parametrize(
    ("region", "contact", "declared"),
    [
        ("US", Contact.LIPS, ["Cera Alba", "Mentha Piperita Oil", "Aroma"]),
        ("US", Contact.LEAVE_ON, ["Cera Alba", "Parfum"]),
        ("EU", Contact.LIPS, ["Cera Alba", "Parfum", "Aroma"]),
        ("EU", Contact.RINSE_OFF, ["Cera Alba", "Parfum"]),
    ],
)
def test_an_oil_on_the_lips_goes_by_its_name_and_a_flavour_off_them_is_scent(
    region: str, contact: Contact, declared: Sequence[str]
) -> None:
    mint = scent("peppermint oil", {}, inci="Mentha Piperita Oil")
    wax = replace(card("beeswax"), label_name=LabelName(("Cera Alba",), ("beeswax",), Known.READ))
    flavour = replace(mint, name="vanilla flavour", kind=IngredientKind.FLAVOUR, declared_as=DeclaredAs.FLAVOUR)
    listed = list_ingredients([exactly(wax, 97), exactly(mint, 2), exactly(flavour, 1)], labelling(region), contact)
    assert [entry.inci for entry in listed.entries if not entry.is_allergen] == declared


# Lavender oil: linalool 20 to 45 %, linalyl acetate 25 to 47 % (Ph. Eur. 1338 in the table of constituents). At 0.5 % of a lotion 45 % of
# linalool is 0.225 %, far above 0.001 %; what is published of a scent that its supplier speaks for is not asked for.
def test_what_is_published_of_a_scent_without_a_statement_is_what_to_ask_for() -> None:
    lavender = STUDIO.ingredients["lavender essential oil"]
    water = exactly(STUDIO.ingredients["water"], "99.5")
    asked = {held.scent: dict(held.allergens) for held in list_ingredients([water, exactly(lavender, "0.5")], labelling("EU")).may_hold}
    assert asked["Lavender essential oil"]["Linalool"] == Fraction("0.45")
    assert "Linalyl Acetate" in asked["Lavender essential oil"]
    # What there can be most of stands first, of equal shares what comes first by its name.
    shares = list(asked["Lavender essential oil"].items())
    assert shares == sorted(shares, key=lambda one: (-one[1], one[0]))
    (alike,) = ({**part, **{name: replace(part["linalool"], name=name) for name in ("limonene", "geraniol")}} for part in lavender.holds)
    equal = list_ingredients([water, exactly(replace(lavender, holds=(alike,)), "0.5")], labelling("EU")).may_hold[0].allergens
    names = [name for name, share in equal if share == Fraction("0.45")]
    assert names == sorted(names) and {"Geraniol", "Limonene", "Linalool"} <= set(names)
    original = list_ingredients([water, exactly(lavender, "0.5")], labelling("UK")).may_hold
    assert "Linalool" in dict(original[0].allergens)
    assert "Linalyl Acetate" not in dict(original[0].allergens)
    stated = replace(lavender, allergen_statement=scent("x", {"Linalool": (30, 35)}).allergen_statement)
    assert list_ingredients([water, exactly(stated, "0.5")], labelling("EU")).may_hold == ()
    assert list_ingredients([water, exactly(lavender, "0.5")], labelling("US")).may_hold == ()
    # 0.0001 % of the oil holds at most 0.000045 % of linalool, below every threshold.
    assert all(not held.allergens for held in list_ingredients([exactly(lavender, "0.0001")], labelling("EU")).may_hold)


def test_nothing_is_known_of_a_fragrance_oil() -> None:
    oil = STUDIO.ingredients["fragrance oil"]
    (held,) = list_ingredients([exactly(oil, 1)], labelling("EU")).may_hold
    assert held.allergens == ()
