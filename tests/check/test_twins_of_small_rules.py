"""Small rules on lye, packs, codes, hours and packages: what each is told of, and what lies beside that and is met in silence."""

from dataclasses import replace
from datetime import datetime
from fractions import Fraction
from typing import Any

import pytest

from builder.check.dates.hours import find_hours_that_clocks_do_not_show_once
from builder.check.label.batch_codes_alike import find_batch_codes_alike
from builder.check.label.responsible_person import find_responsible_persons_outside
from builder.check.label.units_left_over import find_units_left_over
from builder.check.lye.fats_for_the_lye import find_lye_without_fat
from builder.check.lye.lye_by_weight import find_lye_weights_out_of_place
from builder.check.lye.lye_where_it_belongs import find_lye_out_of_place
from builder.check.recipe.alkali_unusual import find_unusual_alkali
from builder.check.recipe.shares_not_whole import find_shares_not_whole
from builder.check.roster.roster_columns import meant_for_ours
from builder.check.supplies.item_use_unclear import find_unclear_uses
from builder.model.dates.studio_class import ClassDate
from builder.model.library import ANY
from builder.model.place import Name, Place
from builder.model.recipe.quantity import Rest
from builder.model.recipe.recipe import AmountsAs, Choice, Fill, LyePlan, Recipe, WaterBy
from builder.model.roster.roster import About, Roster, RosterRow
from tests.check.test_at_the_edge import levels, mixed
from tests.making import grams, lye, phase, recipe, share, soap, told
from tests.reckon.test_guests import LOTION, STUDIO

NAOH, KOH = "sodium hydroxide", "potassium hydroxide"
BAR = replace(soap({"olive oil": 100}, lye()), product="cold-process soap")
MOULD = next(one.name for one in STUDIO.containers.values() if one.is_mould)
BOTTLE = next(one.name for one in STUDIO.containers.values() if not one.is_mould)


def filled(plan: LyePlan | None, container: str, product: str) -> Recipe:
    return replace(BAR, lye=plan, product=product, fill=Fill(Name(container), grams(100)))


BOTH = lye({NAOH: 50, KOH: 50})


# Sodium makes soap that sets, potassium soap that stays soft (common practice, no source); both together make either.
@pytest.mark.parametrize(
    ("one", "said"),
    [
        (filled(lye(NAOH), MOULD, "cold-process soap"), ""),
        (filled(lye(KOH), MOULD, "cold-process soap"), "makes a soft soap that never sets"),
        (filled(lye(KOH), BOTTLE, "liquid soap"), ""),
        (filled(lye(NAOH), BOTTLE, "liquid soap"), "makes a soap that sets hard"),
        (filled(BOTH, MOULD, "cold-process soap"), ""),
        (filled(BOTH, BOTTLE, "liquid soap"), ""),
        (filled(None, MOULD, "cold-process soap"), ""),
        (filled(lye(KOH), "what nobody knows", "cold-process soap"), ""),
        (filled(lye("what nobody knows"), MOULD, "cold-process soap"), ""),
        # That it is not made with lye is a finding of its own.
        (filled(lye(KOH), MOULD, "balm"), ""),
    ],
)
def test_an_alkali_makes_the_soap_that_is_meant(one: Recipe, said: str) -> None:
    found = told(find_unusual_alkali(replace(STUDIO, recipes={"one": one})))
    assert levels(found) == ["alkali-unusual caution"] * bool(said)
    assert all(said in finding.wrong for finding in found)


PERCENT = AmountsAs.PERCENT_OF_TOTAL


