"""What is seldom met in a batch or on a label: each worked out by hand."""

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

import pytest

from builder.model.label.declaration import polytopes_of
from builder.model.recipe.figure import Known
from builder.model.recipe.ingredient import DeclaredAs, DropMass, LabelName
from builder.model.recipe.product import Contact, DeclaredBy, Product
from builder.model.recipe.quantity import Drops
from builder.model.recipe.recipe import AmountsAs, Cure, ListedAs
from builder.model.recipe.size import TotalSize
from builder.model.supplies.supply import SupplyKind
from builder.reckon import reckon_nominal, reckon_recipe, weight_as_written
from builder.reckon.label.ingredient_list import list_ingredients
from builder.reckon.label.label_order import MOST_WAYS, ListedAmount, Order
from builder.reckon.label.shares import Vertex, most_of, optimum_at, walk_to_the_constraint
from builder.reckon.supplies.packs_by_kind import packs_of
from tests.making import card, figures, grams, lye, phase, recipe, scale, share, soap, sure, worked
from tests.reckon.test_guests import STUDIO
from tests.reckon.test_ingredient_list import exactly, labelling
from tests.reckon.test_supplies import pack

LOTION = Product("lotion", "A lotion", Contact.LEAVE_ON, False, DeclaredBy.WEIGHT)


def test_drops_weigh_what_was_weighed_of_them() -> None:
    # 40 drops were weighed at 1.2 g, so that 20 are 0.6 g.
    scent = replace(card("scent"), drop_mass=DropMass(40, grams("1.2"), "on the pocket scale"))
    of = recipe(phase("all", {"oil": grams("59.4"), "scent": Drops(Fraction(20))}), amounts_as=AmountsAs.WEIGHTS)
    made = worked(of, LOTION, TotalSize(grams(60)), {"scent": scent, "oil": card("oil")}, [scale("0.01")])
    assert [w.mass.grams for w in made.grams.weighed] == [Fraction("59.4"), Fraction("0.6")]


def test_a_recipe_by_weight_comes_to_what_is_written_with_its_lye_and_water() -> None:
    of = recipe(phase("all", {"olive oil": grams(500), "glycerin": grams("12.5")}), amounts_as=AmountsAs.WEIGHTS)
    assert weight_as_written(STUDIO, of).grams == Fraction("512.5")


def test_a_nominal_batch_is_never_less_than_the_scales_can_weigh() -> None:
    # Of 0.001 % in a kilogram there is 0.01 g, less than any scale of the studio weighs sensibly: it takes more of the batch.
    of = recipe(phase("all", {"sunflower oil": share("99.999"), "vitamin E": share("0.001")}), fill="10")
    one = reckon_nominal(STUDIO, of)
    assert one.smallest is not None and one.grams.total >= one.smallest
    least = min(w.mass.grams / w.scale.division.grams for w in one.grams.weighed)
    assert least >= STUDIO.constants["fewest divisions of a weighing"].typical


# Ten containers of 50 g are a small class (content/constants.yaml), and 1 % of 500 g is weighed sensibly by a scale that reads to 0.1 g.
def test_a_nominal_batch_is_no_smaller_than_a_small_class_makes() -> None:
    one = reckon_nominal(STUDIO, recipe(phase("all", {"sunflower oil": share(99), "vitamin E": share(1)}), fill="50"))
    assert sure(one.smallest) < one.grams.total == grams(500)


# Regulation (EC) 1223/2009 Art. 19(1)(g): colours may stand last in any order, by their colour index number where there is one.
@pytest.mark.parametrize("colour_first", [True, False])
def test_what_is_there_as_a_colour_too_is_listed_as_a_colour(*, colour_first: bool) -> None:
    name = LabelName(("Titanium Dioxide",), ("titanium dioxide",), Known.MEMORY)
    white = replace(card("white"), label_name=name, declared_as=DeclaredAs.COLOUR, colour_name={"eu": "CI 77891"})
    filter_of_light = replace(card("filter"), label_name=replace(name, inci=("CI 77891",)))
    two = [exactly(white, 3), exactly(filter_of_light, 5)]
    listed = list_ingredients([exactly(card("water"), 92), *(two if colour_first else reversed(two))], labelling("EU"))
    assert [entry.declared_as for entry in listed.entries] == [DeclaredAs.INGREDIENT, DeclaredAs.COLOUR]


def of_one(name: str, names: Sequence[str], amount: str, **shares: tuple[str, str]) -> ListedAmount:
    stated = {names.index(of): (Fraction(low) / 100, Fraction(high) / 100) for of, (low, high) in shares.items()}
    return ListedAmount(name, tuple(names), Fraction(amount), Fraction(amount), polytopes_of(len(names), None, stated))


