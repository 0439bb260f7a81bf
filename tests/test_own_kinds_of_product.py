"""A studio's own kinds of product (a body mist, an eye shadow) go through weighing, limits and labels like those of the stock."""

from dataclasses import replace
from datetime import date

import pytest

from builder.compose.label.label_texts import label_text
from builder.model.label.language import Language
from builder.pipeline import check
from tests.findings_studio import write_class

KINDS = """
body mist: {identity: Body mist, contact: leave-on, made with lye: no, declared by: volume, like: [lotion],
            usual pH: {low: 4.5, high: 6, measured: as it is, source: common-practice, at: ours as we made it, known: measured},
            translations: {French: Brume pour le corps}}
eye shadow: {identity: Eye shadow, contact: leave-on, made with lye: no, declared by: weight, like: [balm]}
"""
MIST = """name: Orchard mist
product: body mist
amounts: percent of total
phases:
  - name: water
    ingredients: {{water: rest, glycerin: 2 %, polysorbate 20: {solubiliser} %, phenoxyethanol and ethylhexylglycerin blend: 0.9 %}}
fills: {{container: 4 fl oz bottle, weight: 113 g}}
density: {{value: 1.0 g/mL, measured: "a tared 100 mL flask filled to the mark, 2026"}}
keeps: 3 months
"""
SHADOW = """name: Dusk
product: eye shadow
amounts: percent of total
phases:
  - name: powders
    ingredients: {{{colour}: 20 %, kaolin clay: 60 %, jojoba oil: rest, vitamin E: 0.5 %}}
fills: {{container: 1 fl oz jar, weight: 12 g, measured: "one jar pressed and weighed, 2026"}}
keeps: 12 months
"""
LESSON = """
## Mix and fill (students, 60 min)

1. Weigh {batch}, and fill {portion}.
"""


def found(tmp_path, recipe, text, kinds=KINDS):
    folder = tmp_path / "studio"
    write_class(folder, "one", recipe, "one for each student", LESSON)
    (folder / "shelf").mkdir(exist_ok=True)
    (folder / "shelf" / "products.yaml").write_text(kinds, encoding="utf-8")
    (folder / "recipes" / f"{recipe}.yaml").write_text(text, encoding="utf-8")
    outcome = check(folder, on=date(2027, 1, 1))
    return outcome.studio, outcome.sheets, list(outcome.findings)


def test_a_mist_is_sound_weighed_and_labelled(tmp_path):
    studio, (sheet, *_), findings = found(tmp_path, "mist", MIST.format(solubiliser=4))
    assert findings == []
    (made,) = sheet.made
    assert made.batch.product.name == "body mist" and made.batch.grams.total.grams == pytest.approx(226, abs=0.1)
    text = label_text(studio, sheet, made, made.batch.own, made.batch.own.variants[0], "1")
    assert text.identity == "Body mist"
    assert "fl\u00a0oz" in "".join(run.text for run in text.net)


# The table holds polysorbate 20 in lotions and creams to 15 %, common practice; it holds for what is like a lotion.
def test_what_is_meant_for_a_lotion_is_meant_for_what_is_like_one(tmp_path):
    findings = found(tmp_path, "mist", MIST.format(solubiliser=18))[2]
    assert ["Polysorbate 20" in one.wrong for one in findings if one.name == "over-usual-limit"] == [True]


def test_and_not_for_what_is_like_another(tmp_path):
    kinds = KINDS.replace("like: [lotion]", "like: [balm]")
    assert "over-usual-limit" not in [one.name for one in found(tmp_path, "mist", MIST.format(solubiliser=18), kinds)[2]]


def test_colours_are_judged_by_its_contact(tmp_path):
    findings = found(tmp_path, "shadow", SHADOW.format(colour="turmeric powder"))[2]
    assert "colour-not-listed" in [one.name for one in findings]


def test_a_kind_of_the_same_name_takes_the_place_of_the_stocks(tmp_path):
    kinds = "Lotion: {identity: Hand milk, contact: leave-on, made with lye: no, declared by: volume, like: [lotion]}\n"
    studio, _, findings = found(tmp_path, "mist", MIST.format(solubiliser=4).replace("body mist", "lotion"), kinds)
    assert studio.recipes["mist"].product == "Lotion" and "lotion" not in studio.products
    assert studio.products["Lotion"].identity == "Hand milk" and studio.products["Lotion"].like == ("lotion",)
    assert [one.name for one in findings] == []


# A kind that cannot be read is one finding, and its recipes are not faulted for it.
@pytest.mark.parametrize(
    "broken", [KINDS.replace("like: [lotion],", ""), KINDS.replace("contact: leave-on", "contact: leaf-on"), "body mist: 5"]
)
def test_a_kind_that_cannot_be_read_is_one_mistake(tmp_path, broken):
    findings = found(tmp_path, "mist", MIST.format(solubiliser=4), broken)[2]
    assert {one.place.file for one in findings} == {"shelf/products.yaml"}


def test_its_identity_is_told_in_other_languages(tmp_path):
    studio = found(tmp_path, "mist", MIST.format(solubiliser=4))[0]
    french = Language("French", texts={"lotion": "Lotion"})
    assert studio.products["body mist"].identity_in(french) == "Brume pour le corps"
    assert studio.products["eye shadow"].identity_in(french) == ""
    assert replace(studio.products["eye shadow"], identity="Lotion").identity_in(french) == "Lotion"
