"""Amounts, fillings, seats and strengths at the figure from which on they are found; the figures are those of content/constants.yaml."""

from dataclasses import replace
from datetime import date, datetime
from fractions import Fraction

import pytest

from builder.check.dates.dates_people import find_people_to_tell
from builder.check.dose.over_limit import find_amounts_over_limits
from builder.check.keeping.preservation import find_products_that_do_not_keep
from builder.check.keeping.preservative_fit import find_preservatives_that_do_not_fit
from builder.check.label.label_sheets import find_first_labels_off_the_sheet
from builder.check.lye.alkali_purity import find_purities_of_solutions
from builder.check.lye.lye_liquids import find_unfit_lye_liquids
from builder.check.recipe.amount_for_scale import find_amounts_scales_cannot_weigh
from builder.check.recipe.figures_missing import find_figures_missing
from builder.check.recipe.fill_and_container import find_fills_that_do_not_fit
from builder.check.supplies.inventory_unknown import find_unknown_inventory
from builder.model.dates.studio_class import ClassDate
from builder.model.dose.limit import LimitWeight
from builder.model.label.label_fit import LabelFit, Start
from builder.model.place import NOWHERE, Name
from builder.model.recipe.ingredient import Microbe
from builder.model.recipe.recipe import Fill, LyeLiquid, Recipe, WaterBy
from builder.model.supplies.inventory import InventoryEntry
from builder.model.supplies.supply import SupplyKind
from tests.check.test_at_the_edge import levels, mixed
from tests.check.test_seldom_met import seen_in
from tests.making import figures, grams, lye, scale, soap, sure, told
from tests.reckon.test_guests import LOTION, STUDIO


# Ten divisions are the fewest that are weighed: 10 g on a scale that reads to 1 g; half a division rounds up, less shows nothing.
@pytest.mark.parametrize(
    ("percent", "found"),
    [
        ("1", []),
        ("0.999", ["amount-too-small-for-scale caution"]),
        ("0.05", ["amount-too-small-for-scale caution"]),
        ("0.049", ["amount-weighs-nothing stop"]),
    ],
)
def test_a_weighing_has_ten_divisions_or_is_told_of(percent: str, found: list[str]) -> None:
    one = seen_in("US", mixed(glycerin=percent), scales=(scale("1"),))
    assert levels(find_amounts_scales_cannot_weigh(one)) == found


# What comes exactly to a limit keeps it; what may pass it is asked about, and what passes it for certain is found.
@pytest.mark.parametrize(
    ("least", "most", "own_law", "found"),
    [
        ("1", "1", True, []),
        ("1.001", "1.001", True, ["over-legal-limit stop"]),
        ("1", "1.001", True, ["limit-not-proven caution"]),
        ("0.5", "1.001", True, ["limit-not-proven caution"]),
        ("0.5", "1", True, []),
        ("1.001", "1.001", False, ["over-usual-limit caution"]),
        ("1", "1.001", False, []),
    ],
)
def test_a_limit_is_passed_by_what_is_more(least: str, most: str, *, own_law: bool, found: list[str]) -> None:
    one = seen_in("EU", mixed(phenoxyethanol_and_ethylhexylglycerin_blend="0.9"))
    towards = one.filling.towards[0]
    weight = LimitWeight.LAW if own_law else LimitWeight.PRACTICE
    limit = replace(towards.limit, most=Fraction(1, 100), weight=weight, narrower="", parts=())
    counted = replace(towards.counted[0], least=Fraction(least) / 100, most=Fraction(most) / 100)
    judged = replace(towards, limit=limit, own_law=own_law, counted=(counted,))
    assert levels(find_amounts_over_limits(replace(one, filling=replace(one.filling, towards=(judged,))))) == found


@pytest.mark.parametrize(("enrolled", "said"), [(7, "1 seat is free"), (6, "2 seats are free"), (8, ""), (9, "")])
def test_who_waits_beside_a_free_seat_is_offered_it(enrolled: int, said: str) -> None:
    date = ClassDate(datetime(2027, 6, 5, 10), enrolled, waiting=2)
    here = replace(STUDIO, classes={"one": replace(LOTION, seats=8, dates=(date,))}, rosters={})
    found = told(find_people_to_tell(here))
    assert [said in one.wrong for one in found if one.name == "waiting-beside-free-seats"] == ([True] if said else [])


