"""What decides how a label looks: panels, heights of type, warnings, how long it keeps, and a layout that never goes below the law."""

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.compose.edition import Edition
from builder.compose.label.code_words import FROM_BEFORE, code_words
from builder.compose.label.label_texts import LabelText, Run, label_text
from builder.compose.label.label_warnings import warnings_of
from builder.compose.label_layout.label_heights import height_rules, rules_of
from builder.compose.label_layout.label_layout import box_of, lay_out
from builder.compose.label_layout.label_lines import Setter, line_height
from builder.compose.label_layout.label_plans import plan_labels
from builder.compose.label_layout.rules import LabelRules
from builder.fonts.typefaces import typefaces_of_labels
from builder.library import CONTENT
from builder.model.dates.studio_class import Format
from builder.model.label.type_height import LabelStatement, rules_for
from builder.model.recipe.container import Container, Outside
from builder.model.recipe.container_form import ContainerForm
from builder.model.recipe.figure import Known
from builder.model.recipe.quantity import Box, Density, Length, Volume
from builder.model.recipe.recipe import MeasuredDensity
from builder.model.studio import Studio
from builder.read.studios import read_studio
from builder.reckon.label.batch_codes import batch_code
from builder.rules.durability import durability_in
from builder.rules.label.panel import Panel, panel_of
from builder.rules.label.usual_outside import with_usual_outside
from tests.compose.conftest import FILES, in_region, read_edition, write_studio
from tests.making import SOURCE, grams, sure

INCH = Fraction("25.4")
SETTER = Setter(typefaces_of_labels())
RULES = LabelRules(text=8.16, net=16.5, net_part=0.3, clear_above=1, clear_beside=2, inset=2.5)


@pytest.fixture(scope="module")
def edition(tmp_path_factory: pytest.TempPathFactory) -> Edition:
    return read_edition(write_studio(tmp_path_factory.mktemp("edition")))


@pytest.fixture(scope="module")
def stock(tmp_path_factory: pytest.TempPathFactory) -> Studio:
    studio, findings = read_studio(write_studio(tmp_path_factory.mktemp("rules")), CONTENT)
    assert findings == []
    return studio


def container(shape: str = "cylinder", capacity: Volume | None = None, **outside: Any) -> Container:
    lengths = {name: Length(Fraction(value)) for name, value in outside.items()}
    return Container(
        name="test",
        shape=ContainerForm(shape),
        source=SOURCE,
        at="here",
        known=Known.MEASURED,
        capacity=capacity,
        outside=Outside(**lengths),
    )


# A usual bottle of 250 mL is about 60 mm wide and 110 mm high below its shoulder (common practice, no source).
def test_a_panel_that_nobody_measured_is_not_smaller_than_a_usual_one(stock: Studio) -> None:
    panel = panel_of(container(capacity=Volume(Fraction(250))), stock.constants)
    assert not sure(panel).measured
    assert sure(panel).area > Fraction(2, 5) * 110 * 188


# A pouch for 8 fl oz is about 5 in wide and 7 in high between its seams (common practice, no source): over 25 square inches.
def test_a_pouch_that_nobody_measured_is_not_taken_for_a_small_one(stock: Studio) -> None:
    panel = panel_of(container("bag", Volume(Fraction("236.6"))), stock.constants)
    assert not sure(panel).measured
    assert sure(panel).area > 5 * 7 * INCH**2


# By hand: 100 mL with its wall and empty head are 130 cm3; a tin 0.3 times as high as wide is then 82.0 mm wide, and pi / 4 of that
# squared is its lid. (Both figures are common practice, in content/constants.yaml.)
def test_a_jar_that_nobody_measured_has_the_lid_of_a_flat_tin(stock: Studio) -> None:
    panel = sure(panel_of(container("round lid", Volume(Fraction(100))), stock.constants))
    assert float(panel.area) == pytest.approx(5283, abs=2) and not panel.measured


# 16 CFR 500.21(a): height times width of a side. What is cast in a mould is as large as its inside: of 30 cm x 8 cm x 7 cm it is 30 by 8.
def test_a_bar_or_a_loaf_is_as_large_as_the_inside_of_its_mould(stock: Studio) -> None:
    loaf = replace(container("rectangle"), inside=Box((Length(Fraction(70)), Length(Fraction(300)), Length(Fraction(80)))))
    assert panel_of(loaf, stock.constants) == Panel(Fraction(300 * 80), measured=False)
    assert with_usual_outside(loaf, stock.constants).outside == Outside(height=Length(Fraction(80)), width=Length(Fraction(300)))


def test_of_a_mould_whose_edges_nobody_has_measured_no_side_is_known(stock: Studio) -> None:
    for loaf in (container("rectangle"), container("rectangle", Volume(Fraction(1680)))):
        assert panel_of(loaf, stock.constants) is None
        assert with_usual_outside(loaf, stock.constants) == loaf


