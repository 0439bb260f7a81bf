"""A studio's own kinds of product (a body mist, an eye shadow) go through weighing, limits and labels like those of the library."""

from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from builder.compose.label.label_texts import label_text
from builder.model.finding import Finding
from builder.model.label.language import Language
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan
from builder.pipeline import check
from tests.findings_studio import write_class
from tests.making import sure

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


def found(tmp_path: Path, recipe: str, text: str, kinds: str = KINDS) -> tuple[Studio, tuple[ClassPlan, ...], list[Finding]]:
    folder = tmp_path / "studio"
    write_class(folder, "one", recipe, "one for each student", LESSON)
    (folder / "shelf").mkdir(exist_ok=True)
    (folder / "shelf" / "products.yaml").write_text(kinds, encoding="utf-8")
    (folder / "recipes" / f"{recipe}.yaml").write_text(text, encoding="utf-8")
    outcome = check(folder, on=date(2027, 1, 1))
    return sure(outcome.studio), outcome.plans, list(outcome.findings)


def test_a_mist_is_sound_weighed_and_labelled(tmp_path: Path) -> None:
    studio, (sheet, *_), findings = found(tmp_path, "mist", MIST.format(solubiliser=4))
    assert findings == []
    (made,) = sheet.made
    assert made.batch.product.name == "body mist" and made.batch.grams.total.grams == pytest.approx(226, abs=0.1)
    text = label_text(studio, sheet, made.batch, made.containers[0].jars[0])
    assert text.identity == "Body mist"
    assert "fl\u00a0oz" in "".join(run.text for run in text.net)


# The table holds polysorbate 20 in lotions and creams to 15 %, common practice; it holds for what is like a lotion.
def test_what_is_meant_for_a_lotion_is_meant_for_what_is_like_one(tmp_path: Path) -> None:
    findings = found(tmp_path, "mist", MIST.format(solubiliser=18))[2]
    assert ["Polysorbate 20" in one.wrong for one in findings if one.name == "over-usual-limit"] == [True]


def test_and_not_for_what_is_like_another(tmp_path: Path) -> None:
    kinds = KINDS.replace("like: [lotion]", "like: [balm]")
    assert "over-usual-limit" not in [one.name for one in found(tmp_path, "mist", MIST.format(solubiliser=18), kinds)[2]]


def test_colours_are_judged_by_its_contact(tmp_path: Path) -> None:
    findings = found(tmp_path, "shadow", SHADOW.format(colour="turmeric powder"))[2]
    assert "colour-not-listed" in [one.name for one in findings]


def test_a_kind_of_the_same_name_takes_the_place_of_the_stocks(tmp_path: Path) -> None:
    kinds = "Lotion: {identity: Hand milk, contact: leave-on, made with lye: no, declared by: volume, like: [lotion]}\n"
    studio, _, findings = found(tmp_path, "mist", MIST.format(solubiliser=4).replace("body mist", "lotion"), kinds)
    assert studio.recipes["mist"].product == "Lotion" and "lotion" not in studio.products
    assert studio.products["Lotion"].identity == "Hand milk" and studio.products["Lotion"].like == ("lotion",)
    assert [one.name for one in findings] == []


# A kind that cannot be read is one finding, and its recipes are not faulted for it.
@pytest.mark.parametrize(
    "broken", [KINDS.replace("like: [lotion],", ""), KINDS.replace("contact: leave-on", "contact: leaf-on"), "body mist: 5"]
)
def test_a_kind_that_cannot_be_read_is_one_mistake(tmp_path: Path, broken: str) -> None:
    findings = found(tmp_path, "mist", MIST.format(solubiliser=4), broken)[2]
    assert {one.place.file for one in findings} == {"shelf/products.yaml"}


def test_its_identity_is_told_in_other_languages(tmp_path: Path) -> None:
    studio = found(tmp_path, "mist", MIST.format(solubiliser=4))[0]
    french = Language("French", "fr_CA", texts={"lotion": "Lotion"})
    assert studio.products["body mist"].identity_in(french) == "Brume pour le corps"
    assert studio.products["eye shadow"].identity_in(french) == ""
    assert replace(studio.products["eye shadow"], identity="Lotion").identity_in(french) == "Lotion"