# Nothing that is filled weighs more than 2 g/mL (common practice, no source).
@pytest.mark.parametrize(("grams_in_it", "found"), [("200", []), ("200.1", ["fill-does-not-fit stop"])])
def test_what_was_weighed_in_a_jar_is_no_heavier_than_anything_is(grams_in_it: str, found: list[str]) -> None:
    jar = next(one for one in STUDIO.containers.values() if one.capacity)
    volume = jar.capacity
    assert volume is not None
    weight = volume.millilitres * Fraction(grams_in_it) / 100
    of = replace(mixed(glycerin="3"), fill=Fill(Name(jar.name), grams(weight), measured="one filled and weighed"))
    assert levels(find_fills_that_do_not_fit(replace(STUDIO, recipes={"one": of}, classes={}))) == found


# No solid sodium hydroxide is sold below 90 %, no potassium hydroxide below 80 % (common practice, no source).
@pytest.mark.parametrize(
    ("alkali", "purity", "found"),
    [("sodium hydroxide", "90", 0), ("sodium hydroxide", "89.9", 1), ("potassium hydroxide", "80", 0), ("potassium hydroxide", "79.9", 1)],
)
def test_a_purity_below_that_of_any_solid_is_that_of_a_solution(alkali: str, purity: str, found: int) -> None:
    stated = soap({"olive oil": 100}, lye(alkali, purity=purity))
    assert levels(find_purities_of_solutions(replace(STUDIO, recipes={"one": stated}))) == ["purity-of-a-solution stop"] * found
    card = STUDIO.ingredients[alkali]
    weak = replace(card, figures={**card.figures, "purity": figures(purity, 99)})
    here = replace(STUDIO, ingredients={**STUDIO.ingredients, alkali: weak}, recipes={"one": soap({"olive oil": 100}, lye(alkali))})
    assert levels(find_purities_of_solutions(here)) == ["purity-of-a-solution stop"] * found


# By hand: two parts of liquid to one of sodium hydroxide, of which p % is acetic acid, bring 2 p / 100 / 60.052 mol to 1 / 39.997 mol of
# lye, so that p = 37.53 takes up half of it; sour liquids may take half. Lye dissolves in an acid that holds 80 % of water or more.
@pytest.mark.parametrize(
    ("strength", "water", "found"),
    [
        ("37.5", "80", []),
        ("37.6", "80", ["lye-liquid-too-sour stop"]),
        ("5", "79.9", ["not-a-liquid stop"]),
        ("5", "80", []),
    ],
)
def test_a_sour_liquid_leaves_half_of_the_lye_to_the_fat(strength: str, water: str, found: list[str]) -> None:
    card = STUDIO.ingredients["vinegar"]
    ours = replace(card, figures={**card.figures, "purity": figures(strength), "water content": figures(water)})
    plan = lye(liquids=(LyeLiquid(Name("vinegar"), Fraction(1)),), purity=100, water=(WaterBy.RATIO, 2))
    here = replace(STUDIO, ingredients={**STUDIO.ingredients, "vinegar": ours}, recipes={"one": soap({"olive oil": 100}, plan)})
    assert levels(find_unfit_lye_liquids(here)) == found


# A lotion that is used up within three months is gone before its oils go stale (common practice, no source). By the calendar three months
# are 90 to 92 days (July to September).
@pytest.mark.parametrize(
    ("keeps", "found"),
    [
        ("3 months", []),
        ("13 weeks", []),
        ("92 days", []),
        ("93 days", ["no-antioxidant caution"]),
        ("4 months", ["no-antioxidant caution"]),
        ("", []),
    ],
)
def test_oil_in_water_keeps_three_months_by_itself(keeps: str, found: list[str]) -> None:
    of = mixed(water="70", phenoxyethanol_and_ethylhexylglycerin_blend="0.9")
    assert levels(find_products_that_do_not_keep(replace(STUDIO, recipes={"one": replace(of, keeps=keeps)}))) == found


