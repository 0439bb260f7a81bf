"""The smaller ingredient list of a small pack: only below its surface, only where nothing else sits, and never the other text."""

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from builder.compose.edition import Edition
from builder.compose.label_layout.label_heights import SMALLER, rules_of, smaller_rules
from builder.compose.label_layout.label_layout import lay_out
from builder.compose.label_layout.label_lines import Setter
from builder.compose.label_layout.label_plans import plan_labels
from builder.model.label.type_height import LabelStatement, rules_for
from builder.rules.label.label_surface import surface_of
from tests.compose.conftest import FILES, read_edition, write_studio
from tests.compose.test_label_rules import INCH, container
from tests.making import Number, sure

TUBE = "lip tube: {{capacity: 5 mL, shape: tube, height: {height} mm, around: 50 mm, source: common-practice, at: tape, known: measured}}\n"
# A sheet of an invented size, as narrow as the tube is around.
SHEET = (
    "tube sheet: {paper: letter, columns: 4, rows: 4, width: 49 mm, height: 65 mm, left: 6 mm, top: 10 mm, across: 1 mm, "
    "down: 1 mm, cut: yes}\n"
)


def balm(folder: Path, height: str = "66", region: str = "US", parts: int = 3) -> Edition:
    oils = ", ".join(f"{name}: {weight} g" for name, weight in list(OILS.items())[:parts])
    recipe = FILES["recipes/salts.yaml"]
    start, end = recipe.index("phases:"), recipe.index("choices:")
    recipe = f"{recipe[:start]}phases:\n  - name: all\n    ingredients: {{{oils}}}\n{recipe[end:]}"
    recipe = recipe.replace("4 fl oz jar, weight: 113 g", "lip tube, weight: 4.25 g, measured: one filled").replace(
        "bath salts", "lip balm"
    )
    recipe = recipe.replace("choices:\n  scent: {from: [lavender essential oil, no scent], at most: 1 %}\n", "")
    lesson = FILES["classes/first/lesson.md"].replace("{sea salt}", "some").replace("{baking soda}", "some").replace("{glycerin}", "some")
    lesson = lesson.replace("3. Add at most {scent} of scent.\n", "")
    studio = (
        FILES["studio.yaml"]
        .replace("region: US", f"region: {region}")
        .replace("paper: letter", "paper: letter\nlabels: {sheet: tube sheet}")
    )
    changed = {"recipes__salts_yaml": recipe, "classes__first__lesson_md": lesson, "studio_yaml": studio}
    shelf = {"shelf__containers_yaml": TUBE.format(height=height), "shelf__label_sheets_yaml": SHEET}
    return read_edition(write_studio(folder, **changed, **shelf))


OILS = {
    "olive oil": 200, "beeswax": 180, "shea butter": 150, "cocoa butter": 120, "coconut oil": 100, "castor oil": 80, "sunflower oil": 60,
    "sweet almond oil": 50, "jojoba oil": 40, "vitamin E": 20,
}  # fmt: skip


# 21 CFR 701.3(p) (memory, seen in fragments): below 12 square inches, so that 12.0 is not small.
@pytest.mark.parametrize(("square_inches", "is_small"), [("11.99", True), ("12", False), ("12.01", False)])
def test_small_is_below_twelve_square_inches(tmp_path: Path, square_inches: str, is_small: bool) -> None:
    studio = read_edition(write_studio(tmp_path)).studio
    area = Fraction(square_inches) * INCH**2
    assert bool(rules_for(studio.type_heights, "US", LabelStatement.SMALL_PACK, area, Fraction(0))) is is_small
    assert not rules_for(studio.type_heights, "EU", LabelStatement.SMALL_PACK, area, Fraction(0))


# Plain geometry: a tube of 50 mm around and 55 mm high has 2750 mm2 of side and two ends of 50²/4π mm2.
@pytest.mark.parametrize(
    ("shape", "outside", "square_millimetres"),
    [
        ("tube", {"height": "55", "around": "50"}, 3147.9),
        ("round lid", {"height": "15", "around": "157.08", "lid": "50"}, 6283.2),
        ("round lid", {"height": "15", "around": "150", "lid": "54"}, 6830.4),
        ("bag", {"width": "75", "height": "100"}, 15000),
        ("cavity", {"width": "30", "height": "50"}, None),
        ("tube", {"around": "50"}, None),
    ],
)
def test_all_of_the_surface_counts(shape: str, outside: Mapping[str, Any], square_millimetres: Number | None) -> None:
    surface = surface_of(container(shape, **outside))
    assert surface is None if square_millimetres is None else float(sure(surface)) == pytest.approx(square_millimetres, rel=1e-4)


def test_the_list_alone_gets_smaller_as_little_as_does_and_never_below_its_height(tmp_path: Path) -> None:
    edition = balm(tmp_path)
    studio, sheet = edition.studio, edition.plans[-1]
    plan = next(plan_labels(studio, sheet))
    laid, ordinary = plan.laid_out, rules_of(studio, plan.made.batch, plan.filling)
    assert laid is not None and laid.sheet.name == "tube sheet"
    blocks = [block for cell in laid.labels[0] for block in cell.blocks]
    small = [block for block in blocks if block.points < ordinary.text]
    assert [block.lines[0][0].text.strip() for block in small] == ["Ingredients:"]
    assert small[0].points * 25.4 / 72 * studio.typefaces["regular"].small_o >= float(INCH / 32)
    rules = list(smaller_rules(studio, plan.made.batch, plan.filling))
    tried = [one.ingredients for one in rules]
    assert tried == sorted(tried, reverse=True) and tried[0] == SMALLER[0] and tried[-1] == pytest.approx(0.5, abs=0.01)
    fitting = [lay_out(plan.texts, laid.sheet, 1, one, Setter(studio.typefaces)) for one in (ordinary, *rules)]
    assert next(one for one in fitting if one) == laid and fitting[0] is None


def test_on_a_larger_tube_or_elsewhere_the_list_stays_as_high_as_other_text(tmp_path: Path) -> None:
    # 12 square inches are 7742 mm2: 150 mm of side and the ends of the tube pass that.
    tall = balm(tmp_path / "tall", height="160")
    europe = balm(tmp_path / "europe", region="EU")
    for edition in (tall, europe):
        plan = next(plan_labels(edition.studio, edition.plans[-1]))
        assert list(smaller_rules(edition.studio, plan.made.batch, plan.filling)) == []
    packed = next(plan_labels(tall.studio, tall.plans[-1]))
    several = replace(packed.filling, fill=replace(packed.filling.fill, units=2))
    assert list(smaller_rules(tall.studio, packed.made.batch, several)) == []
