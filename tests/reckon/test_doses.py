"""The most of each option: drops and their mass, and that no combination on offer passes a limit while one drop more somewhere would."""

from collections.abc import Iterator, Mapping, Sequence
from collections.abc import Set as AbstractSet
from dataclasses import replace
from fractions import Fraction
from functools import cache
from itertools import permutations, product
from math import prod
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.model.dose.dose import Dose, MostOf
from builder.model.dose.limit import Limit, LimitRole, LimitRules, LimitWeight, PercentOf
from builder.model.finding import Acceptance
from builder.model.hazard import Hazard
from builder.model.place import Name
from builder.model.recipe.figure import Known
from builder.model.recipe.ingredient import DeclaredAs, DropMass, Ingredient, LabelName
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.recipe.product import Contact, DeclaredBy, Product
from builder.model.recipe.recipe import Choice
from builder.model.recipe.size import TotalSize
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.reckon.dose.counting import factors_in
from builder.reckon.dose.drops import reckon_drop
from builder.reckon.dose.limits import limits_for
from builder.reckon.label.share_counting import share_counting
from builder.words.fold import fold
from tests import published
from tests.making import CONSTANTS, SOURCE, Number, card, cards, fat, grams, phase, recipe, scale, share, sure, worked
from tests.regions import region as region_of

LOTION = Product("lotion", "Lotion", Contact.LEAVE_ON, False, DeclaredBy.WEIGHT)


def limit(*names: str, most: str = "1", **named: Any) -> Limit:
    fixed = Limit(
        "X", tuple(fold(name) for name in names), LimitRole.ESSENTIAL_OIL, Fraction(most) / 100, PercentOf.PRODUCT, "", None, "all",
        tuple(Contact), (), "", None, "EU", LimitWeight.LAW, SOURCE, "here", Known.READ, "",
    )  # fmt: skip
    return replace(fixed, **named)


def scent(name: str, drop: int | None = None, **named: Any) -> Ingredient:
    """Make a card of a scent; `drop` is the measured mass of one drop in milligrams."""
    measured = DropMass(1000, grams(drop), "x") if drop else None
    return replace(card(name), kind=IngredientKind.ESSENTIAL_OIL, declared_as=DeclaredAs.FRAGRANCE, drop_mass=measured, **named)


def choice(what: str, *options: str, most: str = "0.5") -> Choice:
    return Choice(what, tuple(Name(option) for option in options), share(most))


def made(
    choices: tuple[Choice, ...],
    stock: Mapping[str, Ingredient],
    *limits: Limit,
    fill: str = "100",
    region: str = "EU",
    youngest: int | None = None,
    lines: Mapping[str, Number] | None = None,
    division: str = "0.01",
    accepts: tuple[str, ...] = (),
) -> tuple[WorkedBatch, LimitRules]:
    one = recipe(phase("all", {name: share(percent) for name, percent in (lines or {"water": 100}).items()}), choices=choices, fill=fill)
    one = replace(one, accepts={name: Acceptance("so") for name in accepts})
    rules = LimitRules(region_of(region), limits, youngest=youngest)
    return worked(one, LOTION, TotalSize(grams(1000)), stock, (scale(division),), rules=rules), rules


def most_of(sheet: WorkedBatch, option: str) -> MostOf:
    return next(one for dose in sheet.own.doses for one in dose.each if one.option == option)


# The mass of a drop.


def test_an_estimated_drop_of_water_is_no_lighter_than_the_heaviest_of_the_pharmacopoeia() -> None:
    drop, (working,) = reckon_drop(replace(card("water", density="0.99821"), kind=IngredientKind.WATER), CONSTANTS)
    # USP <1101>: each drop of water weighs 45 to 55 mg; 20 drops are 1 mL, 10 % either way.
    assert Fraction("0.055") <= sure(drop).mass.grams < Fraction("0.056")
    assert not sure(drop).measured
    assert sure(drop).mass.grams * 20 > 1 * Fraction("0.99821")
    assert working.result == sure(drop).mass.grams


