"""The tables of usage limits and of colour additives: whole, in closed words, and in the names that the ingredient cards declare."""

import csv
from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction

import pytest

from builder.library import CONTENT
from builder.model.dose.limit import Limit, LimitWeight, PercentOf, names_of
from builder.model.recipe.ingredient import blend_of
from builder.read.shapes.library import RegionShape
from builder.words.fold import fold
from tests.making import sure
from tests.studios import sound_studio

STUDIO, FINDINGS = sound_studio()
LIMITS, COLOURS = STUDIO.limits, STUDIO.colour_rules
CARDS = {card.key: card for card in STUDIO.ingredients.values()}.values()
DECLARED = {name for card in CARDS for name in (*names_of(card), blend_of(names_of(card)))}
FACTORS = [limit for limit in LIMITS if limit.factor]


def table(name: str) -> list[dict[str, str]]:
    lines = (CONTENT / "tables" / name).read_text(encoding="utf-8").splitlines()
    return list(csv.DictReader(line for line in lines if not line.startswith("#")))


# Rows of the third table are no part of a collection: they are what cards say of the people who should not use an ingredient.
BY_PEOPLE = table("limits_by_people.csv")
ROWS = [*table("usage_limits.csv"), *table("scent_limits.csv"), *BY_PEOPLE]


def test_every_row_is_read() -> None:
    # The collections from which the tables were taken have 302 and 67 rows; two on the total of scent, two on menthol and one on camphor
    # are common practice beside them, and two restate the limits on parabens as the ester that is weighed.
    assert FINDINGS == []
    assert (len(LIMITS), len(COLOURS)) == (len(ROWS), len(table("colour_additives_us.csv")))
    assert (len(table("usage_limits.csv")), len(COLOURS)) == (309, 67)


def test_every_source_of_a_table_stands_in_its_first_lines() -> None:
    for name in (
        "usage_limits.csv",
        "scent_limits.csv",
        "limits_by_people.csv",
        "colours_eu.csv",
        "colour_additives_us.csv",
        "fragrance_allergens_eu.csv",
        "label_names_us.csv",
        "countries.csv",
    ):
        head = (CONTENT / "tables" / name).read_text(encoding="utf-8").partition("\n\n")[0]
        listed = {line.removeprefix("#   source: ") for line in head.splitlines() if line.startswith("#   source: ")}
        assert listed == {row["source"] for row in table(name)}


def test_the_names_that_are_judged_stand_in_the_published_row() -> None:
    judged = [(row, name) for row in ROWS if row["inci_names"] for name in row["inci_names"].split(";")]
    assert judged
    assert [(row, name) for row, name in judged if name.replace(" + ", " (AND) ") not in row["inci"]] == []


def test_what_a_row_says_of_its_weight_agrees_with_its_basis() -> None:
    words = {"law": "law", "opinion": "opinion", "guidance": "guidance", "standard": "standard", "common practice": "practice"}
    words |= {"handbook": "handbook"}
    for row in ROWS:
        found = {weight for word, weight in words.items() if word in row["basis"]} or {"practice"}
        assert row["weight"] in found, row
        assert row["region"] in ("US", "any") or row["region"] in row["basis"] or "national agency" in row["basis"], row


def test_a_practice_without_a_source_says_so() -> None:
    for limit in LIMITS:
        if limit.weight is LimitWeight.PRACTICE and limit.source.kind == "practice":
            assert limit.source.title == "common practice, no source"


def test_a_row_that_bans_has_zero_and_prohibited_rows_ban() -> None:
    bans = [limit for limit in LIMITS if limit.most == 0]
    # So many rows of the two collections have a most of 0, and one is common practice beside them.
    assert len(bans) == 24 + 1 + 14 + len(BY_PEOPLE)
    assert all(limit.most == 0 for limit in LIMITS if limit.note.startswith("prohibited"))


@pytest.mark.parametrize("limit", FACTORS, ids=lambda limit: limit.ingredient + ", " + limit.product_type)
def test_a_converted_row_restates_a_row_that_counts_its_name(limit: Limit) -> None:
    """The salt's limit is the acid's times the factor, rounded down by a thousandth of a percent at most."""
    (name,) = limit.names
    rows = [
        other for other in LIMITS if not other.factor and other.counted_as == limit.counted_as and other.product_type == limit.product_type
    ]
    twins = [other for other in rows if name in other.names]
    assert twins
    assert any(0 <= sure(other.most) * sure(limit.factor) - sure(limit.most) <= Fraction(1, 100_000) for other in twins)


def test_a_row_about_an_ingredient_of_ours_has_the_name_that_its_card_declares() -> None:
    judged = [limit for limit in LIMITS if limit.is_judged() and limit.names]
    for limit in judged:
        card = STUDIO.ingredients.get(fold(limit.ingredient))
        assert card is None or {*names_of(card), blend_of(names_of(card))} & set(limit.names), limit.ingredient
    met = {name for limit in judged for name in limit.names if name in DECLARED}
    # Each of these was looked for by hand among the cards.
    assert met >= {
        "benzyl alcohol", "citrus aurantium bergamia peel oil", "citrus limon peel oil", "cetyl alcohol", "dehydroacetic acid", "glycerin",
        "ethylhexylglycerin", "glyceryl stearate", "lactic acid", "phenoxyethanol", "polysorbate 20", "polysorbate 80", "potassium sorbate",
        "propylene glycol", "rosmarinus officinalis leaf extract", "sodium benzoate", "sorbitan oleate", "stearic acid", "tocopherol",
        "xanthan gum", "cetearyl alcohol + polysorbate 60", "behentrimonium methosulfate + cetearyl alcohol",
        "melaleuca alternifolia leaf oil",
    }  # fmt: skip


