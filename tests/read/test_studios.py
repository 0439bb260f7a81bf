"""A studio folder to the model: text in; the model, or findings with their places, out. The stock is a small one of our own."""

from collections.abc import Callable, Mapping, Sequence
from datetime import datetime
from fractions import Fraction
from pathlib import Path

import pytest

from builder.model.dates.studio_class import BatchFor, Format
from builder.model.finding import Acceptance, Finding
from builder.model.place import Place
from builder.model.recipe.figure import Known
from builder.model.recipe.ingredient import CountsAs, DeclaredAs
from builder.model.recipe.quantity import Density, Duration, Mass, Rest, Share, Temperature, Volume
from builder.model.recipe.recipe import AmountsAs, DividedBy, StatedPurity, WaterBy
from builder.model.studio import Studio
from builder.model.teaching.lesson import Prose
from builder.read.studios import read_studio
from builder.read.text.file_names import plain_name
from tests.making import sure

RULES_OF_A_REGION = (
    "colours that are allowed", "net contents", "liquids", "languages", "heading", "best before", "names", "water", "fragrance", "flavour",
    "flavours and scents", "colours", "exactly one per cent", "fragrance last", "may contain", "allergens", "nano", "responsible person",
    "with little room",
)  # fmt: skip
STOCK = {
    "sources.yaml": "a-book: {title: A book of oils, kind: handbook}\n",
    "constants.yaml": "water density at 20 degC: {value: 0.998, unit: g/mL, source: a-book, at: page 1, known: computed}\n",
    "products.yaml": "lotion: {identity: Lotion, contact: leave-on, made with lye: no, declared by: weight}\n"
    "cold-process soap: {identity: Soap, contact: rinse-off, made with lye: yes, declared by: weight}\n",
    "regions.yaml": "US:\n  in words: the US\n  law: US law\n  locale: en_US\n"
    + "".join(f"  {key}: {{is: English, source: a-book, at: page 1, known: read}}\n" for key in RULES_OF_A_REGION),
    "containers.yaml": "4 fl oz bottle: {capacity: 4 fl oz, shape: cylinder, source: a-book, at: page 2, known: practice}\n"
    "loaf mould: {inside: 30 cm x 8 cm x 7 cm, shape: rectangle, source: a-book, at: page 2, known: practice}\n",
    "cautions/caustic.yaml": "name: Lye burns\nsignal: danger\nhazard: caustic\nwhat: It burns.\navoid: [Wear goggles.]\n"
    "if it happens: [Rinse.]\nsources: [{source: a-book, at: page 3, known: read}]\nreviewed: 2026-11-25\n",
    "passages/tare.md": "---\nname: Tare\nreviewed: 2026-11-25\nsource: a-book\n---\n1. Press tare.\n",
    "ingredients/moonseed-oil.yaml": """\
name: Moonseed oil
also called: [lunaria oil]
label name: {inci: Lunaria Ficta Seed Oil, plain: moonseed oil, known: memory}
kind: oil
counts as: fat
mixes with: oil
hazards: [slippery]
allergens: [tree nut]
figures:
  saponification:
    - {low: 184, high: 196, unit: mg/g, source: a-book, at: page 4, known: read}
    - {value: 190, unit: mg/g, source: a-book, at: page 5, known: memory, in use: yes, because: It is exact.}
  density: [{low: 0.9, high: 1, unit: relative density, when: 20 degC, source: a-book, at: page 6, known: read}]
  melting point: [{value: -5, unit: degC, source: a-book, at: page 6, known: read}]
""",
    "ingredients/sodium-hydroxide.yaml": "name: Sodium hydroxide\nkind: alkali\ncounts as: alkali\nmixes with: water\nhazards: [caustic]\n",
}
STUDIO = {
    "studio.yaml": """\
name: The Round House
address: [1 Example Street, Example Town]
contact: {email: hello@example.org}
region: us
currency: USD
paper: A4
scales: [{name: bench scale, reads to: 1 g, up to: 5 kg}]
scales at home: [{name: kitchen scale, reads to: 1 g, up to: 5 kg}, {name: kitchen scale, reads to: 0.05 oz, up to: 11 lb}]
emergency: {number: "911", poison centre: "1-800"}
accepts: {some-finding: We know.}
""",
    "recipes/plain-bar.yaml": """\
name: Plain bar
product: cold-process soap
amounts: percent of oils
phases:
  - name: oils
    heat to: 160 degF
    hold: 1 h 30 min
    ingredients:
      moonseed oil: 95 %
      lunaria oil: rest
lye:
  alkali: sodium hydroxide
  purity: 98 %
  superfat: 5 %
  water: {lye concentration: 1 %}
choices:
  scent: {from: [lavender oil, no scent], at most: 0.5 %}
fills: {container: 4 fl oz bottle, weight: 113 g}
density: {value: 0.98 g/mL, measured: by jug}
""",
    "classes/first-bar/class.yaml": """\
title: A first bar
format: demo with hands-on parts
summary: Soap.
for: adults
goal: fun
youngest: 14
length: 2 h
seats: 12
price: 48.00
staff: {teachers: 1, assistants: 1}
group size: 2
makes:
  plain-bar: {batch: one for each group, each student: 2 bars, spare: 0 bars, at home: [250 g, 500 g of oils, 4 containers]}
picture: {file: bar.svg, alt: a bar}
take-home sheets: public
dates:
  - {on: 2027-03-06 10:00, enrolled: 9}
  - {on: 2027-04-03}
""",
    "classes/first-bar/lesson.md": "# A first bar\n\nSoap.\n\n## Melt (students, 15 min)\n\n{passage: tare}\n\n1. Melt {moonseed oil}.\n",
    "classes/first-bar/bar.svg": "<svg xmlns='http://www.w3.org/2000/svg'/>",
    "pages/welcome.md": "# Welcome\n\nCome in.\n",
}