def test_a_name_that_a_blend_declares_twice_is_added_up() -> None:
    # 50 to 60 of water first; of the other 40 at the most half is water again, since there is at least as much of glycerin before it.
    source = of_one("blend", ("water", "glycerin", "water"), "1", water=("50", "60"))
    least, most = Order([source], free_at_one=True).range_of("water")
    assert (least, most) == (Fraction(1, 2), Fraction(4, 5))


def test_what_heads_every_blend_comes_first_whatever_else_they_hold() -> None:
    # Of 90 g of the one at most 45 g are glycerin, and then as much is water, with a third or more of the 10 g of the other.
    order = Order([of_one("one", ("water", "glycerin", "x"), "90"), of_one("two", ("water", "betaine", "y"), "10")], free_at_one=True)
    assert order.range_of("glycerin")[1] > order.range_of("water")[0]
    assert order.may_precede("water", "glycerin") and not order.may_precede("glycerin", "water")


# By hand: in each of two blends of eight parts there is as much of the first as of the second, wherever the line stands (8 x 8 ways).
def test_what_stands_so_in_every_blend_is_proven_of_many_ways_too() -> None:
    one, two = (of_one(blend, ("a", "b", *(f"{blend} {n}" for n in range(6))), "50") for blend in ("one", "two"))
    order = Order([one, two], free_at_one=True)
    assert len(one.polytopes) * len(two.polytopes) > MOST_WAYS and order.range_of("b")[1] > order.range_of("a")[0]
    assert order.may_precede("a", "b") and not order.may_precede("b", "a")


# By hand: the last part of the long blend is subject to the order from 0.816 g on (1 % of 44 + 36 + 1.6 g), 1.85 % of its blend, and so
# above the line there: there is as much of the part before it. Beyond 60 ways that is not tried (decided in label_order.py).
@pytest.mark.parametrize(("parts", "proven"), [(10, True), (11, False)])
def test_up_to_so_many_ways_each_is_tried(parts: int, *, proven: bool) -> None:
    long = of_one("long", ("first", *(f"long {n}" for n in range(parts - 3)), "one", "two"), "44")
    short = of_one("short", ("first", *(f"short {n}" for n in range(4)), "one"), "36")
    assert len(long.polytopes) * len(short.polytopes) == 6 * parts
    order = Order([long, short, of_one("more", ("more",), "1.6")], free_at_one=True)
    assert order.may_precede("one", "two") is proven and not order.may_precede("two", "one")


# By hand: the last of 70 parts comes to one per cent of the whole only above the line of its blend, and there is as much of the second.
def test_one_blend_is_decided_however_long_its_list_is() -> None:
    parts = tuple(f"part {n}" for n in range(70))
    order = Order([of_one("blend", parts, "99.5"), of_one("more", ("part 1",), "0.5")], free_at_one=True)
    assert len(order.sources[0].polytopes) > MOST_WAYS and order.range_of("part 69")[1] > order.range_of("part 1")[0]
    assert order.may_precede("part 1", "part 69") and not order.may_precede("part 69", "part 1")


# Of 100 g the one is 1 g, and of the other there is nothing up to 1 g: at exactly one per cent the order is free, or it is not.
@pytest.mark.parametrize("free", [True, False])
def test_exactly_one_per_cent_stands_where_the_region_has_it(*, free: bool) -> None:
    sources = [of_one("water", ("water",), "97"), of_one("one", ("one",), "1"), of_one("blend", ("x", "other"), "2")]
    assert Order(sources, free_at_one=free).may_precede("other", "one") is free


# The same where there are too many ways to try each: 1 g of 100 g, and at the end of two blends of eight parts something from nothing on.
@pytest.mark.parametrize("free", [True, False])
def test_exactly_one_per_cent_stands_so_of_many_ways_too(*, free: bool) -> None:
    one, two = (of_one(blend, (*(f"{blend} {n}" for n in range(7)), "last"), "49.5") for blend in ("one", "two"))
    assert len(one.polytopes) * len(two.polytopes) > MOST_WAYS
    assert Order([of_one("exactly", ("exactly",), "1"), one, two], free_at_one=free).may_precede("last", "exactly") is free


# What a supplier lists below the line of one per cent is less than that, in any order (Regulation (EC) 1223/2009 Art. 19(1)(g)): also in a
# product that is nothing but this blend.
@pytest.mark.parametrize("free", [True, False])
def test_what_stands_below_a_line_that_is_known_may_stand_in_any_order(*, free: bool) -> None:
    names = ("water", "first", "second")
    order = Order([ListedAmount("blend", names, Fraction(1), Fraction(1), polytopes_of(3, 1, {}))], free_at_one=free)
    assert order.may_precede("first", "second") and order.may_precede("second", "first")
    assert order.may_precede("water", "first") and not order.may_precede("first", "water")