def test_every_region_has_one_height_for_each_size(stock: Studio) -> None:
    for region in ("US", "EU", "UK", "Canada"):
        for size in (1, 50, 3200, 10**4, 10**6, 10**9):
            assert rules_for(stock.type_heights, region, LabelStatement.NET_CONTENTS, Fraction(size), Fraction(size)), (region, size)
            assert rules_for(stock.type_heights, region, LabelStatement.TEXT, Fraction(size), Fraction(size)), (region, size)


def test_the_type_of_a_label_is_as_high_as_the_law_of_its_region_asks(tmp_path: Path) -> None:
    for region, text in (("US", 1.5875), ("Canada", 1.6), ("EU", 1.2), ("UK", 1.2)):
        edition = read_edition(write_studio(tmp_path / region, **in_region(region)))
        assert list(plan_labels(edition.studio, edition.plans[-1]))
        for plan in plan_labels(edition.studio, edition.plans[-1]):
            assert sure(plan.laid_out).points >= rules_of(edition.studio, plan.made.batch, plan.filling).text
            assert sure(plan.laid_out).points * 25.4 / 72 * edition.studio.typefaces["regular"].small_o >= text - 1e-9


def label(words: Sequence[str]) -> LabelText:
    paragraph = (Run("Ingredients: ", bold=True), Run(" ".join(words) or "Water"))
    return LabelText(
        "Lotion", "Test lotion", "No scent", ((Run("By "), Run("", blank=20.0)),), (Run("Net Wt 4 oz", bold=True),), (paragraph,)
    )


@given(words=st.lists(st.text("abcdefghilmnoprst", min_size=1, max_size=14), max_size=250), panels=st.sampled_from((1, 2)))
def test_what_is_laid_out_is_whole_lawful_inside_and_apart(stock: Studio, words: Sequence[str], panels: int) -> None:
    text = label(words)
    for name in ("letter 3 x 6", "letter 2 x 4", "letter 2 x 3 round"):
        sheet = stock.label_sheets[name]
        laid = lay_out([text], sheet, panels, RULES, SETTER)
        if laid is None:
            continue
        box = box_of(sheet, RULES.inset)
        cells = [one.blocks for one in laid.labels[0]]
        said = " ".join(run.text for cell in cells for block in cell for line in block.lines for run in line).split()
        assert sorted(said) == sorted(
            " ".join(run.text for part in ((Run("Lotion Test lotion No scent By Net Wt 4 oz"),), *text.back) for run in part).split()
        )
        for cell in cells:
            for block in cell:
                assert block.points >= RULES.text
                assert box.x - 1e-6 <= block.x and block.x + block.width <= box.x + box.width + 1e-6
                assert box.y - 1e-6 <= block.y and block.below <= box.y + box.height + 1e-6
            for one in cell:
                for other in cell:
                    apart = one.below <= other.y + 1e-6 or other.below <= one.y + 1e-6
                    beside = one.x + one.width <= other.x + 1e-6 or other.x + other.width <= one.x + 1e-6
                    assert one is other or apart or beside


def test_a_larger_label_holds_what_a_smaller_one_does_not(stock: Studio) -> None:
    text = label(["Glycerin"] * 60)
    assert lay_out([text], stock.label_sheets["letter 3 x 6"], 1, RULES, SETTER) is None
    assert lay_out([text], stock.label_sheets["letter 2 x 2"], 1, RULES, SETTER) is not None
    assert lay_out([label(["Glycerin"] * 900)], stock.label_sheets["letter 1 x 2"], 1, RULES, SETTER) is None


def test_lines_are_as_high_as_their_type() -> None:
    assert line_height(10) == pytest.approx(10 * 1.09 * 25.4 / 72)