def test_a_measured_drop_counts_as_measured() -> None:
    # Eschbaum 1895, quoted in the Bulletin of Pharmacy: 50 drops of water weigh 5.00 g, of glycerin 3.90 g from the same tip.
    glycerin = replace(card("glycerin", density="1.261"), kind=IngredientKind.LIQUID, drop_mass=DropMass(50, grams("3.90"), "x"))
    drop, workings = reckon_drop(glycerin, CONSTANTS)
    assert (sure(drop).mass, sure(drop).measured, workings) == (grams("0.078"), True, ())


def test_without_a_density_the_drop_is_taken_for_a_heavy_one() -> None:
    light, _ = reckon_drop(scent("oil"), CONSTANTS)
    known, _ = reckon_drop(replace(card("oil", density=("0.87", "0.89")), kind=IngredientKind.ESSENTIAL_OIL), CONSTANTS)
    assert sure(light).mass.grams == Fraction("1.261") / 18
    assert sure(known).mass.grams == Fraction("0.89") / 18


def test_a_powder_has_no_drops() -> None:
    assert reckon_drop(replace(card("mica"), kind=IngredientKind.COLOURANT), CONSTANTS) == (None, ())


# What a limit leaves.


def test_without_a_limit_the_recipe_itself_says_how_much() -> None:
    sheet, _ = made((choice("scent", "rose", "mint"),), cards(scent("rose", 30), scent("mint", 25)), fill="113")
    # 0.5 % of 113 g is 0.565 g: 18 drops of 30 mg, 22 of 25 mg.
    (dose,) = sheet.own.doses
    assert [(one.weight, one.drops, one.lowered) for one in dose.each] == [
        (grams("0.56"), 18, None),
        (grams("0.56"), 22, None),
    ]
    assert sure(sheet.own.doses[0].mixed).weight == grams("0.56")
    # 18 drops of rose and 1 of mint are 0.565 g and no more.
    assert sure(sheet.own.doses[0].mixed).drops == 19


def test_a_limit_lowers_the_option_that_it_is_about_and_no_other() -> None:
    strict = limit("Mint", most="0.2")
    sheet, _ = made((choice("scent", "rose", "mint"),), cards(scent("rose", 30), scent("mint", 25)), strict)
    mint = most_of(sheet, "mint")
    # x / (100 g + x) <= 0.2 %: x is 0.2004 g at most, 8 drops of 25 mg are 0.2 g.
    assert (mint.weight, mint.drops, sure(mint.lowered).limit, sure(mint.lowered).own_law) == (grams("0.2"), 8, strict, True)
    assert most_of(sheet, "rose").lowered is None


def test_what_the_batch_holds_already_is_counted() -> None:
    lines = {"water": "99.9", "mint": "0.1"}
    sheet, _ = made((choice("scent", "mint"),), cards(scent("mint", 25)), limit("Mint", most="0.2"), lines=lines)
    # 0.1 g in 100 g: (0.1 + x) / (100 + x) <= 0.2 %, x <= 0.1002 g.
    assert (most_of(sheet, "mint").weight, most_of(sheet, "mint").drops) == (grams("0.1"), 4)


def test_two_choices_share_what_a_limit_leaves_by_what_they_would_take() -> None:
    both = (choice("scent", "mint", most="0.6"), choice("more", "mint", most="0.3"))
    sheet, _ = made(both, cards(scent("mint")), limit("Mint", most="0.3"), division="0.001")
    first, second = sheet.own.doses
    assert first.each[0].weight + second.each[0].weight <= grams("0.3010")
    assert abs(first.each[0].weight.grams - 2 * second.each[0].weight.grams) < Fraction("0.01")