def lay_out(root: Path, files: Mapping[str, bytes | str]) -> Path:
    for name, text in files.items():
        path = root / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(text if isinstance(text, bytes) else text.encode())
    return root


Build = Callable[..., tuple[Studio, list[Finding]]]


@pytest.fixture
def build(tmp_path: Path) -> Build:
    """Lay out the studio and the stock, with some files changed (None: left out), and read them."""

    def build(changed: Mapping[str, bytes | str | None] | None = None, stock: None = None) -> tuple[Studio, list[Finding]]:
        files = {name: text for name, text in {**STUDIO, **(changed or {})}.items() if text is not None}
        content = lay_out(tmp_path / "stock", {**STOCK, **(stock or {})})
        return read_studio(lay_out(tmp_path / "studio", files), content)

    return build


def names(findings: Sequence[Finding]) -> list[str]:
    return [finding.name for finding in findings]


def changed(file: str, *pairs: tuple[str, str]) -> dict[str, str]:
    text = STUDIO[file]
    for old, new in pairs:
        assert old in text
        text = text.replace(old, new)
    return {file: text}


def test_a_sound_studio_has_no_findings(build: Build) -> None:
    _, findings = build()
    assert findings == []


def test_the_profile(build: Build) -> None:
    profile = build()[0].profile
    assert (profile.name, profile.region, profile.currency, profile.paper) == ("The Round House", "US", "USD", "A4")
    assert profile.contact == {"email": "hello@example.org"}
    assert profile.emergency == {"number": "911", "poison centre": "1-800"}
    grams, ounces = profile.home_scales
    assert (grams.division, grams.up_to, grams.unit, grams.grams_per_unit) == (Mass(Fraction(1)), Mass(Fraction(5000)), "g", Fraction(1))
    assert (ounces.unit, ounces.grams_per_unit, ounces.division) == ("oz", Fraction("28.349523125"), Mass(Fraction("28.349523125") / 20))
    assert profile.accepts == {"some-finding": Acceptance("We know.")}
    assert profile.accepts["some-finding"].place == Place("studio.yaml", 10, 11, 12)