@pytest.mark.parametrize(
    ("one", "found"),
    [
        (BAR, []),
        (replace(BAR, lye=None), ["lye-missing"]),
        (replace(BAR, lye=None, product="balm"), []),
        (replace(BAR, product="balm"), ["lye-not-wanted"]),
        (replace(BAR, amounts_as=PERCENT), ["lye-with-percent-of-total"]),
        (replace(soap({"water": 100}, lye()), product="cold-process soap"), ["oils-missing"]),
        (replace(soap({"water": 50, "olive oil": 50}, lye()), product="cold-process soap"), []),
        # What nobody knows may be a fat; that is a finding of its own.
        (replace(soap({"water": 50, "our secret": 50}, lye()), product="cold-process soap"), []),
        (replace(BAR, lye=lye("olive oil")), ["not-an-alkali"]),
        (replace(BAR, lye=lye("what nobody knows")), []),
        (replace(BAR, lye=lye({NAOH: 50, KOH: 49})), ["lye-shares-not-whole"]),
        (replace(BAR, lye=lye({NAOH: 50, KOH: 51})), ["lye-shares-not-whole"]),
        (replace(BAR, lye=BOTH), []),
    ],
)
def test_lye_stands_where_it_belongs(one: Recipe, found: list[str]) -> None:
    assert levels(find_lye_out_of_place(replace(STUDIO, recipes={"one": one}))) == [f"{name} stop" for name in found]


WEIGHTS = AmountsAs.WEIGHTS


@pytest.mark.parametrize(
    ("plan", "amounts", "found"),
    [
        (lye(), AmountsAs.PERCENT_OF_OILS, 0),
        (lye(weighs={NAOH: 60}), AmountsAs.PERCENT_OF_OILS, 1),
        (lye(weighs={NAOH: 60}), WEIGHTS, 0),
        (lye(water=(WaterBy.WEIGHT, 120)), AmountsAs.PERCENT_OF_OILS, 1),
        (lye(water=(WaterBy.WEIGHT, 120)), WEIGHTS, 0),
        (lye(weighs={NAOH: 60}, water=(WaterBy.WEIGHT, 120)), AmountsAs.PERCENT_OF_OILS, 1),
    ],
)
def test_a_weight_of_lye_stands_among_weights(plan: LyePlan, amounts: AmountsAs, found: int) -> None:
    one = replace(BAR, lye=plan, amounts_as=amounts)
    assert levels(find_lye_weights_out_of_place(replace(STUDIO, recipes={"one": one}))) == ["lye-weight-without-weights stop"] * found


def test_the_place_of_a_weight_of_lye_is_where_it_stands_and_else_that_of_the_water() -> None:
    weighed = replace(lye(weighs={NAOH: 60}, water=(WaterBy.WEIGHT, 120)), places={"weigh": Place("recipes/one.yaml", 7)})
    water = lye(water=(WaterBy.WEIGHT, 120))
    water = replace(water, water=replace(water.water, place=Place("recipes/one.yaml", 9)), places={"weigh": Place("recipes/one.yaml", 7)})
    for plan, line in ((weighed, 7), (water, 9)):
        (found,) = told(find_lye_weights_out_of_place(replace(STUDIO, recipes={"one": replace(BAR, lye=plan)})))
        assert found.place.line == line


def items(*uses: bool) -> tuple[Any, ...]:
    pack = next(one for one in STUDIO.supplies if one.use)
    return tuple(
        replace(pack, name=Name("our cup", Place("supplies.yaml", at)), place=Place("supplies.yaml", at), use=pack.use if is_used else None)
        for at, is_used in enumerate(uses, 1)
    )


@pytest.mark.parametrize(
    ("uses", "lines"), [((True,), []), ((False,), [1]), ((False, True), []), ((False, False), [1]), ((True, True, True), [2, 3])]
)
def test_one_pack_of_an_item_says_how_much_is_used_up(uses: tuple[bool, ...], lines: list[int]) -> None:
    here = replace(STUDIO, supplies=items(*uses))
    assert [one.place.line for one in told(find_unclear_uses(here))] == lines
    if lines == [2, 3]:
        assert all("stands on line 1 already" in one.wrong for one in told(find_unclear_uses(here)))
    # A pack that could not be read may say it.
    for name in ("our cup", ANY):
        open_one = replace(here, unread=replace(STUDIO.unread, items=frozenset({name})))
        assert [one.place.line for one in told(find_unclear_uses(open_one))] == (lines if any(uses) else [])