# x / (100 g + x) <= 0.6 %: 0.6036 g together, half for each that would take as much; the milligram that is over goes to the first.
def test_a_choice_that_offers_nothing_takes_nothing_of_what_a_limit_leaves() -> None:
    both = (choice("scent", "mint"), choice("more", "mint"))
    for choices in (both, (*both, Choice("colour", (None,), share("0.5")))):
        sheet, _ = made(choices, cards(scent("mint")), limit("Mint", most="0.6"), division="0.001")
        first, second, *_ = sheet.own.doses
        assert [one.each[0].weight for one in (first, second)] == [grams("0.302"), grams("0.301")]


def test_an_option_of_which_nothing_is_left_is_not_offered() -> None:
    sheet, _ = made((choice("scent", "mint", "rose"),), cards(scent("mint"), scent("rose")), limit("Mint", most="0.001"))
    assert not most_of(sheet, "mint").is_offered
    assert sheet.own.doses[0].offered == ("rose",)
    assert sheet.own.doses[0].mixed is None
    assert [dict(variant.chosen) for variant in sheet.own.variants] == [{"scent": "rose"}]


def test_what_is_no_law_does_not_lower_where_the_recipe_accepts_it() -> None:
    stock, usual = cards(scent("mint", 25)), limit("Mint", most="0.2", weight=LimitWeight.STANDARD, region="any")
    lowered, _ = made((choice("scent", "mint"),), stock, usual)
    accepted, _ = made((choice("scent", "mint"),), stock, usual, accepts=("over-usual-limit",))
    assert (most_of(lowered, "mint").weight, most_of(accepted, "mint").weight) == (grams("0.2"), grams("0.5"))
    by_law, _ = made((choice("scent", "mint"),), stock, limit("Mint", most="0.2"), accepts=("over-usual-limit",))
    assert most_of(by_law, "mint").weight == grams("0.2")
    elsewhere, _ = made((choice("scent", "mint"),), stock, limit("Mint", most="0.2"), accepts=("over-usual-limit",), region="US")
    assert most_of(elsewhere, "mint").weight == grams("0.5")


def test_a_limit_for_children_lowers_where_children_come() -> None:
    stock, young = cards(scent("mint", 25)), limit(most="0.25", narrower="children 3 to 12", below_age=13, weight=LimitWeight.PRACTICE)
    found = {age: most_of(made((choice("scent", "mint"),), stock, young, youngest=age)[0], "mint").weight for age in (None, 12, 13)}
    assert found == {None: grams("0.5"), 12: grams("0.25"), 13: grams("0.5")}


def test_a_blend_counts_at_the_most_it_may_hold_where_law_or_an_opinion_speaks() -> None:
    blend = scent("blend", label_name=LabelName(("A", "B"), ("a", "b"), Known.MEMORY))
    sheet, _ = made((choice("scent", "blend"),), cards(blend), limit("B", most="0.1"))
    # B is at most half of it.
    one = most_of(sheet, "blend")
    assert (one.weight, sure(one.lowered).proven) == (grams("0.2"), False)


def test_sun_sensitising_oils_take_up_their_limits_together() -> None:
    one, two = (replace(scent(name), hazards=(Hazard.PHOTOTOXIC,)) for name in ("lemon", "lime"))
    own = [limit(name, most=most, hazard=Hazard.PHOTOTOXIC) for name, most in (("Lemon", "0.4"), ("Lime", "0.2"))]
    together = limit(hazard=Hazard.PHOTOTOXIC, most="0")
    sheet, rules = made(
        (choice("scent", "lemon"), choice("more", "lime")), cards(one, two), *own, replace(together, most=None), division="0.001"
    )
    lemon, lime = (most_of(sheet, name).weight.grams for name in ("lemon", "lime"))
    whole = 100 + lemon + lime
    # IFRA Standards, combination rule: the sum over the oils of dose by limit is at most 100 %.
    assert Fraction("0.99") < lemon / whole / Fraction("0.004") + lime / whole / Fraction("0.002") <= 1
    assert len(limits_for(LOTION, rules)) == 3