def test_a_recipe_with_its_places(build: Build) -> None:
    recipe = build()[0].recipes["plain-bar"]
    assert (recipe.name, recipe.product, recipe.amounts_as) == ("Plain bar", "cold-process soap", AmountsAs.PERCENT_OF_OILS)
    phase = recipe.phases[0]
    assert (phase.name.text, phase.heat_to, phase.hold) == ("oils", Temperature(Fraction(640, 9)), Duration(Fraction(90)))
    first, second = phase.lines
    assert (first.ingredient.text, first.amount, second.amount) == ("moonseed oil", Share(Fraction(95, 100)), Rest())
    assert first.ingredient.place == Place("recipes/plain-bar.yaml", 9, 7, 12)
    assert first.place == Place("recipes/plain-bar.yaml", 9, 21, 4)
    assert recipe.fill.container.text == "4 fl oz bottle" and recipe.fill.weight == Mass(Fraction(113))
    assert sure(recipe.density).density == Density(Fraction("0.98"))
    lye = recipe.lye
    assert [(alkali.name.text, alkali.share, alkali.purity) for alkali in sure(lye).alkalis] == [
        ("sodium hydroxide", Fraction(1), StatedPurity(*3 * (Fraction(98, 100),)))
    ]
    assert (sure(lye).superfat, sure(lye).water.by, sure(lye).water.value) == (
        Share(Fraction(1, 20)),
        WaterBy.CONCENTRATION,
        Fraction(1, 100),
    )
    assert sure(lye).at("superfat") == Place("recipes/plain-bar.yaml", 14, 13, 3)
    assert sure(lye).at("water") == Place("recipes/plain-bar.yaml", 15, 3, 5)
    assert ([liquid.name.text for liquid in sure(lye).liquids], sure(lye).divided_by, sure(lye).ready_mixed) == (
        ["water"],
        DividedBy.EQUIVALENTS,
        None,
    )
    scent = recipe.choices[0]
    assert (scent.what, scent.at_most) == ("scent", Share(Fraction(1, 200)))
    assert [option and option.text for option in scent.options] == ["lavender oil", None]


def test_a_lye_of_two_alkalis(build: Build) -> None:
    lye = (
        build(
            changed(
                "recipes/plain-bar.yaml",
                ("sodium hydroxide", "{potassium hydroxide: 90 %, sodium hydroxide: 10 %}\n  divided by: weight\n  ready-mixed: 50 %"),
                ("purity: 98 %", "purity: {Potassium Hydroxide: 90 %}"),
                ("lye concentration: 1 %", "water to lye: 2.5"),
            )
        )[0]
        .recipes["plain-bar"]
        .lye
    )
    assert [(alkali.name.text, alkali.share, alkali.purity) for alkali in sure(lye).alkalis] == [
        ("potassium hydroxide", Fraction(9, 10), StatedPurity(*3 * (Fraction(9, 10),))),
        ("sodium hydroxide", Fraction(1, 10), None),
    ]
    assert (sure(lye).divided_by, sure(lye).water.by, sure(lye).water.value) == (DividedBy.WEIGHT, WaterBy.RATIO, Fraction(5, 2))
    assert sure(lye).ready_mixed == Share(Fraction(1, 2))


def test_a_class_with_its_places(build: Build) -> None:
    studio, _ = build()
    first = studio.classes["first-bar"]
    assert (first.title, first.format, first.youngest, first.seats, first.price) == (
        "A first bar",
        Format.DEMO_WITH_HANDS_ON_PARTS,
        14,
        12,
        Fraction(48),
    )
    assert (first.length, first.teachers, first.assistants, first.group_size) == (Duration(Fraction(120)), 1, 1, 2)
    make = first.makes[0]
    assert (make.recipe.text, make.batch_for, make.each_student, make.spare) == ("plain-bar", BatchFor.GROUP, 2, 0)
    total, oils, containers = make.at_home
    assert (total.total, oils.oils, containers.containers) == (Mass(Fraction(250)), Mass(Fraction(500)), 4)
    assert oils.written == "500 g of oils" and oils.place.line == 13
    assert [(date.on, date.enrolled) for date in first.dates] == [(datetime(2027, 3, 6, 10), 9), (datetime(2027, 4, 3), 0)]
    assert first.sheets_are_public
    assert first.places["length"] == Place("classes/first-bar/class.yaml", 7, 9, 3)
    assert first.places["dates"] == Place("classes/first-bar/class.yaml", 16, 1, 5)
    assert len(first.lesson.parts[0].blocks) == 2
    assert set(studio.pictures) == {"classes/first-bar/bar.svg"}
    assert studio.pages["welcome"].title == "Welcome"


