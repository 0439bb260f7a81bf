"""Run in a copy of the project to which everything was added: each addition does what it is for. Elsewhere these tests fail."""

import json
from dataclasses import replace
from datetime import date
from fractions import Fraction
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest

from builder import pipeline
from builder.compose.document_table import DOCUMENTS
from builder.compose.edition import Edition
from builder.compose.label_layout.label_plans import plan_labels
from builder.compose.recipe.batch_json import batch_json
from builder.compose.recipe.wording import rule_words
from builder.compose.supplies.shopping_words import shop_list
from builder.compose.templates import Templates
from builder.fonts.typefaces import typefaces_of_labels
from builder.library import CONTENT, LAYOUTS
from builder.model.label.type_height import LabelStatement, rules_for
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.recipe.working import SumRule
from builder.model.studio import Studio
from builder.model.supplies.shopping import Period
from builder.model.teaching.class_plan import ClassPlan
from builder.read.studios import read_studio
from builder.reckon import reckon_classes, reckon_shopping
from builder.reference.pages import find_page, pages
from builder.reference.terms import find_term
from builder.start.starters import has_starter
from tests.compose.test_document_table import rows
from tests.reference_examples import examples
from tests.test_findings import CASES, answer, lay_out

TODAY = date(2027, 1, 1)


def written(folder: Path, *changes: tuple[str, str, str]) -> Path:
    """Write the sound studio, changed: a file, what stands in it, and what takes its place."""
    lay_out(None, folder / "studio")
    for name, old, new in changes:
        text = (folder / "studio" / name).read_text(encoding="utf-8")
        assert old in text, name
        (folder / "studio" / name).write_text(text.replace(old, new), encoding="utf-8")
    return folder / "studio"


def studio_with(*changes: tuple[str, str, str]) -> Studio:
    """Read the sound studio, changed."""
    with TemporaryDirectory() as scratch:
        studio, findings = read_studio(written(Path(scratch), *changes), CONTENT)
    assert [(one.place.file, one.wrong) for one in findings] == []
    return replace(studio, typefaces=typefaces_of_labels())


def oil_of_lotion(oil: str) -> tuple[str, str, str]:
    return ("recipes/plain-lotion.yaml", "sunflower oil: 12 %", oil)


def plan_of(studio: Studio, recipe: str) -> ClassPlan:
    (a_class,) = studio.classes_by_recipe[recipe]
    return reckon_classes(studio, [a_class], on=TODAY)[0]


def bar_of(studio: Studio) -> WorkedBatch:
    return plan_of(studio, "plain-bar").made[0].batch


def labels_of(studio: Studio, recipe: str = "plain-lotion") -> str:
    """Return the words of the first label of a product."""
    (plan,) = plan_labels(studio, plan_of(studio, recipe))
    text = plan.texts[0]
    return " ".join("".join(run.text for run in line) for line in (*text.lines, text.net, *text.back)).replace("\u00a0", " ")


@pytest.mark.parametrize("name", ["moonpetal oil", "starseed oil"])
def test_a_card_is_weighed_and_takes_lye(name: str) -> None:
    batch = bar_of(studio_with(("recipes/plain-bar.yaml", "coconut oil", name)))
    (oil,) = [line for line in batch.lines if line.ingredient.name.casefold() == name]
    assert oil.exact.grams > 0
    assert any(one.rule.startswith("fat equivalents") and one.of.casefold() == name for one in batch.workings)


def test_a_new_work_is_cited() -> None:
    card = studio_with().ingredient("starseed oil")
    assert card and card.figures["saponification"].in_use.source.title == "A book of invented oils"


# 5 % where 2 % is the most.
def test_a_limit_is_judged(tmp_path: Path) -> None:
    found = pipeline.check(written(tmp_path, oil_of_lotion("moonpetal oil: 5 %")), on=TODAY).findings
    assert "over-usual-limit" in [one.name for one in found if "moonpetal" in one.wrong.casefold()]
    sound = pipeline.check(written(tmp_path / "less", oil_of_lotion("moonpetal oil: 1 %")), on=TODAY).findings
    assert "over-usual-limit" not in [one.name for one in sound]


def test_a_height_of_type_holds() -> None:
    large, small = (
        rules_for(studio_with().type_heights, "US", LabelStatement.TEXT, Fraction(0), Fraction(grams)) for grams in (6000, 5000)
    )
    assert [rule.height.millimetres for rule in large if rule not in small] == [9]


