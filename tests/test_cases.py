"""Every line of the files in `cases/` against what the program works out: the input of the line in, its figure out.

README.md beside this file says how to add a line.
"""

import re
from dataclasses import replace
from datetime import date
from fractions import Fraction
from pathlib import Path

import pytest

from builder import units
from builder.compose.label.label_words import net_contents
from builder.model.dose.limit import LimitRules, LimitWeight
from builder.model.label.type_height import LabelStatement, rules_for
from builder.model.place import Name
from builder.model.recipe.container import Container, Outside
from builder.model.recipe.container_form import ContainerForm
from builder.model.recipe.figure import Known
from builder.model.recipe.ingredient import CountsAs, Ingredient
from builder.model.recipe.product import Contact, DeclaredBy, Product
from builder.model.recipe.quantity import Density, Length
from builder.model.recipe.recipe import AmountsAs, Fill, LyePlan, MeasuredDensity, WaterBy
from builder.model.recipe.size import TotalSize
from builder.model.recipe.worked_batch import WorkedBatch
from builder.read.values.amounts import parse_duration, parse_mass, parse_temperature, parse_volume
from builder.reckon.formula.heat import rise_of_dissolving
from builder.reckon.formula.hlb import share_of_high
from builder.reckon.lye.equivalents import acid_equivalents
from builder.rules.durability import durability_in
from builder.rules.label.panel import panel_of
from tests.case_files import CASES, KNOWN, Row, name_of, read_cases
from tests.making import KOH, NAOH, SOURCE, card, cards, fat, grams, lye, phase, recipe, scale, share, sure, worked
from tests.regions import region
from tests.studios import sound_studio

STUDIO, _ = sound_studio()
BAR = Product("cold-process soap", "Soap", Contact.RINSE_OFF, True, DeclaredBy.WEIGHT)
MOLAR = {"sodium hydroxide": NAOH, "potassium hydroxide": KOH}
# The specific heat of water in J/(g K), 4.184 by the definition of the thermochemical calorie.
OF_WATER = Fraction("4.184")


@pytest.mark.parametrize("file", sorted(CASES.glob("*.csv")), ids=lambda file: str(file.name))
def test_every_case_has_a_name_of_its_own_its_source_and_how_it_is_known(file: Path) -> None:
    rows = read_cases(file.name)
    assert rows and len({name_of(row) for row in rows}) == len(rows)
    for row in rows:
        assert None not in row, f"{row}: more cells than columns"
        assert row["source"] and row["known"] in KNOWN, row


def read_fats(text: str) -> list[tuple[Fraction, Ingredient]]:
    """Read `380 g olive oil at 190 + 20 g oleic acid at 200 acid`: grams, and a card with the saponification value."""
    found = []
    for piece in text.split(" + "):
        weight, name, value, is_acid = sure(re.fullmatch(r"([\d.]+ (?:g|lb)) (.+) at ([\d.]+)( acid)?", piece)).groups()
        made = card(name, CountsAs.FATTY_ACID, saponification=value) if is_acid else fat(name, value)
        found.append((parse_mass(weight).grams, made))
    return found


def pan(row: Row, plan: LyePlan, weighs: Fraction) -> WorkedBatch:
    """Work out a pan of these fats with as much water as alkali."""
    fats = read_fats(row["fats"])
    lines = phase("fats", {one.name: grams(weight) for weight, one in fats})
    made = recipe(lines, amounts_as=AmountsAs.WEIGHTS, lye=plan)
    total = sum(weight for weight, _ in fats) + 2 * weighs
    return worked(made, BAR, TotalSize(grams(total)), cards(*(one for _, one in fats)), [scale("0.000001")])


@pytest.mark.parametrize("row", read_cases("lye.csv"), ids=name_of)
def test_the_superfat_of_a_weighed_lye(row: Row) -> None:
    unit = sure(re.match(r"[\d.]+ (\w+)", row["fats"]))[1]
    weighs, within = (parse_mass(f"{row[name]} {unit}").grams for name in ("weighs", "within"))
    plan = lye(weighs={row["alkali"]: weighs}, purity=row["purity"], water=(WaterBy.WEIGHT, weighs))
    found = sure(pan(row, plan, weighs).grams.lye).superfat
    assert float(found) == pytest.approx(float(row["superfat"]) / 100, abs=float(within / weighs))


@pytest.mark.parametrize("row", [row for row in read_cases("lye.csv") if Fraction(row["superfat"]) >= 0], ids=name_of)
def test_the_lye_of_a_superfat(row: Row) -> None:
    fats = read_fats(row["fats"])
    lines = phase("fats", {one.name: share(weight / sum(other for other, _ in fats) * 100) for weight, one in fats})
    plan = lye(row["alkali"], row["superfat"], purity=row["purity"], water=(WaterBy.RATIO, 1))
    made = recipe(lines, amounts_as=AmountsAs.PERCENT_OF_OILS, lye=plan)
    sheet = worked(made, BAR, TotalSize(grams(10_000)), cards(*(one for _, one in fats)), [scale("0.000001")])
    names = {one.name for _, one in fats}
    alkali = sum(line.exact.grams for line in sheet.lines if line.name == row["alkali"])
    oils = sum(line.exact.grams for line in sheet.lines if line.name in names)
    assert float(alkali / oils * sum(weight for weight, _ in fats)) == pytest.approx(float(row["weighs"]), abs=float(row["within"]))