def test_the_later_of_two_recipes_with_the_same_letters_is_told_if_a_class_makes_it() -> None:
    make = LOTION.makes[0]
    for codes, made, said in (
        (("BAR", "BAR"), ("a", "b"), [('Give one of the two letters of its own, for example `code: "BARX"`.')]),
        (("BAX", "BAX"), ("a", "b"), [('Give one of the two letters of its own, for example `code: "BAXZ"`.')]),
        (("BARS", "BARS"), ("a", "b"), [('Give one of the two letters of its own, for example `code: "BARX"`.')]),
        (("BAR", "BAX"), ("a", "b"), []),
        (("BAR", "BAR"), ("a",), []),
    ):
        recipes = {key: replace(mixed(), key=key, code=code) for key, code in zip("ab", codes, strict=True)}
        one = replace(LOTION, makes=tuple(replace(make, recipe=Name(key)) for key in made))
        found = told(find_batch_codes_alike(replace(STUDIO, recipes=recipes, classes={"one": one})))
        assert [finding.remedy for finding in found] == said
        assert all('of "b" and of "a" both begin with' in finding.wrong for finding in found)


# In London clocks went forward at 1:00 on 2027-03-28 and back at 2:00 on 2027-10-31 (the last Sundays: Summer Time Order 2002).
@pytest.mark.parametrize(
    ("when", "zone", "found", "instead"),
    [
        (datetime(2027, 3, 28, 0, 59), "Europe/London", "", ""),
        (datetime(2027, 3, 28, 1, 0), "Europe/London", "hour-not-on-the-clock", "2027-03-28 02:00"),
        (datetime(2027, 3, 28, 1, 59), "Europe/London", "hour-not-on-the-clock", "2027-03-28 02:59"),
        (datetime(2027, 3, 28, 2, 0), "Europe/London", "", ""),
        (datetime(2027, 10, 31, 0, 59), "Europe/London", "", ""),
        (datetime(2027, 10, 31, 1, 0), "Europe/London", "hour-twice-on-the-clock", "2027-10-31 02:00"),
        (datetime(2027, 10, 31, 1, 59), "Europe/London", "hour-twice-on-the-clock", "2027-10-31 02:59"),
        (datetime(2027, 10, 31, 2, 0), "Europe/London", "", ""),
        (datetime(2027, 3, 28, 1, 0), "", "", ""),
        (datetime(2027, 3, 28, 1, 0), "Africa/Lagos", "", ""),
    ],
)
def test_a_class_begins_at_an_hour_that_comes_once(when: datetime, zone: str, found: str, instead: str) -> None:
    one = replace(LOTION, dates=(ClassDate(when),))
    here = replace(STUDIO, classes={"one": one}, profile=replace(STUDIO.profile, time_zone=zone))
    findings = told(find_hours_that_clocks_do_not_show_once(here))
    assert [finding.name for finding in findings] == [found] * bool(found)
    assert all(f"for example {instead}." in finding.remedy for finding in findings)


@pytest.mark.parametrize(
    ("each", "units", "said"),
    [
        (6, 3, ""),
        (1, 1, ""),
        (7, 3, "so that 1 of them is left|Let each student fill 6 or 9, "),
        (8, 3, "so that 2 of them are left|Let each student fill 6 or 9, "),
        (2, 3, "so that 2 of them are left|Let each student fill 3, "),
    ],
)
def test_what_a_student_fills_makes_whole_packages(each: int, units: int, said: str) -> None:
    make = replace(LOTION.makes[0], each_student=each, also=())
    of = replace(mixed(), key=make.recipe.text, fill=Fill(Name(BOTTLE), grams(100), units=units))
    here = replace(STUDIO, recipes={of.key: of}, classes={"one": replace(LOTION, makes=(make,))})
    found = told(find_units_left_over(here))
    assert levels(found) == ["units-left-over caution"] * bool(said)
    for one in found:
        left, instead = said.split("|")
        assert left in one.wrong and one.remedy.startswith(instead)


SCENTS = Choice("scent", (Name("lavender essential oil"), None), share("0.5"))


