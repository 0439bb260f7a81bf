"""Small rules on packs, labels, promises and names: what each is told of, and what lies beside that and is met in silence."""

from dataclasses import replace
from datetime import datetime
from fractions import Fraction
from typing import Any

import pytest

from builder.check.dose.colour_or_not import find_colours_or_not
from builder.check.keeping.keeps_missing import find_keeps_missing
from builder.check.label.contents_by_weight import find_contents_by_weight
from builder.check.label.free_from import find_broken_promises
from builder.check.label.label_name_small import find_fronts_without_fields, find_names_too_small
from builder.check.label.label_over_container import find_labels_over_containers
from builder.check.label.label_too_small import find_labels_too_small
from builder.check.recipe.home_size_without_oils import find_home_sizes_without_oils
from builder.check.recipe.unknown_recipe import find_unknown_recipes
from builder.check.supplies.supply_unknown import find_unknown_supplies
from builder.check.supplies.supply_weight_unknown import find_supplies_without_weight
from builder.check.teaching.mention_unknown import find_unknown_mentions
from builder.check.teaching.staff_missing import find_staff_missing, staff_place
from builder.model.dates.studio_class import ClassDate, HomeSize
from builder.model.label.label_fit import LabelFit, OverContainer
from builder.model.library import ANY
from builder.model.place import NOWHERE, Name, Place
from builder.model.recipe.ingredient import CountsAs, DeclaredAs
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.recipe.product import Contact
from builder.model.recipe.quantity import Density, Mass, Volume
from builder.model.recipe.recipe import Choice, MeasuredDensity, Recipe
from builder.model.roster.allergen_family import AllergenFamily
from builder.model.studio import Studio
from builder.model.supplies.supply import SupplyKind
from builder.model.teaching.lesson import Mention, Part, Prose, Who
from builder.reckon.teaching.classes import reckon_class
from tests.check.test_at_the_edge import batch, levels, mixed
from tests.making import card, figures, grams, lye, share, soap, told
from tests.reckon.test_guests import LOTION, STUDIO

FIT = LabelFit("Lotion", "lotion", "one", "our sheet", True, (), (), "1 mm", NOWHERE, on="our sheet")
OVER = OverContainer("our jar", "our sheet", "50 mm x 50 mm", 1, "a lid of 40 mm", (), ())


@pytest.mark.parametrize(
    ("over", "wrong", "remedy"),
    [
        (OVER, "has no place for it (", "Measure the container"),
        (replace(OVER, labels=2), "has no place for 2 of them (", "Measure the container"),
        (
            replace(OVER, would_do=("a", "b")),
            "no place for it",
            'Choose a sheet whose labels hold the text and sit: "a" or "b"; or measure',
        ),
        (replace(OVER, tags=("a tag", "b tag")), "no place for it", "Write `sheet: a tag` under `labels:` to hang a tag on it; or measure"),
        (replace(OVER, on_two=("c", "d")), "no place for it", "Write `panels: 2` and `sheet: c` under `labels:`"),
        # Two labels are named only where one does not do.
        (
            replace(OVER, on_two=("c",), tags=("a tag",)),
            "no place for it",
            "Write `sheet: a tag` under `labels:` to hang a tag on it; or m",
        ),
    ],
)
def test_a_label_that_sits_nowhere_is_told_with_the_ways_out(over: OverContainer, wrong: str, remedy: str) -> None:
    (found,) = told(find_labels_over_containers((replace(FIT, over=over), FIT)))
    assert wrong in found.wrong and found.remedy.startswith(remedy)


def test_a_label_that_does_not_fit_is_told_with_the_sheets_on_which_it_would() -> None:
    assert told(find_labels_too_small((FIT,))) == []
    (one, two, none) = told(
        find_labels_too_small(
            (
                replace(FIT, fits=False, would_do=("a", "b")),
                replace(FIT, fits=False, on_two=("c",)),
                replace(FIT, fits=False, asked_for=""),
            )
        )
    )
    assert one.remedy.startswith('Choose a sheet on which it fits: "a" or "b"; or shorten directions')
    assert two.remedy.startswith('Write `panels: 2` under `labels:` and choose "c" to put it on two labels; or shorten')
    assert none.remedy.startswith("Shorten directions") and "does not fit on any label that is known" in none.wrong
    assert 'on a label of the sheet "our sheet"' in one.wrong and one.acceptable and one.stops


@pytest.mark.parametrize(
    ("fit", "small", "nothing"),
    [
        (FIT, 0, 0),
        (replace(FIT, is_composed=False), 1, 0),
        (replace(FIT, has_fields=False), 0, 1),
        # What does not fit at all is a finding of its own.
        (replace(FIT, is_composed=False, has_fields=False, fits=False), 0, 0),
    ],
)
def test_a_design_does_what_was_wished_where_the_label_fits(fit: LabelFit, small: int, nothing: int) -> None:
    assert levels(find_names_too_small((fit,))) == ["label-name-small caution"] * small
    assert levels(find_fronts_without_fields((fit,))) == ["label-nothing-to-colour caution"] * nothing