# 21 CFR 740.17 (read) for a foaming bath product; 1223/2009 annex III (read) for talc; guidance of the FDA of 2005 (read) for an AHA.
@pytest.mark.parametrize(
    ("region", "product", "ingredient", "begins", "due"),
    [
        ("US", "bath salts", "sodium cocoyl isethionate", "Caution: Use only as directed", True),
        ("EU", "bath salts", "sodium cocoyl isethionate", "Caution: Use only as directed", False),
        ("US", "bubble bath", "cocamidopropyl betaine", "Caution: Use only as directed", True),
        ("US", "bubble bath", "liquid soap base", "Caution: Use only as directed", True),
        ("US", "body wash", "liquid soap base", "Caution: Use only as directed", False),
        ("US", "bath salts", "sea salt", "Caution: Use only as directed", False),
        ("US", "lotion", "lactic acid", "Sunburn Alert", True),
        ("US", "bath salts", "lactic acid", "Sunburn Alert", False),
        # Health Canada's advice of 2016 on home-made mixtures with borax (read); neem and salt on open skin: common practice, no source.
        ("Canada", "cream", "borax", "Not for children, in pregnancy", True),
        ("US", "bath salts", "borax", "Not for children, in pregnancy", True),
        ("US", "balm", "neem oil", "Not for small children or in pregnancy", True),
        ("US", "balm", "olive oil", "Not for small children or in pregnancy", False),
        ("US", "scrub", "sea salt", "Not on broken skin", True),
        ("US", "scrub", "white sugar", "Not on broken skin", False),
        ("US", "bath salts", "sea salt", "Not on broken skin", False),
    ],
)
def test_warnings_that_are_prescribed(
    stock: Studio, tmp_path: Path, region: str, product: str, ingredient: str, begins: str, due: bool
) -> None:
    card = stock.ingredient(ingredient)
    assert card is not None, ingredient
    edition = read_edition(write_studio(tmp_path))
    filled = edition.plans[-1].made[0].batch
    lines = (replace(filled.lines[0], ingredient=card),)
    sheet = replace(filled, product=edition.studio.products[product], lines=lines)
    studio = replace(edition.studio, profile=replace(edition.studio.profile, region=region))
    assert any(warning.startswith(begins) for warning in warnings_of(studio, sheet, filled.own.variants[-1])) is due


# Regulation 1223/2009 Art. 19(1)(c) (read): up to 30 months a date; above, the months after opening behind the sign of an open jar.
@pytest.mark.parametrize(("keeps", "opened", "said"), [(30, 1, ""), (31, 1, "12 M"), (31, 2, "24 M")])
def test_the_sign_of_an_open_jar_stands_where_no_date_does(tmp_path: Path, keeps: int, opened: int, said: str) -> None:
    changed = in_region("EU") | {
        "recipes__salts_yaml": FILES["recipes/salts.yaml"].replace("6 months", f"{keeps} months\nafter opening: {opened} year")
    }
    edition = read_edition(write_studio(tmp_path, **changed))
    (plan, *_) = plan_labels(edition.studio, edition.plans[-1])
    back = [run for paragraph in plan.texts[0].back for run in paragraph]
    signs = [(run.sign, after.text.replace("\u00a0", " ").strip()) for run, after in pairwise(back) if run.sign]
    assert signs == ([("open-jar", said)] if said else [])
    assert any("Best used before" in run.text for run in back) is (not said)


def test_words_without_a_length_of_time_give_no_date() -> None:
    assert durability_in("as long as it smells fresh") is None


# SI 2006/659 reg. 8(3)(d) (read): up to 200 mL 3 mm, above 4 mm. 190 g of an oil of 0.92 g/mL are 206.5 mL.
def test_what_is_declared_by_volume_is_judged_by_its_volume(edition: Edition) -> None:
    filled = edition.plans[-1].made[0].batch
    oil = replace(filled.recipe, density=MeasuredDensity(Density(Fraction("0.92")), "weighed"))
    bottle, filling = replace(filled, recipe=oil), replace(filled.own, fill=replace(filled.own.fill, weight=grams(190)))
    studio = replace(edition.studio, profile=replace(edition.studio.profile, region="UK"))
    heights = {
        name: max(
            rule.height.millimetres
            for rule in height_rules(studio, replace(bottle, product=studio.products[name]), filling, LabelStatement.NET_CONTENTS)
        )
        for name in ("massage oil", "balm")
    }
    assert heights == {"massage oil": 4, "balm": 3}


def test_after_a_demonstration_of_soap_labels_get_the_code_of_the_earlier_batch_by_hand(edition: Edition) -> None:
    sheet = edition.plans[-1]
    salts, bar = sheet.made
    shown = replace(sheet, teaching=replace(sheet.teaching, format=Format.DEMO))
    assert code_words(sheet, bar).endswith("Write it on each pot; the labels bear it.")
    assert code_words(shown, salts).endswith("Write it on the pot; the labels bear it.")
    assert code_words(shown, bar).endswith(FROM_BEFORE)
    assert code_words(sheet, bar, labelled=False).endswith("Write it on each pot, and on what is packed.")
    texts = [label_text(edition.studio, one, bar.batch, bar.containers[0].jars[0]) for one in (sheet, shown)]
    made, by_hand = ("".join(run.text for line in text.lines for run in line) for text in texts)
    assert "BAR-270306-1" in made and "BAR" not in by_hand


def test_two_classes_that_make_the_same_on_one_day_have_codes_of_their_own(edition: Edition) -> None:
    sheet = edition.plans[-1]
    second = replace(sheet.studio_class, key="second")
    studio = replace(edition.studio, classes={"first": sheet.studio_class, "second": second})
    codes = [batch_code(studio, one.key, sure(sheet.date).on, "bar", "2") for one in (sheet.studio_class, second)]
    assert codes == ["BAR-270306A-2", "BAR-270306B-2"]
    assert batch_code(edition.studio, "first", sure(sheet.date).on, "bar", "2") == "BAR-270306-2"