# What takes up lye is counted by its molar mass, its protons and its strength: each of the three is asked for by itself.
@pytest.mark.parametrize(
    ("left_out", "found"),
    [
        ((), []),
        (("molar mass",), ["molar-mass-missing stop"]),
        (("protons",), ["molar-mass-missing stop"]),
        (("purity",), ["strength-missing stop"]),
        (("molar mass", "protons", "purity"), ["molar-mass-missing stop", "strength-missing stop"]),
    ],
)
def test_every_figure_of_an_acid_beside_lye_is_asked_for(left_out: tuple[str, ...], found: list[str]) -> None:
    card = STUDIO.ingredients["lactic acid"]
    ours = replace(card, figures={name: figure for name, figure in card.figures.items() if name not in left_out})
    of = soap({"olive oil": 100}, lye(), {"lactic acid": 1})
    here = replace(STUDIO, ingredients={**STUDIO.ingredients, "lactic acid": ours}, recipes={"one": of})
    assert levels(find_figures_missing(here)) == found


@pytest.mark.parametrize(("number", "found"), [(1, 0), (10, 0), (11, 1)])
def test_the_last_label_of_a_sheet_may_be_the_first_that_is_used(number: int, found: int) -> None:
    fit = LabelFit("Lotion", "lotion", "one", "", True, (), (), "", NOWHERE, starts=Start(number, "ten to a sheet", 10, NOWHERE))
    assert levels(find_first_labels_off_the_sheet((fit,))) == ["label-position-off-the-sheet stop"] * found


# What holds water needs both bacteria and fungi held back, by what is meant to stand alone or by several that are not (ISO 11930).
@pytest.mark.parametrize(
    ("covers", "alone", "partner", "found"),
    [
        (("bacteria", "fungi"), True, False, ""),
        (("bacteria", "fungi"), False, False, "is a part of a system and too weak alone"),
        (("bacteria",), True, False, "leaves"),
        (("bacteria", "fungi"), False, True, ""),
    ],
)
def test_a_preservative_stands_alone_or_has_partners(covers: tuple[str, ...], *, alone: bool, partner: bool, found: str) -> None:
    known = STUDIO.ingredients["potassium sorbate"]
    ours = replace(known, preserves=replace(sure(known.preserves), covers=tuple(map(Microbe, covers)), alone=alone))
    shelf = {key: ours if one is known else one for key, one in STUDIO.ingredients.items()}
    of = mixed(water="50", potassium_sorbate="0.4", **({"sodium_benzoate": "0.4"} if partner else {}))
    told_of = told(find_preservatives_that_do_not_fit(replace(STUDIO, ingredients=shelf, recipes={"one": of})))
    in_part = [one.wrong for one in told_of if one.name == "preservation-in-part"]
    assert [found in wrong for wrong in in_part] == [True] * bool(found)


def test_what_is_in_stock_is_known_by_its_name_or_by_a_file_that_could_not_be_read() -> None:
    for name, unread, found in (("olive oil", (), 0), ("elbow grease", (), 1), ("elbow grease", ("elbow grease",), 0)):
        stock = InventoryEntry(SupplyKind.INGREDIENT, Name(name), grams(100), "100 g", date(2027, 1, 1))
        here = replace(STUDIO, inventory=(stock,), unread=replace(STUDIO.unread, ingredients=frozenset(unread)))
        assert levels(find_unknown_inventory(here)) == ["inventory-unknown caution"] * found


# What fizzed while it was mixed is dry: acid and bicarbonate take up the few drops of water that bind them (common practice, no source).
# Either of them alone keeps nothing dry.
@pytest.mark.parametrize(
    ("of", "found"),
    [
        (mixed(citric_acid="32", sodium_bicarbonate="65", water="3"), []),
        (mixed(citric_acid="1", glycerin="5", water="94"), ["no-preservative stop"]),
        (mixed(sodium_bicarbonate="5", glycerin="5", water="90"), ["no-preservative stop"]),
    ],
)
def test_water_in_what_fizzes_grows_nothing(of: Recipe, found: list[str]) -> None:
    assert levels(find_products_that_do_not_keep(replace(STUDIO, recipes={"one": replace(of, product="lotion")}))) == found