PACK = next(one for one in STUDIO.supplies if one.kind is SupplyKind.INGREDIENT)
ITEM = next(one for one in STUDIO.supplies if one.use)


@pytest.mark.parametrize(
    ("kind", "name", "unread", "found"),
    [
        (SupplyKind.INGREDIENT, "olive oil", {}, 0),
        (SupplyKind.INGREDIENT, "elbow grease", {}, 1),
        (SupplyKind.INGREDIENT, "elbow grease", {"ingredients": "elbow grease"}, 0),
        (SupplyKind.CONTAINER, next(iter(STUDIO.containers.values())).name, {}, 0),
        (SupplyKind.CONTAINER, "elbow grease", {}, 1),
        (SupplyKind.CONTAINER, "elbow grease", {"containers": "elbow grease"}, 0),
        (SupplyKind.CONTAINER, "elbow grease", {"containers": ANY}, 0),
        (SupplyKind.CONTAINER, "elbow grease", {"ingredients": "elbow grease"}, 1),
        (SupplyKind.ITEM, "elbow grease", {}, 0),
    ],
)
def test_a_pack_holds_what_is_known_by_its_name(kind: SupplyKind, name: str, unread: dict[str, str], found: int) -> None:
    pack = replace(PACK, kind=kind, name=Name(name), use=None)
    lost = replace(STUDIO.unread, **{what: frozenset({one}) for what, one in unread.items()})
    assert levels(find_unknown_supplies(replace(STUDIO, supplies=(pack,), unread=lost))) == ["supply-unknown caution"] * found


@pytest.mark.parametrize(("key", "unread", "found"), [(LOTION.key, (), 0), ("no class", (), 1), ("no class", ("no class",), 0)])
def test_an_item_is_for_a_class_that_there_is(key: str, unread: tuple[str, ...], found: int) -> None:
    assert ITEM.use is not None
    item = replace(ITEM, use=replace(ITEM.use, classes=(Name(key),)))
    here = replace(STUDIO, supplies=(item,), unread=replace(STUDIO.unread, classes=frozenset(unread)))
    assert levels(find_unknown_supplies(here)) == ["supply-unknown caution"] * found


@pytest.mark.parametrize(
    ("size", "weighs", "density", "pump", "found"),
    [
        (grams(500), None, None, None, []),
        (Volume(Fraction(500)), None, None, None, ["pack-weight-unknown"]),
        (Volume(Fraction(500)), grams(450), None, None, []),
        (Volume(Fraction(500)), None, "0.9", None, []),
        (500, None, None, Volume(Fraction(2)), []),
        (grams(500), None, None, Volume(Fraction(2)), ["stroke-weight-unknown"]),
        (grams(500), None, "0.9", Volume(Fraction(2)), []),
        (grams(500), None, None, grams(2), []),
        (Volume(Fraction(500)), None, None, Volume(Fraction(2)), ["pack-weight-unknown", "stroke-weight-unknown"]),
    ],
)
def test_what_is_sold_or_pumped_by_volume_has_a_density(
    size: Mass | Volume | int, weighs: Mass | None, density: str | None, pump: Mass | Volume | None, found: list[str]
) -> None:
    pumped = next(one for one in STUDIO.supplies if one.pump).pump
    assert pumped is not None
    ours = card("our oil") if density is None else replace(card("our oil"), figures={"density": figures(density, unit="g/mL")})
    pack = replace(PACK, name=Name("our oil"), size=size, weighs=weighs, pump=replace(pumped, stroke=pump) if pump else None)
    here = replace(STUDIO, supplies=(pack,), ingredients={**STUDIO.ingredients, ours.key: ours})
    assert levels(find_supplies_without_weight(here)) == [f"{name} caution" for name in found]


NUTS, OILY = AllergenFamily.TREE_NUT, "sunflower oil"


def promising(recipe: Recipe, *families: AllergenFamily) -> Studio:
    return replace(STUDIO, recipes={"one": replace(recipe, free_from=families)}, classes={})


@pytest.mark.parametrize(
    ("recipe", "families", "found"),
    [
        (mixed(sweet_almond_oil="10"), (NUTS,), ["not-free-from stop"]),
        (mixed(sweet_almond_oil="10"), (), []),
        (mixed(sweet_almond_oil="10"), (AllergenFamily.MILK,), []),
        (replace(mixed(), choices=(Choice("oil", (Name("sweet almond oil"), None), share(1)),)), (NUTS,), ["not-free-from stop"]),
        (mixed(lotion_base="50"), (NUTS,), ["free-from-open caution"]),
        (mixed(lotion_base="50"), (), []),
    ],
)
def test_a_promise_is_held_against_all_that_goes_in(recipe: Recipe, families: tuple[AllergenFamily, ...], found: list[str]) -> None:
    assert levels(find_broken_promises(promising(recipe, *families))) == found