def test_a_card(build: Build) -> None:
    studio, _ = build()
    oil = studio.ingredient("LUNARIA  oil")
    assert oil is studio.ingredient("moonseed oil")
    assert (sure(oil).name, sure(oil).counts_as, sure(oil).declared_as) == ("Moonseed oil", CountsAs.FAT, DeclaredAs.INGREDIENT)
    assert sure(oil).place == Place("content/ingredients/moonseed-oil.yaml", 1, 7, 12)
    saponification = sure(oil).figures["saponification"]
    assert saponification.in_use.typical == 190 and saponification.in_use.because == "It is exact."
    assert [figure.typical for figure in saponification.all] == [190, 190]
    assert saponification.in_use.source.title == "A book of oils" and saponification.in_use.known is Known.MEMORY
    assert sure(sure(oil).figure("melting point")).low == -5
    assert (sure(sure(oil).label_name).inci, sure(sure(oil).label_name).plain) == (("Lunaria Ficta Seed Oil",), ("moonseed oil",))


def test_a_relative_density_becomes_a_density(build: Build) -> None:
    density = sure(build()[0].ingredient("moonseed oil")).figure("density")
    assert (sure(density).low, sure(density).high, sure(density).unit) == (Fraction("0.8982"), Fraction("0.998"), "g/mL")
    assert "relative density" in sure(density).note


def test_containers_and_constants(build: Build) -> None:
    studio, _ = build()
    assert sure(studio.container("4 FL OZ bottle")).capacity == Volume(4 * Fraction("29.5735295625"))
    assert sure(sure(studio.container("loaf mould")).inside).volume == Volume(Fraction(1680))
    assert sure(studio.container("loaf mould")).capacity is None
    assert studio.constants["water density at 20 degC"].typical == Fraction("0.998")


CARD = "name: Moonseed oil\nkind: oil\ncounts as: fat\nmixes with: oil\n"


def test_the_shelf_takes_the_place_of_the_stock(build: Build) -> None:
    studio, findings = build(
        {
            "shelf/sources.yaml": "our-scale: {title: Our own scale, kind: trade}\n",
            "shelf/ingredients/moonseed.yaml": CARD
            + "drop mass: {drops: 50, weigh: 1.9 g, measured: by hand}\n"
            + "figures: {density: [{value: 0.9, unit: g/mL, source: our-scale, at: 2026, known: measured}]}\n",
            "shelf/cautions/caustic.yaml": STOCK["cautions/caustic.yaml"].replace("It burns.", "It blinds."),
            "shelf/containers.yaml": STOCK["containers.yaml"].replace("capacity: 4 fl oz", "capacity: 100 mL"),
            "shelf/passages/tare.md": "Just look.\n",
        }
    )
    assert not findings
    assert sure(sure(studio.ingredient("moonseed oil")).drop_mass).one == Mass(Fraction("0.038"))
    assert studio.ingredient("lunaria oil") is None
    assert studio.cautions["caustic"].what == "It blinds."
    assert sure(studio.container("4 fl oz bottle")).capacity == Volume(Fraction(100))
    text = studio.classes["first-bar"].lesson.parts[0].blocks[0]
    assert isinstance(text, Prose) and text.pieces == ("<p>Just look.</p>\n",)


