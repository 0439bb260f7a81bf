"""What a rule finds in a recipe it also finds where a student may choose it, and where another region has kept the law."""

from datetime import date
from pathlib import Path

import pytest

from builder import pipeline
from builder.model.subject import Subject, UnusedCard, WholeRecipe
from tests.test_findings import CASES, check, lay_out


def studio_of(case: str, folder: Path, file: str, *changes: tuple[str, str]) -> Path:
    """Lay out the studio of a finding with one of its files changed."""
    studio = folder / "studio"
    lay_out(next(one for one in CASES if one.name == case), studio)
    text = (studio / file).read_text(encoding="utf-8")
    for before, after in changes:
        assert before in text
        text = text.replace(before, after)
    (studio / file).write_text(text, encoding="utf-8")
    return studio


CHOSEN = "choices:\n  scent: {from: [copaiba essential oil, no scent], at most: 0.6 %}\nfills:"


def test_a_scent_of_which_nothing_is_known_is_found_where_students_choose_it(tmp_path: Path) -> None:
    changes = (("      copaiba essential oil: 0.6 %\n", ""), ("fills:", CHOSEN))
    _, _, err = check(studio_of("scent-without-limit", tmp_path, "recipes/plain-lotion.yaml", *changes))
    at = err.index("scent-without-limit (caution)")
    assert "from: [copaiba essential oil" in err[at : at + 120] and "Copaiba essential oil is in no table here" in err[at:]


# The United Kingdom kept the Cosmetics Regulation as it stood (Schedule 34 of SI 2019/696, from memory). Annex IV of it lists CI 15800.
@pytest.mark.parametrize(("region", "kept"), [("EU", False), ("UK", True)])
def test_a_list_that_a_region_has_kept_is_its_law(tmp_path: Path, region: str, *, kept: bool) -> None:
    _, _, err = check(studio_of("colour-not-for-lips--eu", tmp_path, "studio.yaml", ("region: EU", f"region: {region}")))
    assert "colour-not-for-lips (stop)" in err
    assert ("EU law, which the UK has kept as its own" in " ".join(err.split())) is kept


# The batch for home takes up 752 mL and the one of the lotion fills 2 bottles, as the finding of tools and figures says.
@pytest.mark.parametrize(
    ("lesson", "before", "step", "found"),
    [
        ("one-bar", "3. Stir in everything else.", "3. Pour it into a mould that holds 500 mL.", '"500 mL" is too small'),
        ("one-bar", "3. Stir in everything else.", "3. Pour it into a mould that holds 1 L.", ""),
        ("one-lotion", "Fill 12 bottles in all.", "Fill twelve bottles in all.", '"twelve bottles" goes to the sheets for home'),
        ("one-lotion", "Fill 12 bottles in all.", "Fill two bottles in all.", ""),
        ("one-lotion", "Fill 12 bottles in all.", "Fill the second bottle.", ""),
    ],
)
def test_volumes_and_counts_are_compared_in_steps_and_in_words(tmp_path: Path, lesson: str, before: str, step: str, found: str) -> None:
    file = f"classes/{lesson}/lesson.md"
    _, _, err = check(studio_of("typed-fact-differs", tmp_path, file, (before, step)))
    assert found in err and (f"{file}:" in err) is bool(found)


def test_a_name_in_braces_that_nobody_knows_is_found_in_tools(tmp_path: Path) -> None:
    changes = (("about 0.5 L", "{the mould}"),)
    _, _, err = check(studio_of("typed-fact-differs", tmp_path, "recipes/plain-bar.yaml", *changes))
    assert "recipes/plain-bar.yaml:14:1: mention-unknown" in err


# Soap is an anionic surfactant, and a quaternary ammonium salt a cationic one (general chemistry).
def test_a_cationic_ingredient_is_opposed_to_raw_soap_too(tmp_path: Path) -> None:
    at_trace = "  - name: at trace\n    ingredients: {behentrimonium methosulfate blend: 2 %}\nlye:\n"
    _, _, err = check(studio_of("charges-opposed", tmp_path, "recipes/plain-bar.yaml", ("lye:\n", at_trace)))
    bar = err[err.index("recipes/plain-bar.yaml") :]
    assert "charges-opposed (caution)" in bar and "is cationic and the soap is anionic" in bar


@pytest.mark.parametrize(
    ("product", "about"), [("dish bar", WholeRecipe("plain-bar")), ("cold-process soap", UnusedCard("shelf/products.yaml"))]
)
def test_a_kind_of_product_holds_back_the_recipes_of_it_and_no_other(tmp_path: Path, product: str, about: Subject) -> None:
    changes = (("product: cold-process soap", f"product: {product}"),)
    outcome = pipeline.check(studio_of("kind-unlike", tmp_path, "recipes/plain-bar.yaml", *changes), on=date(2027, 1, 1))
    assert [one.about for one in outcome.findings if one.name == "kind-unlike"] == [frozenset({about})]


# What is used at once is not kept over night; water without a preservative keeps 7 days in the cold (common practice, no source).
@pytest.mark.parametrize(
    ("case", "changes", "found"),
    [
        ("keeps-unsupported--single-use", (("keeps: 3 months", "keeps: 1 day"),), False),
        ("keeps-unsupported--single-use", (("keeps: 3 months", "keeps: 2 days"),), True),
        ("no-preservative--accepted", (("accepts:", "keeps: 7 days\naccepts:"),), False),
        ("no-preservative--accepted", (("accepts:", "keeps: 8 days\naccepts:"),), True),
    ],
)
def test_what_is_said_to_keep_a_day_too_long_is_found(
    tmp_path: Path, case: str, changes: tuple[tuple[str, str], ...], *, found: bool
) -> None:
    _, _, err = check(studio_of(case, tmp_path, "recipes/plain-lotion.yaml", *changes))
    assert ("keeps-unsupported (caution)" in err) is found


# Orange oil catches fire from 43 degC on, as its card has it (suppliers' safety data sheets).
@pytest.mark.parametrize(("heat", "found"), [("42", False), ("43", True)])
def test_a_scent_is_told_of_from_its_flash_point_on(tmp_path: Path, heat: str, *, found: bool) -> None:
    changes = (("heat to: 60 degC", f"heat to: {heat} degC"),)
    _, _, err = check(studio_of("heated-to-flash-point--choice", tmp_path, "recipes/plain-lotion.yaml", *changes))
    assert ("heated-to-flash-point (caution)" in err) is found