# What somebody writes into a column may be one of the options; that they want none tells nothing, since any column may say no.
@pytest.mark.parametrize(
    ("heads", "cell", "meant"),
    [
        (("favourite",), "lavender", ("scent",)),
        (("favourite",), "lavender essential oil", ("scent",)),
        (("favourite",), "none", ()),
        (("favourite",), "no thanks", ()),
        (("favourite",), "pizza", ()),
        # The choice has a column of its own already.
        (("favourite", "scent"), "lavender", ()),
        (("scnet",), "", ("scent",)),
        (("your scent",), "", ("scent",)),
        (("ages",), "", ("age",)),
        (("home at",), "", ("at home",)),
    ],
)
def test_a_column_is_meant_for_a_choice_by_its_head_or_by_what_stands_in_it(
    heads: tuple[str, ...], cell: str, meant: tuple[str, ...]
) -> None:
    columns = tuple(map(Name, heads))
    row = RosterRow(Name("A"), None, None, "", {one.key: Name(cell) for one in columns})
    roster = Roster(columns, (row,), about_people=(About.NAME,))
    one = replace(mixed(), choices=(SCENTS,))
    assert meant_for_ours(columns[0], roster, [one], STUDIO.ingredients) == meant


# Regulation (EC) 1223/2009, Article 19(1)(a), read: nothing is asked of who labels nothing, has no address, or is where no such law is.
@pytest.mark.parametrize(
    ("region", "address", "labelled", "found"),
    [
        ("EU", ("1 Row", "Springfield, United States"), True, 1),
        ("EU", ("1 Row", "Springfield, United States"), False, 0),
        ("EU", (), True, 0),
        ("US", ("1 Row", "Cork, Ireland"), True, 0),
    ],
)
def test_who_answers_is_asked_for_where_the_law_wants_somebody_inside(
    region: str, address: tuple[str, ...], labelled: bool, found: int
) -> None:
    profile = replace(STUDIO.profile, region=region, address=address, responsible=None)
    here = replace(STUDIO, profile=profile)
    here = here if labelled else replace(here, classes={}, recipes={})
    assert len(told(find_responsible_persons_outside(here))) == found


def test_fat_that_all_goes_in_late_is_told_of_at_its_first_phase() -> None:
    late = [phase(name, {"olive oil": share(50)}, after_the_cook=True) for name in ("first", "second")]
    late = [replace(one, name=Name(one.name.text, Place("recipes/one.yaml", at))) for at, one in enumerate(late, 5)]
    early = phase("early", {"beeswax": share(50)})
    for phases, name, line in ((late, "fats-all-late", 5), ([early, late[1]], "fats-all-waxes", 3)):
        one = recipe(*phases, lye=replace(lye(), place=Place("recipes/one.yaml", 3)))
        (found,) = told(find_lye_without_fat(replace(STUDIO, recipes={"one": one})))
        assert (found.name, found.place.line) == (name, line)
    oily = recipe(phase("early", {"beeswax": share(50), "olive oil": share(50)}), late[1], lye=lye())
    assert told(find_lye_without_fat(replace(STUDIO, recipes={"one": oily}))) == []


REST = Rest()


@pytest.mark.parametrize(
    ("amounts", "found", "said"),
    [
        ({"olive oil": share(60), "beeswax": share(40)}, [], ""),
        ({"olive oil": share(60), "beeswax": share(39)}, ["shares-not-whole"], "come to 99 %, so that 1 % is missing"),
        ({"olive oil": REST, "beeswax": share(40)}, [], ""),
        ({"olive oil": REST, "beeswax": share("99.9")}, [], ""),
        ({"olive oil": REST, "beeswax": share(100)}, ["rest-not-positive"], "already come to 100 %, so nothing is left for"),
        ({"olive oil": REST, "beeswax": share(Fraction(400, 3))}, ["rest-not-positive"], "already come to 133.333333333 %, so"),
        ({"olive oil": REST, "beeswax": REST}, ["rest-twice"], '"beeswax" and "olive oil" are both the rest'),
        ({"olive oil": REST, "beeswax": REST, "water": share(100)}, ["rest-twice", "rest-not-positive"], ""),
    ],
)
def test_percentages_of_a_total_make_a_whole(amounts: dict[str, Any], found: list[str], said: str) -> None:
    one = recipe(phase("all", amounts), amounts_as=AmountsAs.PERCENT_OF_TOTAL)
    told_of = told(find_shares_not_whole(replace(STUDIO, recipes={"one": one})))
    assert levels(told_of) == [f"{name} stop" for name in found]
    assert any(said in one.wrong for one in told_of) or not found
