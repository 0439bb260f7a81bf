"""How much counts towards a limit: a blend whose shares are not known, acids as salts, choices at their most, percent of oils."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import permutations
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.model.dose.limit import Limit, LimitRole, LimitRules, LimitWeight, PercentOf, is_own_law
from builder.model.dose.towards import Counted
from builder.model.hazard import Hazard
from builder.model.place import Name
from builder.model.recipe.essential_oil import Held
from builder.model.recipe.figure import Known
from builder.model.recipe.ingredient import CountsAs, Ingredient, LabelName
from builder.model.recipe.product import Contact, DeclaredBy, Product
from builder.model.recipe.recipe import Choice
from builder.model.recipe.size import TotalSize
from builder.reckon.dose.counting import count_towards, factors_in
from builder.words.fold import fold
from tests.making import SOURCE, Number, card, cards, fat, grams, phase, recipe, scale, share, sure, worked
from tests.regions import region as region_of

LOTION = Product("lotion", "Lotion", Contact.LEAVE_ON, False, DeclaredBy.WEIGHT)


def limit(*names: str, most: Number = "1", counted_as: str = "", factor: Fraction | None = None, **named: Any) -> Limit:
    fixed = Limit(
        "X", tuple(fold(name) for name in names), LimitRole.OTHER, Fraction(most) / 100, PercentOf.PRODUCT, counted_as, factor, "all",
        tuple(Contact), (), "", None, "EU", LimitWeight.LAW, SOURCE, "here", Known.READ, "",
    )  # fmt: skip
    return replace(fixed, **named)


def blend(*names: str) -> Ingredient:
    return replace(card("blend"), label_name=LabelName(names, names, Known.MEMORY))


def counted(
    a_limit: Limit, lines: Mapping[str, Number], *extra: Ingredient, choices: tuple[Choice, ...] = (), others: tuple[Limit, ...] = ()
) -> tuple[Counted, ...]:
    stock = cards(*extra)
    made = recipe(phase("all", {name: share(percent) for name, percent in lines.items()}), choices=choices)
    sheet = worked(made, LOTION, TotalSize(grams(1000)), stock, (scale("0.01"),))
    return count_towards(a_limit, sheet.own, sheet.grams, stock, factors_in((a_limit, *others)))


def count(a_limit: Limit, lines: Mapping[str, int], *extra: Ingredient, **named: Any) -> tuple[int | Fraction, int | Fraction]:
    found = counted(a_limit, lines, *extra, **named)
    return sum(one.least for one in found), sum(one.most for one in found)


# Of 0.0001 % in a kilogram there is 1 mg, which a scale that reads to 0.01 g does not show: as weighed there is none of it.
def test_only_what_counts_is_told_of_the_most_first() -> None:
    found = counted(limit("a", "b", "c"), {"water": "97.8999", "a": "0.5", "b": "1.6", "c": "0.0001"}, card("a"), card("b"), card("c"))
    assert [(one.card.name, one.most) for one in found] == [("b", Fraction("0.016")), ("a", Fraction("0.005"))]


# IFRA Standards, combination rule for phototoxic oils: the sum of dose by limit is at most the whole.
@pytest.mark.parametrize(
    ("lines", "whole"), [({"water": 99, "a": 1}, "0.5"), ({"water": 98, "b": 2}, "0.25"), ({"water": 97, "a": 1, "b": 2}, "0.75")]
)
def test_several_take_up_a_limit_each_by_its_own(lines: Mapping[str, int], whole: str) -> None:
    together = limit(parts=(limit("a", most=2), limit("b", most=8)))
    assert count(together, lines, card("a"), card("b")) == (Fraction(whole), Fraction(whole))


@pytest.mark.parametrize(
    ("names", "least", "most"),
    # Worked out by hand: of three parts in descending order the first is between 1/3 and all, the second at most 1/2, the third at most
    # 1/3; the first two together at least 2/3; the last two together at most 2/3.
    [
        ("a", "1/3", "1"),
        ("b", "0", "1/2"),
        ("c", "0", "1/3"),
        ("ab", "2/3", "1"),
        ("bc", "0", "2/3"),
        ("ac", "1/2", "1"),
        ("abc", "1", "1"),
    ],
)
def test_parts_of_a_blend_lie_between_what_their_order_allows(names: str, least: str, most: str) -> None:
    found = count(limit(*names), {"water": 90, "blend": 10}, blend("A", "B", "C"))
    assert found == (Fraction(least) / 10, Fraction(most) / 10)


@given(st.lists(st.integers(1, 50), min_size=1, max_size=5), st.data())
def test_no_blend_that_keeps_its_order_lies_outside(weights: Sequence[int], data: st.DataObject) -> None:
    weights = sorted(weights, reverse=True)
    chosen = data.draw(st.sets(st.integers(0, len(weights) - 1), min_size=1))
    names = [f"part {number}" for number in range(len(weights))]
    least, most = count(limit(*(names[number] for number in chosen)), {"water": 90, "blend": 10}, blend(*names))
    true = Fraction(sum(weights[number] for number in chosen), sum(weights)) / 10
    assert least <= true <= most


# By hand, for 1.1 % of a blend that is 85 to 95 % of its first part: 0.935 to 1.045 % of that part. Of a blend "at least 60 %" of its
# first of three parts the second is at most 40 %, and the third at most half of what the first leaves.
@pytest.mark.parametrize(
    ("parts", "shares", "name", "least", "most"),
    [
        ("AB", {0: ("0.85", "0.95")}, "a", "0.85", "0.95"),
        ("AB", {0: ("0.85", "0.95")}, "b", "0.05", "0.15"),
        ("AB", {0: ("0.9", "0.9"), 1: ("0.1", "0.1")}, "ab", "1", "1"),
        ("ABC", {0: ("0.6", "1")}, "b", "0", "0.4"),
        ("ABC", {0: ("0.6", "1")}, "c", "0", "0.2"),
        ("ABC", {2: ("0.1", "0.2")}, "c", "0.1", "0.2"),
    ],
)
def test_shares_that_a_supplier_states_narrow_what_counts(
    parts: str, shares: Mapping[int, tuple[str, str]], name: str, least: str, most: str
) -> None:
    stated = {number: (Fraction(low), Fraction(high)) for number, (low, high) in shares.items()}
    made = replace(card("blend"), label_name=LabelName(tuple(parts), tuple(parts), Known.SUPPLIER, stated))
    found = count(limit(*name), {"water": 90, "blend": 10}, made)
    assert found == (Fraction(least) / 10, Fraction(most) / 10)


@given(st.lists(st.integers(1, 50), min_size=2, max_size=5), st.data())
def test_no_blend_that_keeps_its_order_and_its_shares_lies_outside(weights: Sequence[int], data: st.DataObject) -> None:
    weights = sorted(weights, reverse=True)
    whole = sum(weights)
    chosen = data.draw(st.sets(st.integers(0, len(weights) - 1), min_size=1))
    known = data.draw(st.sets(st.integers(0, len(weights) - 1)))
    slack = Fraction(data.draw(st.integers(0, 20)), 100)
    stated = {
        one: (max(Fraction(weights[one], whole) - slack, Fraction(0)), min(Fraction(weights[one], whole) + slack, Fraction(1)))
        for one in known
    }
    names = tuple(f"part {number}" for number in range(len(weights)))
    made = replace(card("blend"), label_name=LabelName(names, names, Known.SUPPLIER, stated))
    least, most = count(limit(*(names[number] for number in chosen)), {"water": 90, "blend": 10}, made)
    true = Fraction(sum(weights[number] for number in chosen), whole) / 10
    assert least <= true <= most


# What a supplier states of the whole counts beside the parts that are declared: of two parts the first is 50 to 100 %.
@pytest.mark.parametrize(
    ("names", "least", "most"), [("c", "0.1", "0.2"), ("bc", "0.1", "0.7"), ("ac", "0.6", "1"), ("cd", "0.13", "0.25"), ("a", "0.5", "1")]
)
def test_what_a_supplier_states_counts_beside_the_parts(names: str, least: str, most: str) -> None:
    stated = {
        name: Held(name, Fraction(low), Fraction(high), (), Known.SUPPLIER, stated=True)
        for name, low, high in (("c", "0.1", "0.2"), ("d", "0.03", "0.05"))
    }
    made = replace(blend("A", "B"), stated=stated)
    found = count(limit(*names), {"water": 90, "blend": 10}, made)
    assert found == (Fraction(least) / 10, Fraction(most) / 10)


# Regulation (EC) 1223/2009 Annex III entry 381 limits aluminium compounds as aluminium: of 10 % of what is 5 to 20 % aluminium, 0.5 to 2 %.
def test_aluminium_counts_by_how_much_of_it_there_is() -> None:
    as_aluminium = limit(counted_as="aluminium")
    assert count(as_aluminium, {"water": 90, "clay": 10}, card("clay", aluminium=(5, 20))) == (Fraction("0.005"), Fraction("0.02"))
    assert count(as_aluminium, {"water": 90, "clay": 10}, card("clay")) == (0, 0)


# Two constituents, each at the most that is published of it, can come to more than there is: the second of two parts is at most half of
# the blend, and 0.7 and 0.6 of it are at most all of it.
@pytest.mark.parametrize(("names", "most"), [("c", "0.35"), ("d", "0.3"), ("cd", "0.5"), ("acd", "1")])
def test_what_a_part_holds_comes_to_no_more_than_the_part(names: str, most: str) -> None:
    held = {name: Held(name, Fraction(low), Fraction(high), (), Known.READ) for name, low, high in (("c", "0.3", "0.7"), ("d", "0", "0.6"))}
    assert count(limit(*names), {"water": 90, "blend": 10}, replace(blend("A", "B"), holds=({}, held)))[1] == Fraction(most) / 10


def test_a_named_blend_counts_whole_and_its_parts_alone_do_not() -> None:
    named = limit("a + b")
    assert count(named, {"water": 90, "blend": 10}, blend("B", "A")) == (Fraction("0.1"), Fraction("0.1"))
    assert count(named, {"water": 90, "a": 10}, card("a")) == (0, 0)


def test_of_a_ready_made_base_only_what_is_certain_counts_but_a_ban_is_a_ban() -> None:
    base = replace(blend("A", "B"), counts_as=CountsAs.BASE)
    assert count(limit("b"), {"water": 50, "blend": 50}, base) == (0, 0)
    assert count(limit("b", most=0), {"water": 50, "blend": 50}, base)[1] == Fraction("0.25")
    assert count(limit("a"), {"water": 50, "blend": 50}, base)[0] == Fraction("0.25")


def test_what_is_merely_usual_is_not_asked_of_a_ready_made_base() -> None:
    base = replace(blend("A", "B"), counts_as=CountsAs.BASE)
    assert count(limit("a", weight=LimitWeight.PRACTICE), {"water": 50, "blend": 50}, base) == (0, 0)


# 0.79 % of 290 g are 2.291 g, or 0.0808 oz, which a scale that reads to 0.03 oz shows as 0.09 oz: 2.55 g, 0.88 % of the batch.
@pytest.mark.parametrize(("weight", "unit"), [(LimitWeight.LAW, "oz"), (LimitWeight.PRACTICE, "g")])
def test_a_limit_is_judged_by_the_weighings_that_pass_it_but_a_usual_one_in_grams(weight: LimitWeight, unit: str) -> None:
    stock, law = cards(card("salt")), limit("salt", most="0.8", weight=weight)
    made = recipe(phase("all", {"water": share("99.21"), "salt": share("0.79")}))
    scales = (scale("0.01"), scale("0.03", unit="oz", per_unit="28.349523125"))
    sheet = worked(made, LOTION, TotalSize(grams(290)), stock, scales, rules=LimitRules(region_of("EU"), (law,)))
    (towards,) = sheet.own.towards
    assert towards.unit == unit
    assert (towards.least > sure(law.most)) is (unit == "oz")


def test_a_salt_counts_as_its_acid_and_without_a_factor_as_at_most_itself() -> None:
    acids = limit("acid", "salt", counted_as="Acid")
    row = limit("salt", counted_as="Acid", factor=Fraction("1.25"))
    lines = {"water": 98, "acid": 1, "salt": 1}
    assert count(acids, lines, card("acid"), card("salt"), others=(row,)) == (Fraction("0.018"), Fraction("0.018"))
    assert count(acids, lines, card("acid"), card("salt")) == (Fraction("0.01"), Fraction("0.02"))


def test_students_add_the_option_that_counts_most_in_each_choice() -> None:
    choices = (
        Choice("scent", (Name("mild"), Name("strong"), None), share(2)),
        Choice("more scent", (Name("strong"), None), share(1)),
    )
    strong, mild = card("strong"), replace(blend("Strong", "Other"), name="mild")
    _, most = count(limit("strong"), {"water": 99, "strong": 1}, strong, mild, choices=choices)
    # Of a portion of 100 g: 1 g in it, 2 g and 1 g added.
    assert most == Fraction("0.04") / Fraction("1.03")


@pytest.mark.parametrize("names", list(permutations(("plain", "mild", "strong"))))
def test_the_worst_option_is_found_wherever_it_stands(names: tuple[str, ...]) -> None:
    # Of a portion of 100 g: 2 g of the strong one are added, or of the mild one, of which half or more is the same, or of a plain one.
    mild = replace(blend("Strong", "Other"), name="mild")
    for options, counts in ((names, 2), (tuple(one for one in names if one != "strong"), 1)):
        choice = Choice("scent", tuple(map(Name, options)), share(2))
        least, _ = count(limit("strong"), {"water": 100}, card("strong"), mild, card("plain"), choices=(choice,))
        assert least == Fraction(counts, 102)


def test_percent_of_oils_is_counted_on_the_oils() -> None:
    of_oils = limit("extract", percent_of=PercentOf.OILS)
    found = count(of_oils, {"water": 79, "oil": 20, "extract": 1}, fat("oil", 190), card("extract"))
    assert found == (Fraction("0.05"), Fraction("0.05"))
    assert count(of_oils, {"water": 99, "extract": 1}, card("extract")) == (0, 0)


# By hand: 2 g in a portion of 100 g, of which 20 g are oils, are 10 % of the oils; of a blend half or more is its first part.
def test_a_choice_is_counted_on_the_oils_of_its_portion() -> None:
    choices = (Choice("scent", (Name("blend"),), share(2)),)
    of_oils = limit("a", percent_of=PercentOf.OILS)
    found = count(of_oils, {"water": 80, "oil": 20}, fat("oil", 190), blend("A", "B"), choices=choices)
    assert found == (Fraction("0.05"), Fraction("0.1"))


# Of the second part of a blend nothing is certain, and half of it may be that: 1 g in 102 g. A plain option has none.
@pytest.mark.parametrize("names", [("plain", "maybe"), ("maybe", "plain")])
def test_where_nothing_is_certain_what_may_be_decides(names: tuple[str, ...]) -> None:
    maybe = replace(blend("Other", "Strong"), name="maybe")
    choices = (Choice("scent", tuple(map(Name, names)), share(2)),)
    assert count(limit("strong"), {"water": 100}, maybe, card("plain"), choices=choices) == (0, Fraction(1, 102))


# What holds less than the limit allows thins what the batch holds: a student may leave it out, so that it is not counted.
def test_what_thins_the_rest_is_left_out() -> None:
    choices = (Choice("scent", (Name("blend"), None), share(2)),)
    assert count(limit("b", most=60), {"water": 100}, blend("A", "B"), choices=choices) == (0, 0)


# A row that sets no maximum and asks for a label counts all of it, however little: 2 g in 102 g.
def test_a_choice_counts_towards_what_sets_no_maximum() -> None:
    choices = (Choice("scent", (Name("blend"),), share(2)),)
    found = count(replace(limit("a"), most=None), {"water": 100}, blend("A", "B"), choices=choices)
    assert found == (Fraction(1, 102), Fraction(2, 102))


def test_a_hazard_leaves_out_cards_without_it_that_say_which_oil_they_are() -> None:
    distilled = replace(card("oil"), oil="oil, distilled")
    assert count(limit("oil", hazard=Hazard.PHOTOTOXIC), {"water": 99, "oil": 1}, distilled) == (0, 0)
    # A card that does not say it is taken for the oil that the limit means.
    assert count(limit("oil", hazard=Hazard.PHOTOTOXIC), {"water": 99, "oil": 1}, card("oil"))[0] == Fraction("0.01")
    with_it = replace(card("oil"), hazards=(Hazard.PHOTOTOXIC,))
    assert count(limit("oil", hazard=Hazard.PHOTOTOXIC), {"water": 99, "oil": 1}, with_it)[0] == Fraction("0.01")


def test_the_uk_has_kept_the_law_of_the_eu_but_for_rows_of_its_own() -> None:
    eu, uk = limit("a", "b"), limit("a", region="UK")
    assert is_own_law(eu, region_of("UK"), (eu,))
    assert not is_own_law(eu, region_of("UK"), (eu, uk))
    assert is_own_law(uk, region_of("UK"), (eu, uk))
    # The UK has kept EU law as it stood at the end of 2020 (European Union (Withdrawal) Act 2018, from memory).
    assert is_own_law(replace(eu, since=2020), region_of("UK"), (eu,))
    assert not is_own_law(replace(eu, since=2021), region_of("UK"), (eu,))
    assert is_own_law(replace(eu, since=2021), region_of("EU"), (eu,))
    assert is_own_law(eu, region_of("EU"), (eu, uk))
    assert not is_own_law(eu, region_of("US"), (eu,))
    assert not is_own_law(replace(eu, weight=LimitWeight.OPINION), region_of("EU"), (eu,))