def test_what_a_made_scent_holds_only_its_supplier_knows() -> None:
    for kind, counts, found in (
        (IngredientKind.FRAGRANCE, CountsAs.OTHER, 1),
        (IngredientKind.FLAVOUR, CountsAs.OTHER, 1),
        (IngredientKind.OTHER, CountsAs.BASE, 1),
        (IngredientKind.OTHER, CountsAs.OTHER, 0),
    ):
        ours = replace(card("our thing", counts), kind=kind)
        here = promising(mixed(our_thing="1"), NUTS)
        here = replace(here, ingredients={**here.ingredients, ours.key: ours})
        assert levels(find_broken_promises(here)) == ["free-from-open caution"] * found


# What a class promises holds for each of its recipes that there is.
def test_a_class_promises_for_all_that_it_makes() -> None:
    make = LOTION.makes[0]
    one = replace(LOTION, free_from=(NUTS,), makes=(replace(make, recipe=Name("no recipe")), make))
    made = replace(mixed(sweet_almond_oil="10"), key=make.recipe.text)
    here = replace(STUDIO, recipes={made.key: made}, classes={"one": one})
    assert levels(find_broken_promises(here)) == ["not-free-from stop"]


@pytest.mark.parametrize(
    ("changed", "contact", "not_for_colour", "found"),
    [
        ({}, Contact.LEAVE_ON, (), 1),
        ({}, Contact.RINSE_OFF, (), 0),
        ({"also_works_as": ""}, Contact.LEAVE_ON, (), 0),
        ({"declared_as": DeclaredAs.INGREDIENT}, Contact.LEAVE_ON, (), 0),
        ({"also_works_as": ""}, Contact.LEAVE_ON, ("our powder",), 0),
        ({"also_works_as": ""}, Contact.LEAVE_ON, ("no such thing",), 1),
        # There is such a card, and the recipe holds nothing of it.
        ({"also_works_as": ""}, Contact.LEAVE_ON, ("beeswax",), 1),
    ],
)
def test_what_may_be_there_for_something_else_is_asked_about(
    changed: dict[str, Any], contact: Contact, not_for_colour: tuple[str, ...], found: int
) -> None:
    ours = replace(card("our powder"), declared_as=DeclaredAs.COLOUR, also_works_as="a sunscreen")
    of = replace(mixed(our_powder="1"), not_for_colour=tuple(map(Name, not_for_colour)))
    one = batch(of, contact, [replace(ours, **changed)])
    one = replace(one, cards={**one.cards, **STUDIO.ingredients, "our powder": replace(ours, **changed)})
    assert levels(find_colours_or_not(one)) == ["colour-or-not caution"] * found


@pytest.mark.parametrize(
    ("recipe", "size", "found"),
    [
        (mixed(water="100"), HomeSize("250 g oils", oils=grams(250)), 1),
        (mixed(water="100"), HomeSize("250 g", total=grams(250)), 0),
        (mixed(water="50"), HomeSize("250 g oils", oils=grams(250)), 0),
        (mixed(what_nobody_knows="100"), HomeSize("250 g oils", oils=grams(250)), 0),
        (soap({"water": 100}, lye()), HomeSize("250 g oils", oils=grams(250)), 0),
    ],
)
def test_a_size_by_oils_is_of_what_holds_some(recipe: Recipe, size: HomeSize, found: int) -> None:
    make = replace(LOTION.makes[0], at_home=(size,))
    other = replace(make, recipe=Name("no recipe"))
    here = replace(STUDIO, recipes={make.recipe.text: recipe}, classes={"one": replace(LOTION, makes=(other, make))})
    assert levels(find_home_sizes_without_oils(here)) == ["home-size-without-oils stop"] * found


@pytest.mark.parametrize(
    ("makes", "part", "unread", "found"),
    [
        (("one",), None, (), []),
        (("another",), None, (), ["unknown-recipe"]),
        (("another",), None, ("another",), []),
        (("one",), "one", (), []),
        (("one",), "other", (), ["part-about-another-recipe"]),
        (("one", "other"), "other", (), []),
    ],
)
def test_a_class_makes_recipes_that_there_are(makes: tuple[str, ...], part: str | None, unread: tuple[str, ...], found: list[str]) -> None:
    about = Part("Stir", Who.TEACHER, 5, (), recipe=Name(part) if part else None)
    one = replace(
        LOTION, makes=tuple(replace(LOTION.makes[0], recipe=Name(key)) for key in makes), lesson=replace(LOTION.lesson, parts=(about,))
    )
    known = {"one": mixed(), "other": mixed()}
    here = replace(STUDIO, recipes=known, classes={"one": one}, unread=replace(STUDIO.unread, recipes=frozenset(unread)))
    assert levels(find_unknown_recipes(here)) == [f"{name} stop" for name in found]