@pytest.mark.parametrize("row", read_cases("acids.csv"), ids=name_of)
def test_the_alkali_that_an_acid_takes(row: Row) -> None:
    acid = card("acid", CountsAs.ACID, molar_mass=row["molar_mass"], protons=row["protons"], purity=100)
    taken = acid_equivalents(grams(1), acid) * MOLAR[row["alkali"]]
    assert float(taken) == pytest.approx(float(row["grams"]), abs=float(row["within"]))


@pytest.mark.parametrize("row", read_cases("heat_of_lye.csv"), ids=name_of)
def test_how_much_a_lye_warms(row: Row) -> None:
    rise = rise_of_dissolving(Fraction(row["percent"]) / 100, Fraction(row["heat"]), OF_WATER)
    assert float(rise) == pytest.approx(float(row["kelvin"]), abs=float(row["within"]))


@pytest.mark.parametrize("row", read_cases("hlb.csv"), ids=name_of)
def test_the_share_of_the_emulsifier_of_high_hlb(row: Row) -> None:
    found = sure(share_of_high(Fraction(row["wanted"]), Fraction(row["high"]), Fraction(row["low"])))
    assert float(found * 100) == pytest.approx(float(row["percent"]), abs=float(row["within"]))


@pytest.mark.parametrize("row", read_cases("dose_limits.csv"), ids=name_of)
def test_what_a_product_may_hold(row: Row) -> None:
    rules = LimitRules(region(row["region"]), STUDIO.limits, STUDIO.colour_rules, STUDIO.field_rules)
    made = recipe(phase("all", {"water": share(100 - Fraction(row["percent"])), row["ingredient"]: share(row["percent"])}))
    sheet = worked(made, STUDIO.products[row["product"]], TotalSize(grams(1000)), STUDIO.ingredients, [scale()], rules=rules)
    binding = [one for one in sheet.own.towards if one.own_law or one.limit.weight is LimitWeight.STANDARD]
    assert binding, "no limit speaks of it"
    passed = [f"{one.limit.ingredient}, {one.limit.at}" for one in binding if one.least > sure(one.limit.most)]
    assert ("no" if passed else "yes") == row["passes"], passed


def declared(row: Row) -> str:
    """Return the net contents of a container with so much in it, with plain spaces."""
    by_volume = row["measure"] == "volume"
    # A millilitre that weighs a gram: the same number both ways.
    mass = grams(parse_volume(row["filled"]).millilitres) if by_volume else parse_mass(row["filled"])
    made = recipe(phase("all", {"water": share(100)}), density=MeasuredDensity(Density(Fraction(1)), "weighed") if by_volume else None)
    product = Product("lotion", "Lotion", Contact.LEAVE_ON, False, DeclaredBy(row["measure"]))
    fill, cards_of = Fill(Name("jar"), mass), cards()
    sheet = worked(replace(made, fill=fill), product, TotalSize(grams(mass.grams * 2)), cards_of, [scale("0.000001")])
    return net_contents(sheet, sheet.own, region(row["region"])).replace("\u00a0", " ")


@pytest.mark.parametrize("row", read_cases("net_contents.csv"), ids=name_of)
def test_the_declaration_of_net_contents(row: Row) -> None:
    said = declared(row)
    assert said == row["declaration"]
    assert not any(said.removeprefix("Net Wt ").startswith(f"{wrong} ") for wrong in row["never"].split(" | ") if wrong)


@pytest.mark.parametrize("row", read_cases("type_heights.csv"), ids=name_of)
def test_the_height_of_net_contents(row: Row) -> None:
    area, contents = Fraction(row["area"]), Fraction(row["contents"])
    rules = rules_for(STUDIO.type_heights, row["region"], LabelStatement.NET_CONTENTS, area, contents)
    assert max(rule.height.millimetres for rule in rules) == Fraction(row["millimetres"])


@pytest.mark.parametrize("row", read_cases("panels.csv"), ids=name_of)
def test_the_panel_of_a_container(row: Row) -> None:
    outside = {name: Length(Fraction(row[name])) for name in ("width", "height", "around", "lid") if row[name]}
    tin = Container("tin", None, ContainerForm.CYLINDER, SOURCE, "here", Known.MEASURED, outside=Outside(**outside))
    panel = sure(panel_of(tin, STUDIO.constants))
    assert panel.measured and float(panel.area) == pytest.approx(float(row["square_millimetres"]), rel=1e-5)


@pytest.mark.parametrize("row", read_cases("keeping.csv"), ids=name_of)
def test_how_long_it_keeps(row: Row) -> None:
    assert sure(durability_in(row["keeps"])).after(date.fromisoformat(row["made"])) == date.fromisoformat(row["over"])


@pytest.mark.parametrize("row", read_cases("units.csv"), ids=name_of)
def test_a_unit_is_exact(row: Row) -> None:
    found = {"g": units.grams_in, "mL": units.millilitres_in, "mm": units.millimetres_in}[row["in"]](row["unit"])
    assert found == Fraction(row["equals"])


@pytest.mark.parametrize("row", read_cases("amounts.csv"), ids=name_of)
def test_an_amount_as_people_write_it(row: Row) -> None:
    text, equals = row["written"], Fraction(row["equals"])
    found = {
        "g": lambda: parse_mass(text).grams,
        "mL": lambda: parse_volume(text).millilitres,
        "degC": lambda: parse_temperature(text).celsius,
        "min": lambda: parse_duration(text).minutes,
    }[row["unit"]]()
    assert found == equals