def test_a_warning_stands_on_the_label() -> None:
    assert "Not under a full moon." in labels_of(studio_with(oil_of_lotion("moonpetal oil: 1 %")))
    assert "moon" not in labels_of(studio_with())


def test_a_constituent_is_counted() -> None:
    card = studio_with().ingredient("Peru balsam essential oil")
    assert card and "moonol" in str(card.holds)


def test_a_region_has_labels_in_its_words() -> None:
    said = labels_of(studio_with(("studio.yaml", "region: US", "region: Norland")))
    assert "Holds: Aqua" in said and "Good until the end of" in said


def test_a_label_sheet_can_be_asked_for() -> None:
    studio = studio_with(("studio.yaml", "region: US", "region: UK\nlabels: {sheet: moon sheet}"))
    (plan,) = plan_labels(studio, plan_of(studio, "plain-lotion"))
    assert plan.laid_out and plan.laid_out.sheet.name == "moon sheet"


def test_a_container_is_filled() -> None:
    studio = studio_with(("recipes/plain-lotion.yaml", "4 fl oz bottle", "5 fl oz moon jar"))
    assert "5 fl oz moon jar" in plan_of(studio, "plain-lotion").made[0].batch.own.fill.container.text


def test_a_kind_of_product_begins_a_studio() -> None:
    assert has_starter("moon dust")
    studio = studio_with(("recipes/plain-lotion.yaml", "product: lotion", "product: moon dust"))
    assert plan_of(studio, "plain-lotion").made[0].batch.product.name == "moon dust"


def test_a_word_is_explained() -> None:
    assert "invented soap sets" in str(find_term("moon set"))


def test_a_language_is_read() -> None:
    german = studio_with().languages["German"]
    assert german.texts["bath salts"] == "Badesalz"


def test_a_finding_is_made_with_its_example() -> None:
    (case,) = [one for one in CASES if one.name == "moonlit-bar"]
    status, _, said = answer(case)
    assert (status, "recipes/plain-bar.yaml:8:22: moonlit-bar (caution)" in said) == (0, True), said
    (case / "expected.txt").write_text(said, encoding="utf-8")
    assert "moonlit-bar" in examples()


def test_a_key_is_read() -> None:
    studio = studio_with(("recipes/plain-lotion.yaml", "keeps: 3 months", "keeps: 3 months\nmoon: new"))
    assert studio.recipes["plain-lotion"].moon == "new"  # type: ignore[attr-defined]


def test_a_sum_is_told_and_stands_in_the_json() -> None:
    assert rule_words(SumRule("moon sum")) == "the batch twice"
    assert "moon sum" in json.dumps(batch_json(bar_of(studio_with()), (), "plain-bar"))
    sums = find_page("sums")
    assert sums and "**Moon sum**: the batch twice." in sums.text


def test_a_kind_of_ingredient_is_on_a_card_and_has_its_group_when_buying() -> None:
    card = (CONTENT / "ingredients" / "moonpetal-oil.yaml").read_text(encoding="utf-8")
    with TemporaryDirectory() as scratch:
        folder = written(Path(scratch), oil_of_lotion("moondust oil: 12 %"))
        shelf = folder / "shelf" / "ingredients" / "moondust-oil.yaml"
        shelf.parent.mkdir(parents=True)
        shelf.write_text(card.replace("Moonpetal", "Moondust").replace("kind: oil", "kind: moondust"), encoding="utf-8")
        studio, findings = read_studio(folder, CONTENT)
    assert findings == []
    plans = reckon_classes(studio, studio.classes.values(), on=TODAY)
    groups = {group.title: str(group) for group in shop_list(studio, reckon_shopping(studio, plans, Period(TODAY), today=TODAY)).groups}
    assert "Moondust oil" in groups["Of the moon"]


def test_a_document_is_made_for_whom_its_row_says() -> None:
    studio = studio_with()
    (kind,) = [one for one in DOCUMENTS if one.name == "moon card"]
    made = kind.make(Edition(studio, (), (), Templates((LAYOUTS,)), TODAY), studio)
    assert made and made.path == "moon-card.pdf" and "Classes: 2" in made.html
    assert any(row.startswith("| moon card | studio | MoonCardView |") for row in rows())


def test_a_page_stands_in_the_reference() -> None:
    assert any(page.key == "moon" and "invented" in page.text for page in pages())