# Exhaustive: every combination, and one drop more.


def amounts(dose: Dose) -> Iterator[dict[str, Fraction]]:
    """Yield everything that a student may add of one choice: single options and mixes, in drops or weighed, as masses by option."""
    drops = [one.drops or 0 for one in dose.each]
    for counts in product(*(range(most + 1) for most in drops)):
        if sum(map(bool, counts)) < 2 or (dose.mixed and dose.mixed.drops is not None and sum(counts) <= dose.mixed.drops):
            yield {one.option: sure(one.drop).mass.grams * count for one, count in zip(dose.each, counts, strict=True) if count}
    for one in dose.each:
        steps = 20 if one.drops else max(int(one.weight.grams * 100), 1)
        yield from ({one.option: one.weight.grams * step / steps} for step in range(1, steps + 1))
    # Of weighed mixes the corners: a limit that all corners keep is kept by all between them.
    for order in permutations(dose.each) if dose.mixed else ():
        left, mix = sure(dose.mixed).weight.grams, {}
        for one in order:
            mix[one.option] = min(left, one.weight.grams)
            left -= mix[one.option]
        yield mix


class Judge:
    """What a portion may hold, worked out from its composition."""

    def __init__(self, sheet: WorkedBatch, stock: Mapping[str, Ingredient], rules: LimitRules) -> None:
        factors = factors_in(rules.limits)
        self.sheet, self.fill = sheet, sheet.own.portions.fill.grams
        limits = [one for one in limits_for(sheet.product, rules) if one.most]
        self.rows = []
        for one in limits:
            held = sum(
                (w.mass / sheet.grams.total * share_counting(w.line.ingredient, one, factors)[0] for w in sheet.grams.weighed), Fraction(0)
            )
            counts = {o.option: share_counting(stock[fold(o.option)], one, factors)[0] for dose in sheet.own.doses for o in dose.each}
            if any(counts.values()) and one.percent_of is PercentOf.PRODUCT:
                self.rows.append((one, held * self.fill, counts))

    def passed(self, *added: Mapping[str, Fraction]) -> list[Limit]:
        """Return the limits that a portion with what was added passes."""
        masses = [(option, mass) for one in added for option, mass in one.items()]
        whole = self.fill + sum(mass for _, mass in masses)
        return [
            one for one, held, counts in self.rows if held + sum(mass * counts[option] for option, mass in masses) > sure(one.most) * whole
        ]

    def passed_by_some(self, *choices: Sequence[Mapping[str, Fraction]]) -> list[Limit]:
        """Return the limits that one of all combinations passes: what each choice adds counts by itself, so that the worst of each do."""
        found = []
        for one, held, counts in self.rows:
            most = sure(one.most)
            worst = [max(sum(mass * (counts[option] - most) for option, mass in mix.items()) for mix in mixes) for mixes in choices]
            if held - most * self.fill + sum(worst) > 0:
                found.append(one)
        return found

    def everything(self) -> Iterator[tuple[dict[str, Fraction], ...]]:
        return product(*(list(amounts(dose)) for dose in self.sheet.own.doses))


def is_maximal(sheet: WorkedBatch, judge: Judge, wish: Mapping[str, Fraction]) -> bool:
    """Tell whether one drop, or one division, more of every option passes a limit at the worst of the others, or what the recipe allows."""
    for number, dose in enumerate(sheet.own.doses):
        others = [list(amounts(other)) for at, other in enumerate(sheet.own.doses) if at != number]
        for one in dose.each:
            steps = [(one.weight.grams + Fraction("0.01"))] + ([one.drop.mass.grams * (sure(one.drops) + 1)] if one.drop else [])
            for more in steps:
                if more <= wish[dose.what] and not any(judge.passed({one.option: more}, *rest) for rest in product(*others)):
                    return False
    return True