@pytest.mark.parametrize(
    ("figures", "name", "column"),
    [
        ("[{value: 190, unit: mg/g, at: page 4, known: read}]", "figure-without-source", 20),
        ("[{value: 190, unit: mg/g, source: a-bok, at: page 4, known: read}]", "source-unknown", 53),
        ("[{value: 190, unit: g/g, source: a-book, at: page 4, known: read}]", "figure-unit-wrong", 39),
        ("[{low: 196, high: 184, unit: mg/g, source: a-book, at: page 4, known: read}]", "figure-range-upside-down", 26),
        ("[{high: 184, unit: mg/g, source: a-book, at: page 4, known: read}]", "figure-value-unclear", 20),
        ("[{value: 1, low: 184, unit: mg/g, source: a-book, at: page 4, known: read}]", "figure-value-unclear", 20),
        ("[{low: 184, unit: mg/g, source: a-book, at: page 4, known: read}]", "figure-in-use-unclear", 19),
        (
            "[{value: 190, unit: mg/g, source: a-book, at: p, known: read}, {value: 192, unit: mg/g, source: a-book, at: p, known: read}]",
            "figure-in-use-unclear",
            19,
        ),
        (
            "[{value: 190, unit: mg/g, source: a-book, at: p, known: read, in use: yes}, "
            "{value: 192, unit: mg/g, source: a-book, at: p, known: read}]",
            "figure-in-use-unclear",
            19,
        ),
        ("[{value: 0.19, unit: mg/g, source: a-book, at: page 4, known: read}]", "figure-out-of-range", 28),
        ("[{low: 184, high: 1960, unit: mg/g, source: a-book, at: page 4, known: read}]", "figure-out-of-range", 37),
        ("[{value: 1 900, unit: mg/g, source: a-book, at: page 4, known: read}]", "number-unreadable", 28),
    ],
)
def test_a_figure_that_cannot_be_used_is_a_stop(build: Build, figures: str, name: str, column: int) -> None:
    _, findings = build({"shelf/ingredients/moonseed.yaml": CARD + "figures:\n  saponification: " + figures + "\n"})
    assert names(findings) == [name]
    assert findings[0].stops and not findings[0].acceptable
    assert findings[0].place.line == 6 and findings[0].place.column == column


def test_names_of_cards_are_not_shared(build: Build) -> None:
    card = CARD.replace("Moonseed oil", "Star oil") + "also called: [lunaria oil]\nlabel name: {inci: [A, B], plain: a, known: memory}\n"
    _, findings = build({"shelf/ingredients/star.yaml": card.replace("inci: [A, B]", "inci: A")})
    assert names(findings) == ["name-taken-twice"]
    _, findings = build({"shelf/ingredients/star.yaml": card})
    assert names(findings) == ["label-names-unequal"]


RECIPE = "recipes/plain-bar.yaml"
CLASS = "classes/first-bar/class.yaml"


