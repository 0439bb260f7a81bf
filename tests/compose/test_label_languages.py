"""Labels in two languages: what has to stand in both, how each language sets it, and that nothing is left out."""

import shutil
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest
import yaml

from builder import pipeline
from builder.check.label.label_untranslated import find_labels_untranslated
from builder.compose.edition import Edition
from builder.compose.label.label_counts import label_totals
from builder.compose.label.label_languages import day, glued, in_figures, joined, length_of_time
from builder.compose.label.label_questions import no_labels
from builder.compose.label.label_texts import LabelText
from builder.compose.label_layout.label_plans import plan_labels
from builder.fonts.typefaces import typefaces_of_labels
from builder.model.label.language import Language
from builder.pipeline import Outcome
from builder.rules.reach import what_is_held
from builder.rules.untranslated import is_translated, said_alone, untranslated
from tests.compose.conftest import in_region, read_edition, write_studio
from tests.making import only_findings, sure

HERE = Path(__file__).parent
SITE = HERE.parent.parent / "site_example"
IN_FRENCH = yaml.load((HERE / "site_in_french.yaml").read_text(encoding="utf-8"), yaml.CSafeLoader)


@pytest.fixture(scope="module")
def edition(tmp_path_factory: pytest.TempPathFactory) -> Edition:
    return read_edition(write_studio(tmp_path_factory.mktemp("canada"), **in_region("Canada")))


@pytest.fixture(scope="module")
def languages(edition: Edition) -> tuple[Language, ...]:
    return edition.studio.label_languages


def parts(text: LabelText) -> list[str]:
    """Return the parts of a label in words: the front's, then the paragraphs of the back."""
    lines = ["".join(run.text for run in line) for line in (*text.lines, text.net, *text.back)]
    return [part.replace("\u00a0", " ") for part in (text.identity, text.name, *text.other_names, text.variant, *lines)]


def labels_of(edition: Edition, recipe: str) -> list[list[str]]:
    (plan,) = (plan for plan in plan_labels(edition.studio, edition.plans[-1]) if plan.made.batch.recipe.key == recipe)
    return [parts(text) for text in plan.texts]


# C1 is the Cosmetic Regulations, C2 the Consumer Packaging and Labelling Regulations; what is said of their sections was read, the wordings
# are ours.
@pytest.mark.parametrize(
    ("what", "stands"),
    [
        ("identity in both, C1 ss. 18 and 20", "Bath salts / Sels de bain"),
        ("name in both, C1 s. 18", "Sels tout simples"),
        (
            "heading in both, INCI names alone, C1 ss. 18 and 21.2",
            "Ingredients / Ingrédients : Maris Sal, Sodium Bicarbonate, Glycerin, Lavandula Oil/ Extract, Parfum",
        ),
        ("directions in English, C1 ss. 18 and 24", "Use: Stir into the bath. Not to be eaten. Keep it dry."),
        (
            "directions in French, C1 ss. 18 and 24",
            "Mode d’emploi : Verser dans le bain. Ne pas manger. À garder au sec : l’humidité les durcit.",
        ),
        ("metric, symbols alike in both, C2 ss. 25 to 27", "113 g"),
        ("no date is asked for; in both", "Best before / Meilleur avant 2027-09-06 (keeps 6 months / se conserve 6 mois). "),
        ("what is chosen, in both", "Lavender / Lavande"),
        ("what is left out, in both", "No scent / Sans parfum"),
        ("batch, in both", "Batch / Lot : SALT-270306"),
        ("day made, in figures", "Made / Fabriqué le 2027-03-06"),
        (
            "name and place in one language, C2 ss. 12 and 13",
            "Made at / Fabriqué chez Test studio, 1 Test Row, Testham, teacher@test.example. Made by hand in a class. Not tested for sale. "
            "Fait à la main pendant un cours. Non testé pour la vente.",
        ),
    ],
    ids=lambda text: text if ", C" in text else None,
)
def test_what_stands_on_a_label_in_canada(edition: Edition, what: str, stands: str) -> None:
    said = {part for label in labels_of(edition, "salts") for part in label}
    assert any(part.startswith(stands) for part in said), (what, said)


def test_contents_that_are_weighed_later_have_room_in_both(edition: Edition) -> None:
    (front, *_) = labels_of(edition, "bar")
    assert "Net weight / Poids net " in front


def test_another_region_has_english_alone(tmp_path: Path) -> None:
    edition = read_edition(write_studio(tmp_path, **in_region("UK")))
    for plan in plan_labels(edition.studio, edition.plans[-1]):
        assert all(" / " not in part for text in plan.texts for part in parts(text))