@cache
def example() -> tuple[Studio, list[tuple[WorkedBatch, LimitRules]]]:
    outcome, found = published.example(), {}
    studio = sure(outcome.studio)
    for sheet in outcome.plans:
        for batch in (*(p.batch for made in sheet.made for p in made.batches), *(h.batch for made in sheet.made for h in made.home)):
            if batch.own.doses:
                found[batch.recipe.key, batch.own.doses] = (batch, studio.rules(sheet.studio_class.youngest))
    return studio, list(found.values())


def passes_none(sheet: WorkedBatch, rules: LimitRules, studio: Studio) -> None:
    judge = Judge(sheet, studio.ingredients, rules)
    choices = [list(amounts(dose)) for dose in sheet.own.doses]
    assert prod(map(len, choices)) > 20
    assert not judge.passed_by_some(*choices), sheet.recipe.key
    for dose, mixes in zip(sheet.own.doses, choices, strict=True):
        assert all(sum(mix.values()) <= dose.share * judge.fill for mix in mixes)


def test_no_combination_of_the_example_studio_passes_a_limit() -> None:
    studio, found = example()
    for sheet, rules in {sheet.recipe.key: (sheet, rules) for sheet, rules in reversed(found)}.values():
        passes_none(sheet, rules, studio)


@pytest.mark.long
def test_no_combination_passes_a_limit_in_any_batch_of_the_example_studio() -> None:
    studio, found = example()
    for sheet, rules in found:
        passes_none(sheet, rules, studio)


SHARES = st.sampled_from(["0.05", "0.1", "0.2", "0.4", "0.8"])


@given(
    st.lists(st.tuples(st.sets(st.sampled_from("ABCD"), min_size=1), SHARES), max_size=3),
    st.lists(st.tuples(st.lists(st.sampled_from("ABCD"), min_size=1, max_size=3, unique=True), SHARES), min_size=1, max_size=2),
    st.lists(st.integers(20, 90), min_size=4, max_size=4),
    st.sampled_from(["0", "0.05", "0.1"]),
    st.sampled_from(["10", "25", "40"]),
)
def test_no_combination_of_a_small_recipe_passes_a_limit_and_one_drop_more_does(
    limits: Sequence[tuple[AbstractSet[str], str]],
    choices: Sequence[tuple[Sequence[str], str]],
    masses: Sequence[int],
    held: str,
    fill: str,
) -> None:
    stock = cards(*(scent(name, mass) for name, mass in zip("ABCD", masses, strict=True)))
    offered = tuple(choice(f"choice {number}", *names, most=most) for number, (names, most) in enumerate(choices))
    lines: dict[str, Number] | None = {"water": 100 - Fraction(held), "A": held} if held != "0" else None
    sheet, rules = made(offered, stock, *(limit(*names, most=most) for names, most in limits), fill=fill, lines=lines)
    judge = Judge(sheet, stock, rules)
    already = judge.passed()
    tried = {one for added in judge.everything() for one in judge.passed(*added)}
    assert set(judge.passed_by_some(*map(list, map(amounts, sheet.own.doses)))) == tried
    for added in judge.everything():
        # What the batch passes by itself is a finding of its own; students then add nothing of it.
        assert [one for one in judge.passed(*added) if one not in already] == []
        assert not any(fold(option) in one.names and mass for one in already for part in added for option, mass in part.items())
    if not already:
        assert is_maximal(sheet, judge, {one.what: one.at_most.fraction * judge.fill for one in offered})


def test_percent_of_oils_leaves_what_the_oils_leave() -> None:
    lines = {"water": 60, "oil": 40}
    sheet, _ = made(
        (choice("scent", "mint", most="2"),), cards(fat("oil", 190), scent("mint")), limit("Mint", percent_of=PercentOf.OILS), lines=lines
    )
    # 1 % of 40 g of oils in a portion of 100 g.
    assert most_of(sheet, "mint").weight == grams("0.4")
