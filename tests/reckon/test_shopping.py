"""Several dates to what they need together, what the inventory leaves to be bought, the packs for it, and what is left."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date, datetime, timedelta
from fractions import Fraction
from itertools import product
from math import ceil
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.model.dates.studio_class import ClassDate
from builder.model.keeping.durability import Durability
from builder.model.place import Name
from builder.model.recipe.ingredient import CountsAs
from builder.model.recipe.quantity import Mass, Volume
from builder.model.roster.roster import Roster, RosterRow
from builder.model.studio import Studio
from builder.model.supplies.inventory import InventoryEntry
from builder.model.supplies.shopping import Period, Shopping, Wanted
from builder.model.supplies.supply import Supply, SupplyKind, Use
from builder.reckon import reckon_classes, reckon_shopping
from tests.making import Number, card, grams, parts, phase, recipe, sure
from tests.studios import sound_studio

SOUND, FINDINGS = sound_studio()
TODAY = date(2027, 1, 2)
BASE = card("base", CountsAs.BASE, density="0.98")
LAVENDER = "Lavender essential oil"


def pack(name: str, size: Mass | Volume | int, price: Number, kind: SupplyKind = SupplyKind.INGREDIENT, **named: Any) -> Supply:
    return Supply(kind, Name(name), size, "a pack", Fraction(price), **named)


def stock(
    name: str, have: Mass | Volume | Fraction, kind: SupplyKind = SupplyKind.INGREDIENT, counted: date = date(2026, 12, 30)
) -> InventoryEntry:
    return InventoryEntry(kind, Name(name), have, "some", counted)


def studio(
    enrolled: Sequence[int], supplies: Sequence[Supply] = (), inventory: Sequence[InventoryEntry] = (), **dates: tuple[ClassDate, ...]
) -> Studio:
    """Return the sound studio with one class, whose bottles of 113 g of base meet every week from January 9 for so many students."""
    lotion = recipe(phase("base", {"base": parts(1)}), fill="113", choices=SOUND.recipes["plain-lotion"].choices)
    lotion = replace(lotion, fill=replace(lotion.fill, container=Name("4 fl oz bottle")))
    a_class = SOUND.classes["one-lotion"]
    made = replace(a_class.makes[0], spare=0, at_home=())
    first = datetime(2027, 1, 9, 10)
    days = tuple(ClassDate(first + timedelta(weeks=week), enrolled=people) for week, people in enumerate(enrolled))
    return replace(
        SOUND,
        ingredients={**SOUND.ingredients, "base": BASE},
        recipes={"plain-lotion": lotion},
        classes={"one-lotion": replace(a_class, makes=(made,), dates=dates.get("dates", days), group_size=1)},
        supplies=tuple(supplies),
        inventory=tuple(inventory),
    )


def shop(here: Studio, period: Period | None = None, today: date = TODAY) -> Shopping:
    sheets = reckon_classes(here, here.classes.values(), on=today)
    return reckon_shopping(here, sheets, period or Period(today), today=today)


def wanted(shopping: Shopping) -> dict[str, Wanted]:
    return {one.name: one for one in shopping.wanted}


# 10, 5 and 8 students take 1130 g, 565 g and 904 g of base, 2599 g in all. 400 g are there, so that 2199 g are short: a pack of 2 kg at
# 20.00 and one of 500 g at 6.00 leave 301 g.
def test_three_dates_by_hand() -> None:
    packs = (pack("base", grams(500), "6.00"), pack("base", grams(2000), "20.00"))
    found = shop(studio((10, 5, 8), packs, [stock("base", grams(400))]))
    base = wanted(found)["base"]
    assert base.on_days == ((date(2027, 1, 9), Fraction(1130)), (date(2027, 1, 16), Fraction(565)), (date(2027, 1, 23), Fraction(904)))
    assert (base.needed, base.short, base.left) == (Fraction(2599), Fraction(2199), Fraction(301))
    assert sorted((grams_of(bought.supply), bought.number) for bought in sure(base.purchase).packs) == [
        (Fraction(500), 1),
        (Fraction(2000), 1),
    ]
    assert found.total == 26
    kinds = {"base": SupplyKind.INGREDIENT, "Lavender essential oil": SupplyKind.INGREDIENT, "4 fl oz bottle": SupplyKind.CONTAINER}
    assert {one.name: one.kind for one in found.wanted} == kinds
    # The list is sorted by the kinds of ingredients; a bottle is none.
    of_cards = {"base": BASE.kind, "Lavender essential oil": sure(SOUND.ingredient("lavender essential oil")).kind, "4 fl oz bottle": None}
    assert {one.name: one.card_kind for one in found.wanted} == of_cards


def grams_of(supply: Supply) -> Fraction:
    """Return what a pack holds, which is weighed."""
    assert isinstance(supply.size, Mass)
    return supply.size.grams


SIZES = st.lists(
    st.builds(lambda size, cents: (size, cents), st.integers(300, 4000), st.integers(0, 6000)), min_size=1, max_size=3, unique=True
)


def cheapest_of_all(short: Fraction, packs: Sequence[tuple[int, int]]) -> Fraction:
    """Return the least price of all combinations that cover what is short."""
    ranges = [range(ceil(short / size) + 1) for size, _ in packs]
    prices = (
        sum((Fraction(cents, 100) * n for (_, cents), n in zip(packs, counts, strict=True)), Fraction(0))
        for counts in product(*ranges)
        if sum(size * n for (size, _), n in zip(packs, counts, strict=True)) >= short
    )
    return min(prices)


@given(st.lists(st.integers(1, 12), min_size=1, max_size=4), SIZES, st.fractions(min_value=0, max_value=3000, max_denominator=10))
def test_what_is_bought_covers_what_is_short_at_the_least_price_and_the_rest_is_left(
    enrolled: Sequence[int], packs: Sequence[tuple[int, int]], have: Fraction
) -> None:
    supplies = [pack("base", grams(size), Fraction(cents, 100)) for size, cents in packs]
    base = wanted(shop(studio(enrolled, supplies, [stock("base", Mass(have))])))["base"]
    assert base.needed == sum(113 * people for people in enrolled) == sum(amount for _, amount in base.on_days)
    bought = sum(grams_of(one.supply) * one.number for one in base.purchase.packs) if base.purchase else 0
    assert bought >= base.needed - have
    assert base.left == have + bought - base.needed >= 0
    assert (base.purchase is None) == (have >= base.needed)
    if base.purchase:
        assert base.purchase.proven
        assert base.purchase.price == cheapest_of_all(base.short, packs)


@given(st.lists(st.integers(1, 12), min_size=2, max_size=4), SIZES)
def test_bought_once_for_all_costs_no_more_than_for_each_date_alone(enrolled: Sequence[int], packs: Sequence[tuple[int, int]]) -> None:
    supplies = [pack("base", grams(size), Fraction(cents, 100)) for size, cents in packs]
    together = shop(studio(enrolled, supplies))
    days = [one.on.date() for one in together.occasions]
    alone = [shop(studio(enrolled, supplies), Period(day, day)) for day in days]
    assert together.total <= sum(one.total for one in alone)
    for name, one in wanted(together).items():
        assert one.needed == sum(wanted(single)[name].needed for single in alone)


# Two gloves for each student and a quarter of a bottle for each class: four classes take one bottle, however they are spread.
def test_parts_of_a_piece_add_up_over_the_dates() -> None:
    items = (
        pack("gloves", 10, "2.00", SupplyKind.ITEM, use=Use(each_student=Fraction(2))),
        pack("bottles", 1, "3.40", SupplyKind.ITEM, use=Use(each_class=Fraction(1, 4))),
    )
    found = wanted(shop(studio((1, 1, 1, 1), items, [stock("gloves", Fraction(7), SupplyKind.ITEM)])))
    assert (found["bottles"].needed, found["bottles"].left) == (Fraction(1), Fraction(0))
    assert sure(found["bottles"].purchase).price == Fraction("3.40")
    assert (found["gloves"].needed, found["gloves"].short, found["gloves"].left) == (Fraction(8), Fraction(1), Fraction(9))


def test_past_and_cancelled_dates_and_dates_without_anybody_need_nothing() -> None:
    dates = (
        ClassDate(datetime(2026, 12, 31, 10), enrolled=5),
        ClassDate(datetime(2027, 1, 9, 10), enrolled=5, cancelled="the floor is laid anew"),
        ClassDate(datetime(2027, 1, 16, 10), enrolled=0),
        ClassDate(datetime(2027, 1, 23, 10), enrolled=3, moved_from=(datetime(2027, 1, 12, 10),)),
    )
    found = shop(studio((), inventory=[stock("base", grams(0))], dates=dates))
    assert [one.on.date() for one in found.occasions] == [date(2027, 1, 23)]
    assert wanted(found)["base"].needed == 3 * 113
    assert [(one.on.date(), one.students) for one in found.nobody_yet] == [(date(2027, 1, 16), 0)]
    # Counted on December 30, and on the 31st a class was held.
    assert [one.on.date() for one in found.held_since] == [date(2026, 12, 31)]
    assert shop(studio((), dates=dates[1:3])).occasions == ()


def test_a_class_without_a_date_that_comes_needs_nothing() -> None:
    assert shop(studio(())).wanted == ()


def test_a_period_and_classes_by_name() -> None:
    here = studio((10, 5, 8))
    assert [one.students for one in shop(here, Period(date(2027, 1, 16))).occasions] == [5, 8]
    assert [one.students for one in shop(here, Period(TODAY, date(2027, 1, 16))).occasions] == [10, 5]
    assert shop(here, Period(TODAY, classes=frozenset({"one-bar"}))).occasions == ()


# The lotion offers lavender or nothing, at most 0.56 g in 113 g. Of four people one has chosen it and one has left it out; the two who have
# not chosen count half with it, as one portion: 2 x 0.56 g.
def test_choices_count_as_the_roster_says_and_as_the_class_totals_expect() -> None:
    rows = tuple(
        RosterRow(Name(name), datetime(2027, 1, 9), None, "", {"scent": Name(cell)})
        for name, cell in (("A", "lavender essential oil"), ("B", "no scent"), ("C", ""), ("D", ""))
    )
    here = replace(studio((4,)), rosters={"one-lotion": Roster((Name("scent"),), rows)})
    sheets = reckon_classes(here, here.classes.values(), on=TODAY)
    expected = sheets[0].made[0].choices[0].options[0].expected
    found = wanted(shop(here))[LAVENDER]
    assert found.needed == expected.grams == Fraction("1.12")
    assert wanted(shop(studio((4,))))[LAVENDER].needed == Fraction("1.12")
    assert wanted(shop(studio((6,))))[LAVENDER].needed == Fraction("1.68")


# One US gallon is 3785.411 784 mL (NIST Handbook 44, Appendix C); at 0.98 g/mL half of one is 1854.85 g, by a jug weighed at 3750 g 1875 g.
@pytest.mark.parametrize(
    ("supplies", "holds"),
    [
        ((), Fraction("3785.411784") * Fraction("0.98") / 2),
        ((pack("base", Volume(Fraction("3785.411784")), "49.00", weighs=grams(3750), measured="weighed"),), Fraction(1875)),
    ],
)
def test_a_volume_inventory_weighs_by_the_card_or_as_the_studio_has_weighed_a_pack(supplies: tuple[Supply, ...], holds: Fraction) -> None:
    here = studio((20,), supplies, [stock("base", Volume(Fraction("3785.411784") / 2))])
    assert wanted(shop(here))["base"].have == holds


def test_a_volume_of_unknown_density_is_not_taken_off() -> None:
    here = studio((20,), (), [stock("base", Volume(Fraction(500)))])
    here = replace(here, ingredients={**here.ingredients, "base": card("base", CountsAs.BASE)})
    assert wanted(shop(here))["base"].have == 0


def test_of_what_stands_there_twice_the_first_counts() -> None:
    here = studio((20,), (), [stock("base", grams(100)), stock("Base", grams(900))])
    assert wanted(shop(here))["base"].have == 100


def test_what_is_short_without_a_price_is_told_and_costs_nothing() -> None:
    found = shop(studio((4,), (), [stock("4 fl oz bottle", Fraction(4), SupplyKind.CONTAINER)]))
    base, bottles = wanted(found)["base"], wanted(found)["4 fl oz bottle"]
    assert (base.unpriced, base.left, found.total) == (True, None, Fraction(0))
    assert (bottles.unpriced, bottles.left) == (False, Fraction(0))


# Bought for January 9 it keeps until February 9: the dates of the sixth week and later, from February 13 on, come too late.
def test_what_does_not_keep_until_a_date_is_told() -> None:
    packs = (pack("base", grams(5000), "20.00", keeps=Durability(1, 0)),)
    base = wanted(shop(studio((1,) * 7, packs)))["base"]
    assert base.too_late == (date(2027, 2, 13), date(2027, 2, 20))
    assert wanted(shop(studio((1,) * 5, packs)))["base"].too_late == ()
    # What is in stock is as old as it is: only what is bought is spoken of.
    assert wanted(shop(studio((1,) * 7, packs, [stock("base", grams(5000))])))["base"].too_late == ()


# Counted on December 30: what a class used on that day may be gone, what one used on the day before was not there. Today is still to come.
def test_the_day_of_the_count_counts_and_today_is_to_come() -> None:
    days = (datetime(2026, 12, 29, 10), datetime(2026, 12, 30, 10), datetime(2027, 1, 1, 10))
    found = shop(
        studio((), inventory=[stock("base", grams(0))], dates=tuple(ClassDate(day, enrolled=5) for day in days)), today=date(2027, 1, 1)
    )
    assert [one.on.date() for one in found.held_since] == [date(2026, 12, 30)]
    assert [one.on.date() for one in found.occasions] == [date(2027, 1, 1)]
    found = shop(
        studio((), inventory=[stock("base", grams(0))], dates=tuple(ClassDate(day, enrolled=0) for day in days)), today=date(2027, 1, 1)
    )
    assert [one.on.date() for one in found.nobody_yet] == [date(2027, 1, 1)]
