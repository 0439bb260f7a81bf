"""Each starter is sound: every kind of product that ships has one, and in every region its recipe and its class are met in silence."""

import re
from datetime import date
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest

from builder import pipeline
from builder.compose.for_staff.mending_report import mending_lines
from builder.library import CONTENT
from builder.pipeline import Outcome
from builder.press.new_files import write_new_files
from builder.read.text.file_names import plain_name
from builder.start.files import NewStudio, recipe_file, studio_file
from builder.start.starters import OWN_KIND, card_kinds, card_start, has_starter, region_start, usual_scales
from builder.tasks.drafts import library_of, studio_of
from builder.tasks.start import class_of, workshop
from tests.making import sure

LIBRARY = library_of(None)
KINDS, REGIONS = tuple(LIBRARY.products), tuple(LIBRARY.regions)
# By default one region of one language and one of two.
TRIED = [pytest.param(key, marks=() if key == "US" else pytest.mark.long) for key in REGIONS]
# What a starter cannot know: the list that the supplier of a base declares, and what a strip shows in a soap that has not been made.
ACCEPTED = {"melt-and-pour soap": {"label-name-missing"}, "liquid soap": {"ph-not-measured"}}


def files_of(region: str, language: str = "") -> dict[str, str]:
    """Lay out one studio with a recipe and a class of every kind, under names whose batch codes differ."""
    usual = region_start(region)
    units = "ounces" if usual.in_ounces else "grams"
    files = dict(studio_file(NewStudio("The Drying Loft", usual.address, "hello@loft.example", region, usual_scales(units))))
    files["studio.yaml"] += language
    shop = workshop(studio_of(files))
    recipes = {}
    for number, kind in enumerate(KINDS):
        recipes[kind] = recipe_file(f"Loft {kind}", kind, shop, f"{chr(ord('P') + number // 8)}{'ABCDEFGH'[number % 8]}")
        files |= recipes[kind]
    studio = studio_of(files)
    for kind in KINDS:
        files |= class_of(studio, f"A first {kind}", next(iter(recipes[kind])), shop)
    return files


@cache
def checked(region: str, language: str = "") -> Outcome:
    with TemporaryDirectory() as folder:
        write_new_files(Path(folder), files_of(region, language))
        return pipeline.check(Path(folder), on=date(2027, 1, 1))


def test_every_kind_of_product_has_a_starter() -> None:
    assert [kind for kind in KINDS if not has_starter(kind)] == []
    folders = {path.name for path in (CONTENT / "starters").iterdir() if path.is_dir()}
    assert len(folders - {plain_name(OWN_KIND)}) == len(KINDS) >= 17


@pytest.mark.parametrize("region", TRIED)
def test_in_each_region_every_kind_is_met_in_silence(region: str) -> None:
    outcome = checked(region)
    assert [(one.place.file, one.name, one.wrong) for one in outcome.findings if one.accepted is None] == []
    assert len(sure(outcome.studio).recipes) == len(sure(outcome.studio).classes) == len(KINDS)


@pytest.mark.parametrize("region", TRIED)
def test_only_what_nobody_can_know_is_accepted(region: str) -> None:
    outcome = checked(region)
    accepted = {
        (sure(outcome.studio).recipes[one.place.file[8:-5]].product, one.name) for one in outcome.findings if one.accepted is not None
    }
    assert accepted == {(kind, name) for kind, names in ACCEPTED.items() for name in names}


@pytest.mark.parametrize("region", TRIED)
def test_every_class_can_be_taught_and_every_mark_is_filled(region: str) -> None:
    assert all("[[" not in text and "]]" not in re.sub(r"\[[^\[\]]*\]", "", text) for text in files_of(region).values())
    assert len(checked(region).plans) == len(KINDS)


def test_a_studio_in_ounces_gets_ounces_and_fahrenheit() -> None:
    text = "\n".join(files_of("US").values())
    assert " oz" in text and "degF" in text
    assert re.findall(r"weight: [\d.]+ g\b", text.replace("4.25 g", "").replace("113 g", "")) == []
    assert "degC" not in text and "°C" not in text


def test_a_studio_in_grams_gets_no_ounces() -> None:
    shared = {"emergency", "scales at home"}
    text = "\n".join(text for name, text in files_of("EU").items() if name != "studio.yaml")
    assert shared and re.findall(r"[\d.]+ (?:fl )?oz\b|degF|°F", text) == []


BRITISH = re.compile(r"\b(?:mould|colour|flavour|aluminium|grey|odour)", re.IGNORECASE)


def test_each_region_gets_its_own_spelling() -> None:
    written = {region: "\n".join(text for name, text in files_of(region).items() if name != "studio.yaml") for region in REGIONS}
    assert not BRITISH.search(written["US"]) and re.search(r"\bmold\b", written["US"])
    assert all(BRITISH.search(written[region]) for region in REGIONS if region != "US")


def test_the_labels_of_a_canadian_studio_have_their_french() -> None:
    assert all("translations:" in text for name, text in files_of("Canada").items() if name.startswith("recipes/"))


def test_each_recipe_says_where_it_is_from_and_no_lye_is_typed() -> None:
    for name, text in files_of("UK").items():
        if name.startswith("recipes/"):
            assert text.startswith("# Source: common practice, no source: "), name
            assert not re.search(r"^\s+weigh:", text, re.M), name


def test_a_card_of_each_kind_says_no_more_than_the_cards_that_ship() -> None:
    """The defaults are those of the cards that ship: as one of its kind at least, with every hazard that all of them share."""
    for kind in card_kinds():
        ours = [card for card in LIBRARY.ingredients.values() if card.kind == kind]
        assert ours, kind
        assert any(card.counts_as == card_start(kind).counts_as for card in ours), kind
        assert any(card.mixes_with == card_start(kind).mixes_with for card in ours), kind
        shared = set.intersection(*(set(card.hazards) for card in ours))
        assert shared <= set(card_start(kind).hazards), kind


@pytest.mark.long
def test_who_writes_in_french_begins_in_french_and_has_the_english_of_labels() -> None:
    outcome = checked("Canada", "language: French\n")
    assert {one.name for one in outcome.findings if one.accepted is None} == {"prose-not-judged"}
    for recipe in sure(outcome.studio).recipes.values():
        french, english = recipe.told_in("French"), recipe.told_in("English")
        assert recipe.language == "French" and recipe.directions == french.directions != english.directions
        assert len(french.label_cautions) == len(english.label_cautions) > 0


def test_who_follows_a_starter_at_home_is_told_what_to_do_when_it_goes_wrong() -> None:
    studio = sure(checked("US").studio)
    asked = [line for one in studio.classes.values() for key in one.recipe_keys for line in mending_lines(studio, one, studio.recipes[key])]
    assert asked == []
    made_with_lye = {recipe.key for recipe in studio.recipes.values() if recipe.lye}
    assert len(made_with_lye) >= 3