# By hand, three vertices of a concave curve: between (-1, 3) and (1/2, 29/10) it crosses zero a third short of the way, at 44/15.
def test_the_way_to_the_constraint_ends_beside_it() -> None:
    left, middle, right = Vertex(Fraction(3), Fraction(-1)), Vertex(Fraction("2.9"), Fraction("0.5")), Vertex(Fraction(1), Fraction(2))
    tried = []

    def most(multiplier: Fraction) -> Vertex:
        tried.append(multiplier)
        assert len(tried) < 4
        return max((left, middle, right), key=lambda one: one.objective + multiplier * one.constraint)

    beside = walk_to_the_constraint(left, right, most)
    assert beside == (left, middle) and optimum_at(*beside) == Fraction(44, 15)
    # The slopes from the first vertex to the last, and to the one between.
    assert tried == [Fraction(2, 3), Fraction(1, 15)]


def test_figures_whose_least_adds_up_to_the_whole_leave_nothing_open() -> None:
    (polytope, *_) = polytopes_of(2, None, {0: (Fraction(7, 10), Fraction(9, 10)), 1: (Fraction(3, 10), Fraction(4, 10))})
    assert most_of([polytope], [Fraction(1), Fraction(0)]) == Fraction(7, 10)
    assert most_of([polytope], [Fraction(0), Fraction(1)]) == Fraction(3, 10)


def test_a_pack_of_containers_by_weight_tells_no_number() -> None:
    jars = pack("4 fl oz jar", grams(500), "12.00", SupplyKind.CONTAINER)
    assert packs_of(replace(STUDIO, supplies=(jars,))).packs == {}


# By hand: of packs of 100 g at 2.00, 300 g that are used and 150 g that may be chosen take five; of nothing one stands on the table.
@pytest.mark.parametrize(("used", "if_chosen", "number", "left"), [(300, 150, 5, 50), (300, 100, 4, 0), (0, 101, 2, 99), (0, 0, 1, 100)])
def test_packs_cover_what_is_used_and_what_may_be_chosen(used: int, if_chosen: int, number: int, left: int) -> None:
    shelf = packs_of(replace(STUDIO, supplies=(pack("olive oil", grams(100), "2.00"),)))
    (key,) = shelf.packs
    need = shelf.need(key, "olive oil", Fraction(used), Fraction(if_chosen))
    assert need.kind is SupplyKind.INGREDIENT and need.used == used and need.if_chosen == if_chosen
    bought = sure(need.purchase)
    assert [one.number for one in bought.packs] == [number]
    assert bought.price == 2 * number and bought.holds == 100 * number and bought.left == left


# By hand: where half of the mol of a lye are potassium hydroxide, half of the lactic acid becomes potassium lactate, C3H5KO3, 128.17 g/mol,
# and half sodium lactate, C3H5NaO3, 112.06 g/mol (atomic weights of IUPAC). The acid is one of 88 %, C3H6O3, 90.08 g/mol.
def test_the_salts_of_an_acid_are_divided_by_mol_and_not_by_weight() -> None:
    oil = STUDIO.ingredients["olive oil"]
    here = replace(STUDIO, ingredients={**STUDIO.ingredients, "olive oil": replace(oil, figures={"saponification": figures(190)})})
    alkalis = {"sodium hydroxide": 50, "potassium hydroxide": 50}
    bar = soap({"olive oil": 100}, lye(alkalis, superfat=5, purity=100), {"lactic acid": 2})
    cure = Cure("6 weeks", share(0), "ten bars weighed")
    one = reckon_recipe(here, replace(bar, product="cold-process soap", listed=ListedAs.MADE, cure=cure), TotalSize(grams(100_000)))
    (acid,) = (w.mass.grams for w in one.grams.weighed if w.line.ingredient.key == "lactic acid")
    (variant,) = one.own.variants
    held = {entry.inci: entry.most for entry in variant.ingredients.entries}
    half = float(acid) * 0.88 / 90.08 / 2
    assert float(held["Potassium Lactate"]) == pytest.approx(half * 128.17 / 100_000, rel=0.001)
    assert float(held["Sodium Lactate"]) == pytest.approx(half * 112.06 / 100_000, rel=0.001)


# By hand: half of a ready-mixed lye of 50 % is water, and stands on the list with what is weighed beside it.
def test_what_went_into_a_pot_holds_the_water_of_its_ready_mixed_lye() -> None:
    bar = soap({"olive oil": 100}, lye(superfat=5, purity=100, ready_mixed=share(50)))
    one = reckon_recipe(STUDIO, replace(bar, product="cold-process soap", listed=ListedAs.PUT_IN), TotalSize(grams(1000)))
    weighs = {w.line.ingredient.key: w.mass.grams for w in one.grams.weighed}
    (variant,) = one.own.variants
    held = {entry.plain: (entry.least, entry.most) for entry in variant.ingredients.entries}
    whole, half = sum(weighs.values()), weighs["sodium hydroxide"] / 2
    assert held["water"] == ((weighs["water"] + half) / whole, (weighs["water"] + half) / whole)
    assert held["sodium hydroxide"] == (half / whole, half / whole)
