"""Long texts in all regions, and words that are wider than a label: never over an edge, never below the lawful height, broken only at need.

Heights of text: 21 CFR 701.3(b) 1/16 in (read); Canada 1.6 mm (read); in the European Union and the United Kingdom, where no height is
asked for, 1.2 mm as for food (Regulation 1169/2011 Art. 13, from memory). Breaks of words: Merriam-Webster's division of English words,
and for French the rules of its syllables (a consonant between two vowels begins one, l and r stay with the consonant before them, no break
beside an apostrophe: Lexique des règles typographiques en usage à l'Imprimerie nationale, "Coupures"), all from memory.
"""

from dataclasses import replace
from pathlib import Path

import pytest

from builder.compose.label.label_texts import LabelText, Run
from builder.compose.label_front.designs import DESIGNS
from builder.compose.label_front.ground import LEAST_NAME
from builder.compose.label_layout.composed import lay_out_composed, whole_of
from builder.compose.label_layout.label_heights import rules_of
from builder.compose.label_layout.label_lines import Setter, hyphenating_setter_of, setter_of
from builder.compose.label_layout.label_plans import plan_labels
from builder.compose.label_layout.label_sheets import SheetUse
from builder.words.hyphens import breaks_of, broken_at, has_patterns
from tests.compose.conftest import FILES, in_region, read_edition, write_studio
from tests.compose.test_label_fronts import FACES, LEAST, LIST_OF_FORTY, inside, label, sheet
from tests.making import sure

NAME_OF_FORTY = "Lavender and oats evening garden bath tea"
DIRECTIONS = ("Stir two spoons into a warm bath and let them dissolve before anybody steps in. " * 6)[:400].rstrip()
HEIGHTS = {"US": 25.4 / 16, "Canada": 1.6, "EU": 1.2, "UK": 1.2}
PLAIN, BREAKING = setter_of(FACES), hyphenating_setter_of(FACES)


@pytest.mark.parametrize("design", DESIGNS)
@pytest.mark.parametrize("region", HEIGHTS)
def test_long_texts_are_composed_in_every_region(tmp_path: Path, region: str, design: str) -> None:
    edition = read_edition(write_studio(tmp_path, **in_region(region)))
    plan = next(iter(plan_labels(edition.studio, edition.plans[-1])))
    text = plan.texts[0]
    listed = (*text.back[0], Run(", " + LIST_OF_FORTY))
    text = replace(text, name=NAME_OF_FORTY, back=(listed, (Run("Use: ", bold=True), Run(DIRECTIONS)), *text.back[1:]))
    rules = rules_of(edition.studio, plan.made.batch, plan.filling)
    stock = SheetUse(sheet(120, 130), 2)
    laid = sure(lay_out_composed([(text, DESIGNS[design])], stock, rules, PLAIN))
    front, back = (one.blocks for one in laid.labels[0])
    for block in (*front, *back):
        assert inside(stock.sheet, block)
        for run in (run for line in block.lines for run in line if run.text.strip()):
            face = FACES[block.face or ("bold" if run.bold else "regular")]
            letters = face.small_o if any(map(str.islower, run.text)) else face.capital
            assert letters * block.points * 25.4 / 72 >= HEIGHTS[region] - 1e-3, run.text
    said = "".join(run.text for block in back for line in block.lines for run in line).replace("\u00a0", "").replace(" ", "")
    assert "".join(LIST_OF_FORTY.split()).casefold() in said.casefold() and "".join(DIRECTIONS.split()) in said
    if region == "Canada":
        assert text.other_names and "Sels" in " ".join(text.other_names)


@pytest.mark.parametrize(
    ("word", "locale", "first"),
    [
        ("Ethylhexylglycerin", "en_US", "Ethyl"),
        ("marshmallow", "en_US", "marsh"),
        ("Melt-and-pour", "en_US", "Melt-"),
        ("gardenia", "en_US", "gar"),
        ("hydratante", "fr_CA", "hydra"),
        ("désodorisante", "fr_CA", "déso"),
        ("enveloppement", "fr_CA", "envelop"),
        ("ENVELOPPEMENT", "fr_CA", "ENVELOP"),
        ("gomme-guimauve", "cy_GB", "gomme-"),
    ],
)
def test_words_are_broken_where_a_reader_expects_it(word: str, locale: str, first: str) -> None:
    at, breaks = len(first), breaks_of(word, locale)
    assert at in breaks
    assert broken_at(word, at) == (first if first.endswith("-") else f"{first}-", word[at:])
    assert list(breaks) == sorted(breaks, reverse=True)