# Usual ranges: formulation teaching, from memory; `content/usual_ph.yaml` and `content/products.yaml` name it.
@pytest.mark.parametrize(
    ("name", "like", "usual"),
    [
        ("hair conditioner", "[shampoo]", (3.5, 5)),
        ("face mist", "[lotion]", (4, 6)),
        ("garden toner", "[lotion]", (4, 6)),
        ("hand milk", "[lotion]", (4.5, 6.5)),
        ("soft foam", "[shampoo, body wash]", (4.5, 7)),
        ("mistletoe rub", "[balm]", None),
    ],
)
def test_the_usual_ph_of_a_kind_is_that_of_its_name_or_of_what_it_is_like(
    tmp_path: Path, name: str, like: str, usual: tuple[float, float] | None
) -> None:
    kind = f"{name}: {{identity: Ours, contact: leave-on, made with lye: no, declared by: volume, like: {like}}}\n"
    studio, _, _ = found(tmp_path, "mist", MIST.format(solubiliser=4).replace("body mist", name), kind)
    ph = studio.products[name].usual_ph
    assert ((float(ph.low), float(ph.highest)) if ph else None) == usual


def test_what_a_studio_states_comes_first(tmp_path: Path) -> None:
    studio, _, _ = found(tmp_path, "mist", MIST.format(solubiliser=4))
    assert sure(studio.products["body mist"].usual_ph).low == 4.5
    assert sure(studio.products["body mist"].usual_ph).at == "ours as we made it"


def test_a_preservative_that_fails_at_the_usual_ph_of_what_a_kind_is_like_is_found(tmp_path: Path) -> None:
    kinds = "pour: {identity: Pour, contact: rinse-off, made with lye: yes, cooked: yes, declared by: volume, like: [liquid soap]}\n"
    kinds += "milk: {identity: Milk, contact: leave-on, made with lye: no, declared by: volume, like: [lotion]}\n"
    text = MIST.format(solubiliser=4).replace("body mist", "milk")
    benzoate = text.replace("phenoxyethanol and ethylhexylglycerin blend: 0.9 %", "sodium benzoate: 0.4 %, potassium sorbate: 0.2 %")
    named = [one.name for one in found(tmp_path / "one", "mist", benzoate, kinds)[2]]
    assert "ph-not-measured" in named
    assert "ph-not-measured" not in [one.name for one in found(tmp_path / "two", "mist", text, kinds)[2]]


CREAM = """name: Old cold cream
product: cream
amounts: percent of total
phases:
  - name: fats
    heat to: 70 degC
    ingredients: {beeswax: 12 %, mineral oil: 55 %, cetyl esters wax: 12 %}
  - name: water
    heat to: 70 degC
    ingredients: {water: rest, borax: 0.6 %}
  - name: cool-down
    ingredients: {PRESERVATIVE}
fills: {container: 2 fl oz jar, weight: 52 g}
density: {value: 0.93 g/mL, measured: "a filled jar weighed cold"}
keeps: 3 months
label cautions: [For adults.]
"""


def test_a_cream_that_a_soap_holds_is_too_alkaline_for_an_acid_preservative(tmp_path: Path) -> None:
    """Cream of beeswax and borax 7.5 to 9, benzoate and sorbate below 5.5 and 6 (formulation teaching, from memory)."""
    acid = CREAM.replace("PRESERVATIVE", "sodium benzoate: 0.4 %, potassium sorbate: 0.2 %")
    broad = CREAM.replace("PRESERVATIVE", "phenoxyethanol and ethylhexylglycerin blend: 0.9 %")
    findings = found(tmp_path / "acid", "cream", acid)[2]
    assert {one.name for one in findings if "pH" in one.wrong} == {"ph-outside-preservative"}
    assert all("cream that a soap holds usually has pH 7.5 to 9" in one.wrong for one in findings if "pH" in one.wrong)
    assert [one.name for one in found(tmp_path / "broad", "cream", broad)[2] if one.name.startswith("ph-out")] == []