@pytest.mark.parametrize(
    ("file", "old", "new", "name", "line", "said"),
    [
        (RECIPE, "fills: {container: 4 fl oz bottle, weight: 113 g}\n", "", "field-missing", 0, "fills: {container:"),
        (RECIPE, ", weight: 113 g", "", "field-missing", 18, '"weight"'),
        (RECIPE, "name: Plain bar", "name:", "field-missing", 1, "Nothing is written"),
        (RECIPE, "density:", "densty:", "key-unknown", 19, 'Did you mean "density"?'),
        (RECIPE, "at most", "at moist", "key-unknown", 17, 'Did you mean "at most"?'),
        (RECIPE, "purity: 98 %", "purity: 0.98 %", "purity-out-of-range", 13, '"98 %" is meant'),
        (RECIPE, "purity: 98 %", "purity: 33 %", "purity-out-of-range", 13, "ready-mixed"),
        (RECIPE, "160 degF", "350 degC", "temperature-out-of-range", 6, "degF"),
        (RECIPE, "percent of oils", "percent of oil", "word-unknown", 3, '"percent of oils"'),
        (RECIPE, "cold-process soap", "cold proces soap", "word-unknown", 2, 'Did you mean "cold-process soap"?'),
        (RECIPE, "95 %", "95 gm", "unit-unknown", 9, 'Did you mean "gram" or "g"?'),
        (RECIPE, "160 degF", "2 cups", "unit-of-another-kind", 6, "a temperature"),
        (
            RECIPE,
            "choices:\n  scent: {from: [lavender oil, no scent], at most: 0.5 %}",
            "choices:",
            "wrong-kind-of-value",
            16,
            "Nothing stands",
        ),
        (RECIPE, "from: [lavender oil, no scent]", "from: lavender oil", "wrong-kind-of-value", 17, "a list is wanted"),
        (RECIPE, "from: [lavender oil, no scent]", "from: []", "list-empty", 17, "Nothing is listed"),
        (RECIPE, "  alkali: sodium hydroxide\n", "  alkali: {a: 50 %, b: 50 %}\n", "wrong-kind-of-value", 13, "Give each its own"),
        (RECIPE, "purity: 98 %", "purity: {sodium hydroxid: 98 %}", "key-unknown", 13, 'Did you mean "sodium hydroxide"?'),
        (RECIPE, "purity: 98 %", "purity: 105 %", "share-over-whole", 13, "more than the whole"),
        (RECIPE, "lye concentration: 1 %", "lye concentration: 1 %, water to lye: 2", "lye-water-unclear", 15, "more than one way"),
        (RECIPE, "water: {lye concentration: 1 %}", "water: {}", "lye-water-unclear", 15, "not stated"),
        (RECIPE, "heat to: 160 degF", "after the cook: true", "yes-or-no", 6, "yes or no"),
        (CLASS, "2027-04-03", "3 April 2027", "date-unreadable", 18, "2027-03-06 09:30"),
        (CLASS, "2027-04-03", "2027-02-30", "date-unreadable", 18, "not a day of the calendar"),
        (CLASS, "48.00", "48,00", "number-unreadable", 9, "comma"),
        (CLASS, "seats: 12", "seats: 0", "amount-not-positive", 8, "at least 1"),
        (CLASS, "seats: 12", "seats: a dozen", "number-unreadable", 8, "whole number"),
        (CLASS, "demo with hands-on parts", "hands on", "word-unknown", 2, 'Did you mean "hands-on"'),
        (CLASS, "each student: 2 bars", "each student: 2", "unit-missing", 13, "2 containers"),
        (CLASS, "summary: Soap.", "summary: [Soap.]", "wrong-kind-of-value", 3, "single text"),
        ("studio.yaml", "contact: {email: hello@example.org}", "contact: {}", "field-missing", 3, "email, phone or web"),
        ("studio.yaml", "currency: USD", "currency: dollars", "word-unknown", 5, '"USD"'),
        ("studio.yaml", "reads to: 1 g, up to: 5 kg}]\n", "reads to: 1 kg, up to: 5 g}]\n", "scale-upside-down", 7, "Exchange"),
        ("studio.yaml", "paper: A4", "paper: A4\npublic address: example", "web-address-unreadable", 7, "https://"),
    ],
)
def test_what_is_wrong_in_a_file_is_found_at_its_line(build: Build, file: str, old: str, new: str, name: str, line: int, said: str) -> None:
    _, findings = build(changed(file, (old, new)))
    found = [finding for finding in findings if finding.name == name]
    assert found, names(findings)
    assert found[0].stops
    assert (found[0].place.file, found[0].place.line) == (file, line)
    assert said in found[0].wrong + found[0].remedy


def test_all_faults_of_all_files_are_found_in_one_run(build: Build) -> None:
    studio, findings = build(
        {
            **changed(RECIPE, ("95 %", "95"), ("superfat: 5 %", "superfat: five"), ("weight: 113 g", "weight: 4 fl oz")),
            **changed(CLASS, ("goal: fun", "goal: funny"), ("youngest: 14", "youngest: teen")),
            **changed("studio.yaml", ("region: us", "region: USA")),
            "pages/welcome.md": "No title {",
        }
    )
    assert sorted(names(findings)) == [
        "amount-unreadable",
        "brace-unclosed",
        "number-unreadable",
        "page-title-missing",
        "unit-missing",
        "unit-of-another-kind",
        "word-unknown",
        "word-unknown",
    ]
    assert not studio.recipes and not studio.classes and not studio.pages
    assert [scale.name for scale in studio.profile.scales] == ["bench scale"]


def test_a_folder_without_studio_yaml_is_no_studio(build: Build) -> None:
    studio, findings = build({"studio.yaml": None})
    assert names(findings) == ["studio-missing"]
    assert "studio folder has a file studio.yaml" in findings[0].wrong
    assert studio.recipes == {}


def test_a_class_needs_both_of_its_files(build: Build) -> None:
    _, findings = build({"classes/first-bar/lesson.md": None})
    assert names(findings) == ["lesson-missing"]
    _, findings = build({"classes/other/lesson.md": "# T\n", "classes/first-bar/lesson.md": None})
    assert "class-missing" in names(findings)