@pytest.mark.parametrize(("word", "in_english"), [("désodorisante", "désodor"), ("ingrédients", "ingrédi"), ("aujourd’hui", "aujourd")])
def test_french_is_not_broken_as_if_it_were_english(word: str, in_english: str) -> None:
    assert len(in_english) not in breaks_of(word, "fr_CA")


def test_short_words_are_never_broken() -> None:
    assert [word for word in ("soap", "tea", "Oil", "bar", "oats") if breaks_of(word, "en_US")] == []


def test_a_language_without_patterns_and_a_text_in_several_are_broken_nowhere() -> None:
    assert not has_patterns("cy_GB") and not has_patterns("") and has_patterns("fr_CA")
    assert breaks_of("llygad-y-dydd"[:6], "cy_GB") == breaks_of("marshmallow", "") == ()


def test_the_words_of_a_label_in_two_languages_know_their_own(tmp_path: Path) -> None:
    edition = read_edition(write_studio(tmp_path, **in_region("Canada")))
    text = next(iter(plan_labels(edition.studio, edition.plans[-1]))).texts[0]
    assert [locale for _, locale in text.named] == ["en_US", "fr_CA"]
    french = [run for paragraph in text.back for run in paragraph if "Ne pas manger" in run.text]
    english = [run for paragraph in text.back for run in paragraph if "Not to be eaten" in run.text]
    assert french and english and {run.locale for run in french} == {"fr_CA"} and {run.locale for run in english} == {"en_US"}
    both = [run for paragraph in text.back for run in paragraph if "Made at" in run.text]
    assert {run.locale for run in both} == {""}


LONG = "Marshmallowcalendulachamomile cream"


def composed(text: LabelText, width: float, setter: Setter) -> list[str] | None:
    laid = lay_out_composed([(text, DESIGNS["posy"])], SheetUse(sheet(width, 74), 2), LEAST["small"], setter)
    if laid is None:
        return None
    return ["".join(run.text for run in line) for cell in laid.labels[0] for block in cell.blocks for line in block.lines]


def test_a_name_is_broken_only_where_no_front_is_composed_without() -> None:
    text = label(name=LONG)
    assert composed(text, 40, PLAIN) is None
    lines = sure(composed(text, 40, BREAKING))
    (first,) = [line for line in lines if line.endswith("-")]
    assert "".join(lines).replace("-", "", 1).find("Marshmallowcalendulachamomile") >= 0 and len(first) > 4
    assert composed(text, 110, PLAIN) == composed(text, 110, BREAKING)
    assert not any(line.endswith("-") for line in sure(composed(text, 110, BREAKING)))
    laid = sure(lay_out_composed([(text, DESIGNS["posy"])], SheetUse(sheet(40, 74), 2), LEAST["small"], BREAKING))
    assert max(block.points for block in laid.labels[0][0].blocks) >= LEAST_NAME
    assert all(inside(laid.sheet, block) for cell in laid.labels[0] for block in cell.blocks) and whole_of(laid.sheet).width == 40


def test_a_word_of_a_paragraph_is_broken_only_where_it_is_wider_than_its_line() -> None:
    paragraph = (Run("Ingredients: ", bold=True, locale="en_US"), Run("Water, Ethylhexylglycerin, Salt", locale="en_US"))
    assert PLAIN.lines(paragraph, 8.3, 18) is None
    lines = ["".join(run.text for run in line) for line in sure(BREAKING.lines(paragraph, 8.3, 18))]
    assert all(BREAKING.width(line, True, 8.3) <= 18.5 for line in lines)
    assert "".join(lines).replace("-", "").replace(" ", "") == "Ingredients:Water,Ethylhexylglycerin,Salt"
    assert BREAKING.lines(paragraph, 8.3, 60) == PLAIN.lines(paragraph, 8.3, 60)


def test_a_product_with_one_long_word_has_a_composed_front(tmp_path: Path) -> None:
    salts = FILES["recipes/salts.yaml"].replace("name: Plain salts", "name: Marshmallowcalendula salts")
    own = FILES["studio.yaml"].rstrip("\n") + "\nlabels: {sheet: letter 3 x 4 square, panels: 2}\n"
    edition = read_edition(write_studio(tmp_path, recipes__salts_yaml=salts, studio_yaml=own))
    plan = next(one for one in plan_labels(edition.studio, edition.plans[-1]) if one.made.batch.recipe.key == "salts")
    laid = sure(plan.laid_out)
    assert laid.is_composed
    assert any(run.text.endswith("-") for block in laid.labels[0][0].blocks for line in block.lines for run in line)