# Regulation (EC) 1223/2009, Article 19(1)(c), read; the law of the US asks for no date.
@pytest.mark.parametrize(
    ("region", "keeps", "made", "found"), [("EU", "", True, 1), ("EU", "6 months", True, 0), ("EU", "", False, 0), ("US", "", True, 0)]
)
def test_how_long_it_is_good_is_asked_for_where_the_law_wants_it(region: str, keeps: str, made: bool, found: int) -> None:
    key = LOTION.makes[0].recipe.text
    of = replace(mixed(), keeps=keeps, key=key)
    classes = {"one": replace(LOTION, makes=LOTION.makes[:1])} if made else {}
    here = replace(STUDIO, recipes={key: of}, classes=classes, profile=replace(STUDIO.profile, region=region))
    assert levels(find_keeps_missing(here)) == ["keeps-missing caution"] * found


@pytest.mark.parametrize(("product", "density", "found"), [("body wash", None, 1), ("body wash", "0.98", 0), ("balm", None, 0)])
def test_contents_by_volume_need_a_density(product: str, density: str | None, found: int) -> None:
    key = LOTION.makes[0].recipe.text
    known = MeasuredDensity(Density(Fraction(density)), "weighed") if density else None
    of = replace(mixed(water="50"), key=key, product=product, density=known)
    here = replace(STUDIO, recipes={key: of}, classes={"one": replace(LOTION, makes=LOTION.makes[:1])})
    assert levels(find_contents_by_weight(here)) == ["contents-by-weight caution"] * found


def saying(*names: str, **changed: Any) -> Studio:
    """Return the studio of one class whose one part names these in braces."""
    key = LOTION.makes[0].recipe.text
    of = replace(mixed(water="50"), key=key, density=None, **changed)
    part = Part("Stir", Who.TEACHER, 5, (Prose(tuple(Mention(Name(name)) for name in names)),))
    makes = (replace(LOTION.makes[0], left_in_the_pot=grams(0)),)
    one = replace(LOTION, makes=makes, lesson=replace(LOTION.lesson, parts=(part,), introduction=()))
    return replace(STUDIO, recipes={key: of}, classes={one.key: one}, pages={}, supplies=())


@pytest.mark.parametrize(
    ("name", "changed", "found"),
    [
        ("water", {}, []),
        ("batch", {}, []),
        ("portion", {}, []),
        ("elbow grease", {}, ["mention-unknown"]),
        ("water strokes", {}, ["pump-missing"]),
        ("volume", {}, ["mention-without-figure"]),
        ("volume", {"density": MeasuredDensity(Density(Fraction(1)), "weighed")}, []),
        ("left in the pot", {}, ["mention-without-figure"]),
        ("left in the pot", {"left": grams(30)}, []),
    ],
)
def test_what_stands_in_braces_can_be_worked_out(name: str, changed: dict[str, Any], found: list[str]) -> None:
    here = saying(name)
    (key,), (one,) = here.recipes, here.classes.values()
    if "density" in changed:
        here = replace(here, recipes={key: replace(here.recipes[key], density=changed["density"])})
    if "left" in changed:
        here = replace(here, classes={one.key: replace(one, makes=(replace(one.makes[0], left_in_the_pot=changed["left"]),))})
    assert levels(find_unknown_mentions(here)) == [f"{kind} stop" for kind in found]


def test_strokes_that_nobody_measured_are_told_by_what_is_pumped() -> None:
    (found,) = told(find_unknown_mentions(saying("water strokes")))
    assert 'Nobody has measured a pump for "water", ' in found.wrong


@pytest.mark.parametrize(("teachers", "assistants", "found"), [(1, 0, 0), (0, 1, 0), (0, 0, 1)])
def test_somebody_is_there_on_each_date(teachers: int, assistants: int, found: int) -> None:
    own, of_class = Place("class.yaml", 9), Place("class.yaml", 3)
    a_class = replace(LOTION, places={"staff": of_class})
    date = ClassDate(datetime(2027, 3, 6, 10), 6, (teachers, assistants), places={"staff": own})
    plan = replace(reckon_class(STUDIO, LOTION, ClassDate(datetime(2027, 3, 6, 10), 6, (1, 0)))[0], studio_class=a_class, date=date)
    assert [one.place for one in told(find_staff_missing(plan))] == [own] * found
    assert staff_place(replace(plan, date=replace(date, staff=None))) == of_class