# ISO 8601 writes a day as year, month, day. Spaces before a colon and inside guillemets: usage of French in Canada, from memory.
def test_each_language_sets_its_texts(languages: tuple[Language, ...]) -> None:
    english, french = languages
    assert day(date(2027, 9, 6), languages, "en_US") == "2027-09-06"
    assert day(date(2027, 9, 6), (english,), "en_US") == "September\u00a06,\u00a02027"
    assert glued("Usage : dire « non » à 5 %; 10 g", french) == "Usage\u00a0: dire «\u00a0non\u00a0» à 5\u00a0%; 10\u00a0g"
    assert glued("Use : 5 %", english) == "Use : 5 %"
    assert in_figures("1.25\u00a0kg", languages) == "1.25\u00a0kg\u00a0/ 1,25\u00a0kg"
    assert in_figures("57\u00a0mL", languages) == "57\u00a0mL"
    assert joined(["Lotion", "Lotion"]) == "Lotion"


@pytest.mark.parametrize(
    ("english", "own", "french"), [("3 months", "", "3 mois"), ("1 year", "", "1 an"), ("2 weeks shut", "2 semaines", "2 semaines")]
)
def test_lengths_of_time(languages: tuple[Language, ...], english: str, own: str, french: str) -> None:
    assert length_of_time(english, own, languages[1]).replace("\u00a0", " ") == french


def test_what_stands_in_french_alone_is_no_translation(edition: Edition) -> None:
    studio, french = edition.studio, edition.studio.languages["French"]
    salts = studio.recipes["salts"]
    assert said_alone(salts, french) == ()
    assert [key for key, _ in said_alone(replace(salts, storage="", label_cautions=()), french)] == ["storage", "label cautions"]
    assert not is_translated(replace(salts, storage=""), studio)


def test_a_recipe_without_its_french_has_no_labels(edition: Edition) -> None:
    studio = edition.studio
    bare = replace(studio.recipes["salts"], translations={})
    assert [key for key, _ in untranslated(bare, studio, studio.languages["French"])] == ["name", "directions", "storage", "label cautions"]
    sheet = edition.plans[-1]
    (salts,) = (one for one in sheet.made if one.batch.recipe.key == "salts")
    batches = tuple(replace(planned, batch=replace(planned.batch, recipe=bare)) for planned in salts.batches)
    assert list(plan_labels(studio, replace(sheet, made=(salts,)))) != []
    without = replace(salts, batches=batches)
    assert list(plan_labels(studio, replace(sheet, made=(without,)))) == []
    bare_studio = replace(studio, recipes={**studio.recipes, "salts": bare})
    findings = tuple(only_findings(find_labels_untranslated(bare_studio)))
    without_labels = replace(edition, studio=bare_studio, findings=findings, held=what_is_held(findings, bare_studio))
    assert no_labels(edition, sheet, salts) == ()
    assert "No labels are printed" in no_labels(without_labels, sheet, without)[0]
    (one,) = label_totals(edition, replace(sheet, made=(salts,)))
    assert one.line.startswith("Labels, ") and one.line.endswith(": 10")
    (one,) = label_totals(without_labels, replace(sheet, made=(without,)))
    assert ": none yet. Have it translated by someone who speaks French" in one.line


@pytest.fixture(scope="module")
def site_in_canada(tmp_path_factory: pytest.TempPathFactory) -> Outcome:
    folder = tmp_path_factory.mktemp("site") / "studio"
    shutil.copytree(SITE, folder, ignore=shutil.ignore_patterns("output"))
    profile = folder / "studio.yaml"
    profile.write_text(profile.read_text(encoding="utf-8").replace("region: US", "region: Canada"), encoding="utf-8")
    for key, french in IN_FRENCH.items():
        with (folder / "recipes" / f"{key}.yaml").open("a", encoding="utf-8") as file:
            file.write(yaml.safe_dump({"translations": {"French": french}}, allow_unicode=True))
    return pipeline.check(folder, on=date(2027, 1, 2))


@pytest.mark.long
def test_the_example_studio_could_be_in_canada(site_in_canada: Outcome) -> None:
    found = {(finding.name, finding.place.file) for finding in site_in_canada.findings if finding.accepted is None}
    assert {name for name, _ in found} == {"allergens-not-stated", "label-name-small"}
    # What a label says in two languages stands on what the bag of the tea has room for in small type alone.
    assert [file for name, file in found if name == "label-name-small"] == ["recipes/hedgerow-bath-tea.yaml"]


@pytest.mark.long
def test_nothing_that_a_recipe_says_in_either_language_is_left_out(site_in_canada: Outcome) -> None:
    studio = replace(sure(site_in_canada.studio), typefaces=typefaces_of_labels())
    seen = set()
    for sheet in site_in_canada.plans:
        for plan in plan_labels(sure(studio), sheet):
            recipe = plan.made.batch.recipe
            seen.add(recipe.key)
            assert plan.laid_out is not None, recipe.key
            for text in plan.texts:
                whole = " ".join(parts(text))
                for language in sure(studio).label_languages:
                    for one in recipe.told_in(language.name).texts:
                        assert glued(one, language).replace("\u00a0", " ") in whole, (recipe.key, one)
    assert seen == set(IN_FRENCH) == set(sure(studio).recipes)