def test_names_of_files_stand_in_addresses(build: Build) -> None:
    _, findings = build(
        {"pages/How Classes Work.md": "# How\n", "classes/first-bar/Bar 2.svg": "<svg xmlns='http://www.w3.org/2000/svg'/>"}
    )
    assert names(findings) == ["file-name-not-plain", "file-name-not-plain"]
    assert '"how-classes-work"' in findings[0].remedy


def test_files_in_places_where_nothing_is_read(build: Build) -> None:
    _, findings = build(
        {"classes/a.yaml": "a: b\n", "recipes/b.yml": "a: b\n", "recipes/old/c.yaml": "a: b\n", "shelf/d.yaml": "", "notes.txt": "x"}
    )
    assert names(findings) == ["file-not-used"] * 4
    assert not any(finding.stops for finding in findings)
    assert [finding.place.file for finding in findings] == ["classes/a.yaml", "recipes/b.yml", "recipes/old/c.yaml", "shelf/d.yaml"]


def test_links_out_of_the_folder_are_not_followed(build: Build, tmp_path: Path) -> None:
    secret = tmp_path / "secret.yaml"
    secret.write_text("name: secret\n")
    (tmp_path / "studio" / "recipes").mkdir(parents=True)
    (tmp_path / "studio" / "recipes" / "stolen.yaml").symlink_to(secret)
    (tmp_path / "studio" / "pages").mkdir()
    (tmp_path / "studio" / "pages" / "same.md").symlink_to("welcome.md")
    studio, findings = build()
    assert names(findings) == ["file-outside-studio"]
    assert "secret" not in findings[0].wrong
    assert "same" in studio.pages


def test_texts_in_other_encodings(build: Build) -> None:
    _, findings = build({"pages/welcome.md": "# Welcome\n\nCaf\u00e9\n".encode("latin-1")})
    assert names(findings) == ["file-not-utf-8"] and findings[0].place.line == 3
    _, findings = build({"pages/welcome.md": b"\xef\xbb\xbf# Welcome\r\n\r\nCome {in.\r\n"})
    assert [(finding.name, finding.place.line, finding.place.column) for finding in findings] == [("brace-unclosed", 3, 6)]
    _, findings = build({"pages/welcome.md": "# Welcome\n" + "x" * 1_000_001})
    assert names(findings) == ["file-too-large"]


def test_findings_use_no_words_of_the_program(build: Build) -> None:
    _, findings = build(
        {**changed(RECIPE, ("phases:\n", "phases: 3\nx:\n")), **changed(CLASS, ("staff: {teachers: 1, assistants: 1}", "staff: 2"))}
    )
    for finding in findings:
        text = (finding.wrong + finding.remedy).lower()
        assert not any(word in text for word in ("dict", "tuple", "string", "str ", "int ", "valid", "input", "none", "pydantic", "yaml:"))


def test_pictures_are_called_as_cameras_call_them(build: Build) -> None:
    _, findings = build({"classes/first-bar/IMG_2041.SVG": "<svg xmlns='http://www.w3.org/2000/svg'/>"})
    assert names(findings) == []


# Microsoft, "Naming Files, Paths, and Namespaces", from memory: CON, PRN, AUX, NUL, COM0 to COM9 and LPT0 to LPT9, with any ending.
@pytest.mark.parametrize("name", ["con", "prn", "aux", "nul", "com1", "lpt9"])
@pytest.mark.parametrize("file", ["recipes/{}.yaml", "pages/{}.md", "classes/first-bar/{}.svg"])
def test_a_name_that_windows_keeps_for_a_device_is_no_name(name: str, file: str, build: Build) -> None:
    _, findings = build({file.format(name): "# Page\n"})
    (told,) = [one for one in findings if one.name == "file-name-not-plain"]
    assert f'"{name}"' in told.wrong and f'"the-{name}"' in told.remedy


def test_a_name_that_only_begins_like_a_device_is_one() -> None:
    assert [plain_name(name) for name in ("Contact", "Com 10", "Auxiliary", "Null", "Lpt")] == [
        "contact",
        "com-10",
        "auxiliary",
        "null",
        "lpt",
    ]
    assert plain_name("Con") == "the-con"