def test_the_total_of_scent_has_a_usual_most_for_each_contact_that_is_taught() -> None:
    totals = [limit for limit in LIMITS if limit.is_total_of_scent and limit.is_judged()]
    assert {contact for limit in totals for contact in limit.contact} == {"leave-on", "bath", "rinse-off", "lips"}
    assert all(limit.weight is LimitWeight.PRACTICE for limit in totals)
    (soap,) = (limit for limit in totals if limit.percent_of is PercentOf.OILS)
    assert soap.products == ("cold-process soap", "hot-process soap")


def test_a_colour_that_is_not_listed_may_be_used_nowhere() -> None:
    for rule in COLOURS:
        assert rule.is_listed or not (rule.contact or rule.products)
        assert rule.is_listed == (rule.section != "none")


def test_every_colour_of_ours_is_listed_or_known_not_to_be() -> None:
    labels = {fold(rule.label_name) for rule in COLOURS if rule.is_listed}
    for card in CARDS:
        if "us" in card.colour_name:
            assert fold(card.colour_name["us"]) in labels, card.name


def test_ultramarines_and_chromium_greens_are_not_for_the_lips() -> None:
    # 21 CFR 73.2725, 73.2326 and 73.2327.
    by_name = {rule.label_name: rule for rule in COLOURS}
    for name in ("Ultramarines", "Chromium Oxide Greens", "Chromium Hydroxide Green"):
        assert by_name[name].contact == ("leave-on", "rinse-off", "bath")
    assert "lips" in by_name["Iron Oxides"].contact


ALLERGENS = STUDIO.allergens


def test_every_allergen_is_read() -> None:
    # Recital 5 of Regulation (EU) 2023/1545 (read): 24 were to be named, of 26 once listed; the annex brings them to 81.
    assert len(ALLERGENS) == len(table("fragrance_allergens_eu.csv")) == 83
    assert sum(one.is_original for one in ALLERGENS) == 26
    assert sum(one.is_original and one.is_active for one in ALLERGENS) == 24
    assert sum(one.is_active for one in ALLERGENS) == 81


@pytest.mark.parametrize(("region", "named"), [("US", 0), ("EU", 81), ("UK", 24), ("Canada", 81)])
def test_each_region_has_its_list_of_allergens(region: str, named: int) -> None:
    studio = replace(STUDIO, profile=replace(STUDIO.profile, region=region))
    assert len(studio.labelling.to_name) == named
    needed = {str(info.alias) for info in RegionShape.model_fields.values() if info.is_required()} - {"in words", "law", "locale"}
    assert needed <= studio.labelling.region.rules.keys()


@pytest.mark.parametrize("row", table("fragrance_allergens_eu.csv"), ids=lambda row: row["label_name"])
def test_an_allergen_counts_what_its_published_row_covers(row: Mapping[str, str]) -> None:
    one = next(one for one in ALLERGENS if one.label_name == row["label_name"])
    # Annex III (read): the same two thresholds for all of them.
    assert (one.leave_on, one.rinse_off) == (Fraction(1, 100000), Fraction(1, 10000))
    assert one.counts or one.oils
    assert not (one.counts and fold(row["label_name"]) not in one.counts)
    assert row["known"] in ("read", "memory")


def test_no_name_counts_towards_two_allergens() -> None:
    counted = [name for one in ALLERGENS for name in (*one.counts, *one.oils)]
    assert len(counted) == len(set(counted))


FIELDS = {name: rule for rule in STUDIO.field_rules for name in rule.names}


# Annex IV of Regulation (EC) 1223/2009 in the Commission's export of 9 September 2026 (read): 153 entries, and the nano form of one.
def test_the_list_of_colourants_of_the_eu_is_whole() -> None:
    entries = [row["entry"] for row in table("colours_eu.csv") if row["entry"] != "-"]
    assert sorted(entries, key=lambda entry: (int(entry.removesuffix("a")), entry)) == [
        *map(str, range(1, 127)),
        "126a",
        *map(str, range(127, 154)),
    ]
    assert len(STUDIO.field_rules) == len(table("colours_eu.csv"))


@pytest.mark.parametrize(
    ("name", "allowed_for", "most", "on_lips"),
    [
        ("CI 10006", "rinse-off only", None, None),
        ("CI 10316", "not in eye products", None, None),
        ("CI 15800", "not on mucous membranes", None, None),
        ("CI 12085", "all products", "0.03", None),
        ("CI 45350", "all products", "0.06", None),
        ("CI 45396", "all products", None, "0.01"),
        ("CI 77820", "lip products and eye shadow only", "0.002", None),
        ("CI 77007", "all products", None, None),
        ("CI 77019", "ordinary ingredient", None, None),
    ],
)
def test_the_field_of_a_colourant(name: str, allowed_for: str, most: str | None, on_lips: str | None) -> None:
    rule = FIELDS[fold(name)]
    assert (rule.allowed_for, rule.most, rule.most_on_lips) == (allowed_for, most and Fraction(most), on_lips and Fraction(on_lips))


def test_every_colour_of_ours_has_a_field_or_is_known_not_to_be_listed() -> None:
    for card in CARDS:
        if "eu" in card.colour_name:
            assert all(fold(name) in FIELDS for name in card.eu_colour_names), card.name
