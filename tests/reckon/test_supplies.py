"""A class to what it needs of packs, what a jug serves, how many strokes of a pump, what it costs."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.model.dates.studio_class import BatchFor, ClassDate
from builder.model.place import Name
from builder.model.recipe.ingredient import CountsAs
from builder.model.recipe.quantity import Mass, Volume
from builder.model.recipe.recipe import Fill
from builder.model.recipe.size import ContainersSize, ToFill
from builder.model.studio import Studio
from builder.model.supplies.cost import Need
from builder.model.supplies.supply import Pump, Supply, SupplyKind, Use
from builder.model.teaching.class_plan import ClassPlan
from builder.read.values.amounts import parse_pack
from builder.reckon import reckon_recipe
from builder.reckon.supplies.jugs import jugs_of_batch, jugs_of_class
from builder.reckon.supplies.pumps import strokes_of
from builder.reckon.supplies.supplies import supply_class
from builder.reckon.teaching.classes import reckon_class
from tests.making import Number, card, grams, lye, parts, phase, recipe, share, sure
from tests.studios import sound_studio

SOUND, FINDINGS = sound_studio()
BASE = card("base", CountsAs.BASE, density="0.98")


def pack(name: str, size: Mass | Volume | int, price: Number, kind: SupplyKind = SupplyKind.INGREDIENT, **named: Any) -> Supply:
    return Supply(kind, Name(name), size, "a pack", Fraction(price), **named)


def gallon(price: str = "49.00", **named: Any) -> Supply:
    return pack("base", parse_pack("1 gal"), price, **named)


STOCK = (
    gallon(),
    pack("lavender essential oil", grams(30), "12.40"),
    pack("4 fl oz bottle", 24, "21.60", SupplyKind.CONTAINER),
    pack("gloves", 100, "12.50", SupplyKind.ITEM, use=Use(each_student=Fraction(2), each_class=Fraction(1, 2))),
)


def studio(*supplies: Supply) -> Studio:
    """Return the sound studio with one lotion that is nothing but a base, its scent, and these supplies."""
    lotion = recipe(phase("base", {"base": parts(1)}), fill="113", choices=SOUND.recipes["plain-lotion"].choices)
    lotion = replace(lotion, fill=replace(lotion.fill, container=Name("4 fl oz bottle")))
    return replace(
        SOUND, ingredients={**SOUND.ingredients, "base": BASE}, recipes={"plain-lotion": lotion}, supplies=supplies or STOCK
    )  # fmt: skip


def thinned() -> Studio:
    """Return the same with a lotion of which 90 % are base."""
    here = studio()
    phases = (phase("base", {"base": parts(9), "glycerin": parts(1)}),)
    return replace(here, recipes={"plain-lotion": replace(here.recipes["plain-lotion"], phases=phases)})


def class_of(students: int, supplies: Sequence[Supply] = (), group_size: int = 1, here: Studio | None = None, **make: Any) -> ClassPlan:
    a_class = SOUND.classes["one-lotion"]
    made = replace(a_class.makes[0], **{"spare": 0, "at_home": (), **make})
    here = here or studio(*supplies)
    dated = ClassDate(datetime(2027, 3, 6, 10), enrolled=students)
    return supply_class(here, reckon_class(here, replace(a_class, makes=(made,), group_size=group_size), dated)[0])


def needs(sheet: ClassPlan) -> dict[str, Need]:
    return {need.name: need for need in sure(sheet.cost).needs}


# One US gallon is 231 cubic inches, an inch 25.4 mm: 3.785 411 784 L (NIST Handbook 44, Appendix C). An avoirdupois pound is
# 453.592 37 g and has sixteen ounces; a US fluid ounce is the 128th part of the gallon (same place).
@pytest.mark.parametrize(
    ("written", "holds"),
    [
        ("1 gal", Volume(231 * Fraction("25.4") ** 3 / 1000)),
        ("128 fl oz", Volume(Fraction("3785.411784"))),
        ("1 lb", Mass(Fraction("453.59237"))),
        ("16 oz", Mass(Fraction("453.59237"))),
        ("1 lb 8 oz", Mass(Fraction("680.388555"))),
    ],
)
def test_packs_by_the_published_units(written: str, holds: Mass | Volume) -> None:
    assert parse_pack(written) == holds


def test_a_gallon_weighs_by_its_density_or_as_the_studio_found() -> None:
    assert gallon().weight(BASE) == Mass(Fraction("3785.411784") * Fraction("0.98"))
    weighed = gallon(weighs=grams(3750), measured="full jug less the empty one", pump=Pump(Volume(Fraction(8)), "label"))
    assert weighed.weight(BASE) == grams(3750)
    # The pack's own density counts for the stroke as well: 3750 g in 3785.4 mL.
    assert weighed.stroke(BASE) == Mass(8 * Fraction(3750) / Fraction("3785.411784"))
    assert gallon().weight(card("base")) is None


# 3709.7 g of base fill 32 bottles of 113 g and leave 93.7 g.
def test_what_a_gallon_serves_by_hand() -> None:
    jug = class_of(10).made[0].jugs[0]
    assert (jug.students, jug.containers, jug.number) == (32, 32, 1)
    assert jug.left == jug.holds - grams(1130)
    assert jug.left_share == 1 - 1130 / (Fraction("3785.411784") * Fraction("0.98"))
    # Two spare bottles and 40 g in the pot: (3709.7 - 266) / 113 = 30.5 students.
    jug = class_of(10, spare=2, left_in_the_pot=grams(40)).made[0].jugs[0]
    assert (jug.students, jug.containers) == (30, 32)


# Of a lotion of which 90 % are base 3709.7 g of base fill 3709.7 / (113 x 0.9) = 36.5 bottles. With two spare ones and 40 g in the pot they
# serve (3709.7 - 0.9 x 266) / (113 x 0.9) = 34.1 students.
def test_what_a_gallon_serves_of_a_lotion_that_is_not_all_base() -> None:
    here = thinned()
    (jug,) = jugs_of_batch(here, reckon_recipe(here, here.recipes["plain-lotion"], ContainersSize(10)))
    assert jug.containers == 36
    jug = class_of(10, here=here, spare=2, left_in_the_pot=grams(40)).made[0].jugs[0]
    assert (jug.students, jug.containers) == (34, 36)


# 5 g stick to each cup, and each student fills a jar of 55 g as well: (3709.7 - 40) / (118 + 60) = 20.6 students.
def test_what_a_gallon_serves_with_cups_and_a_second_container() -> None:
    jar = ToFill(Fill(Name("2 fl oz jar"), grams(55)), each_student=1)
    jug = class_of(10, left_in_the_pot=grams(40), left_in_each_cup=grams(5), also=(jar,)).made[0].jugs[0]
    assert (jug.students, jug.containers) == (20, 20)


# Each student's own batch leaves 5 g in the pot, and so does the teacher's with its one spare bottle: (3709.7 - 118) / 118 = 30.4.
def test_what_a_gallon_serves_where_each_makes_a_batch() -> None:
    jug = class_of(10, batch_for=BatchFor.STUDENT, spare=1, left_in_the_pot=grams(5)).made[0].jugs[0]
    assert (jug.students, jug.containers) == (30, 31)
    assert jug.left == jug.holds - grams(118 * 11)


# A batch for each group of three with 5 g left in its pot takes 344 g: (3709.7 - 118) / 344 = 10.4 groups beside the teacher's own bottle.
def test_what_a_gallon_serves_where_groups_make_a_batch() -> None:
    jug = class_of(9, group_size=3, batch_for=BatchFor.GROUP, spare=1, left_in_the_pot=grams(5)).made[0].jugs[0]
    assert (jug.students, jug.containers) == (30, 31)
    assert jug.left == jug.holds - grams(3 * 344 + 118)


@given(
    st.sampled_from(list(BatchFor)), st.integers(0, 3), st.integers(0, 60), st.integers(0, 9), st.integers(1, 3), st.integers(0, 2),
    st.integers(2, 12),
)  # fmt: skip
def test_a_jug_serves_its_students_and_not_one_more(
    batch_for: BatchFor, spare: int, pot: int, cup: int, each: int, jars: int, jug_size: int
) -> None:
    packs = (pack("base", grams(jug_size * 500), "10.00"),)
    plan: dict[str, Any] = {
        "batch_for": batch_for,
        "spare": spare,
        "left_in_the_pot": grams(pot),
        "left_in_each_cup": grams(cup),
        "each_student": each,
    }
    plan |= {"also": (ToFill(Fill(Name("2 fl oz jar"), grams(55)), each_student=jars),)} if jars else {}
    jug = class_of(4, packs, **plan).made[0].jugs[0]
    for students, fits in ((sure(jug.students), True), (sure(jug.students) + 1, False)):
        if students > 0:
            needed = needs(class_of(students, packs, **plan))["base"].used
            assert (needed <= jug.holds.grams) is fits


@given(st.sampled_from(list(BatchFor)), st.integers(1, 20))
def test_twice_the_students_need_twice_as_much_before_packs(batch_for: BatchFor, students: int) -> None:
    items = (*STOCK[:3], pack("gloves", 100, "12.50", SupplyKind.ITEM, use=Use(each_student=Fraction(2))))
    one, two = (needs(class_of(number, items, batch_for=batch_for)) for number in (students, 2 * students))
    assert {name: 2 * need.used for name, need in one.items()} == {name: need.used for name, need in two.items()}
    assert {name: 2 * need.if_chosen for name, need in one.items()} == {name: need.if_chosen for name, need in two.items()}


# Ten students: 1130 g of base at 49.00 for 3709.70352832 g; 0.56 g of scent each at 12.40 for 30 g; a bottle each at 0.90; two gloves
# each and half of one more at 0.125.
def test_a_class_by_hand() -> None:
    cost = class_of(10).cost
    base = Fraction("49") * 1130 / (Fraction("3785.411784") * Fraction("0.98"))
    scent = Fraction("12.40") * Fraction("5.6") / 30
    assert sure(cost).of(SupplyKind.INGREDIENT) == base
    assert sure(cost).choices == scent
    assert sure(cost).of(SupplyKind.CONTAINER) == 9
    assert sure(cost).of(SupplyKind.ITEM) == Fraction("20.5") * Fraction("0.125")
    assert sure(cost).total == base + scent + 9 + Fraction("2.5625")
    assert sure(cost).each_student == sure(cost).total / 10
    assert sure(cost).containers[0].value == (base + scent) / 10 + Fraction("0.9")
    assert sure(cost).till == Fraction("49") + Fraction("12.40") + Fraction("21.60") + Fraction("12.50")


# Ten students in four groups fill ten bottles and two spare ones: 20 + 4 x 3 + 1/2 + 12 x 1 of an item at 0.125.
def test_what_is_used_up_by_hand() -> None:
    use = Use(each_student=Fraction(2), each_group=Fraction(3), each_class=Fraction(1, 2), each_container=Fraction(1))
    cost = sure(class_of(10, (pack("wipes", 100, "12.50", SupplyKind.ITEM, use=use),), group_size=3, spare=2).cost)
    assert cost.of(SupplyKind.ITEM) == Fraction("44.5") * Fraction("0.125")
    assert cost.containers[0].value == Fraction("0.125")


@given(
    st.integers(1, 40), st.lists(st.tuples(st.integers(30, 5000), st.integers(1, 9000)), min_size=1, max_size=3, unique_by=lambda p: p[0])
)
def test_what_is_used_and_what_is_left_add_up_to_the_till(students: int, sizes: Sequence[tuple[int, int]]) -> None:
    packs = [pack("base", grams(size), Fraction(cents, 100)) for size, cents in sizes]
    cost = class_of(students, packs).cost
    base = next(need for need in sure(cost).needs if need.name == "base")
    assert sure(base.purchase).holds - sure(base.purchase).left == base.quantity
    assert base.value + base.left_value == sure(base.purchase).price
    assert isinstance(sure(cost).total, Fraction)


def test_what_has_no_price_is_named_and_counts_for_nothing() -> None:
    cost = class_of(10, STOCK[1:]).cost
    assert sure(cost).unpriced == ("base",)
    assert sure(cost).of(SupplyKind.INGREDIENT) == 0
    assert sure(cost).total > 0


def test_a_pack_by_volume_without_a_density_has_no_price() -> None:
    here = replace(studio(), ingredients={**SOUND.ingredients, "base": card("base", CountsAs.BASE)})
    sheet = supply_class(here, reckon_class(here, SOUND.classes["one-lotion"])[0])
    assert "base" in sure(sheet.cost).unpriced
    assert jugs_of_class(here, sheet.made[0], 1) == ()


def test_an_item_counts_only_in_the_classes_that_it_names() -> None:
    gloves = pack("gloves", 100, "12.50", SupplyKind.ITEM, use=Use(each_student=Fraction(2), classes=(Name("one-bar"),)))
    assert sure(class_of(10, (*STOCK[:3], gloves)).cost).of(SupplyKind.ITEM) == 0


def test_a_mould_is_used_again_and_costs_nothing() -> None:
    here = replace(SOUND, supplies=(pack("olive oil", grams(1000), "10.00"),))
    cost = reckon_recipe(here, here.recipes["plain-bar"], ContainersSize(5)).cost
    assert [need.name for need in sure(cost).needs if need.kind is SupplyKind.CONTAINER] == []


# Who can only leave it out adds nothing.
def test_a_choice_of_nothing_costs_nothing() -> None:
    here = studio()
    lotion = here.recipes["plain-lotion"]
    (choice,) = lotion.choices
    costs = [
        sure(class_of(10, here=replace(here, recipes={"plain-lotion": replace(lotion, choices=choices)})).cost)
        for choices in ((), (replace(choice, options=(None,)),), (choice,))
    ]
    without, of_nothing, of_scent = ((cost.choices, cost.containers[0].value) for cost in costs)
    assert without == of_nothing and without[0] == 0 < of_scent[0]


def test_a_studio_without_supplies_has_no_costs() -> None:
    sheet = reckon_class(SOUND, SOUND.classes["one-lotion"])[0]
    assert supply_class(SOUND, sheet) is sheet
    assert sheet.cost is None


# 231 g at 7.8 g a stroke are 29.6 strokes; 40 g are 5.1, so that five are nearest; 43 g are 5.5.
@pytest.mark.parametrize(("mass", "strokes"), [(231, 30), (40, 5), (43, "5.5"), (78, 10), ("81.9", 11), ("1.9", 0), ("1.95", "0.5")])
def test_strokes_by_hand(mass: Number, strokes: Number) -> None:
    assert strokes_of(grams(mass), grams("7.8")) == Fraction(strokes)


def test_strokes_of_a_batch() -> None:
    pump = Pump(Volume(Fraction(8)), "label")
    (one,) = class_of(10, (gallon(pump=pump),), batch_for=BatchFor.STUDENT).made[0].batch.strokes
    # 113 g at 8 mL of 0.98 g/mL are 14.4 strokes.
    assert (one.ingredient, one.strokes, one.weigh) == ("base", Fraction(14), grams("109.76"))


# Two spare bottles take 226 g, and nothing is left of 50 g or of 226 g for a student; of 339 g one bottle is.
@pytest.mark.parametrize(("size", "students", "containers"), [(50, 0, 0), (226, 0, 0), (338, 0, 0), (339, 1, 3)])
def test_a_jug_that_holds_too_little_serves_nobody(size: int, students: int, containers: int) -> None:
    jug = class_of(4, (pack("base", grams(size), "10.00"),), spare=2).made[0].jugs[0]
    assert (jug.students, jug.containers) == (students, containers)


# 1130 g at 7.84 g a stroke are 144.1 strokes; 4520 g take two gallons of 3709.7 g.
def test_a_jug_with_a_pump_says_its_strokes_and_how_many_it_takes() -> None:
    pump = Pump(Volume(Fraction(8)), "label")
    jug = class_of(10, (gallon(pump=pump),)).made[0].jugs[0]
    assert (jug.strokes, jug.stroke, jug.number) == (144, grams("7.84"), 1)
    jug = class_of(40).made[0].jugs[0]
    assert (jug.strokes, jug.number, jug.left) == (None, 2, 2 * jug.holds - grams(4520))


# Of a solution of 50 % that is mixed from solid of 98 % the solid is 50 / 98 by weight, and the rest is water.
def test_a_batch_with_ready_mixed_lye_takes_the_solid_and_the_water_of_it() -> None:
    here = replace(SOUND, supplies=(pack("olive oil", grams(1000), "10.00"),))
    bar = replace(here.recipes["plain-bar"], lye=lye(purity=98, ready_mixed=share(50)))
    made = reckon_recipe(here, bar, ContainersSize(5))
    solution = next(w.mass.grams for w in made.grams.weighed if w.line.strength is not None)
    water = next(w.mass.grams for w in made.grams.weighed if w.line.ingredient.key == "water")
    used = {need.name: need.used for need in sure(made.cost).needs}
    assert used["Sodium hydroxide"] == solution * 50 / 98
    assert used["Water"] == water + solution * 48 / 98
