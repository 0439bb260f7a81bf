"""Every text of the library that can reach a label has its words in each language that a region asks for."""

from collections.abc import Iterator

import pytest

from builder.fonts.typefaces import letters_of_fonts
from builder.library import CONTENT
from builder.model.label.language import LABEL
from builder.model.label.region import Region
from builder.words.fold import fold
from tests.messages import messages
from tests.studios import sound_studio

STUDIO, FINDINGS = sound_studio()
ASKED_FOR = [(region, name) for region in STUDIO.regions.values() for name in region.languages if name != "English"]
# A choice of which nothing is taken is named after the choice, which is the studio's word; these are the usual ones.
LEFT_OUT = ("no scent", "no colour", "no color", "no flavour", "no flavor")


def texts_of(region: str) -> Iterator[str]:
    """Yield the texts of the library that a label of a region can carry."""
    yield from (product.identity for product in STUDIO.products.values())
    yield from (rule.wording for rule in STUDIO.label_warnings if not rule.regions or region in rule.regions)
    yield from (card.name for card in STUDIO.ingredients.values() if card.kind != "alkali")
    yield from LEFT_OUT


def test_languages_are_read() -> None:
    assert FINDINGS == []
    assert {name for _, name in ASKED_FOR} == {"French"} <= set(STUDIO.languages)


# Cosmetic Regulations, C.R.C. c. 869, s. 18 (read): English and French.
@pytest.mark.parametrize(
    ("region", "languages"), [("US", ("English",)), ("EU", ("English",)), ("UK", ("English",)), ("Canada", ("English", "French"))]
)
def test_canada_asks_for_english_and_french_and_the_others_for_english(region: str, languages: tuple[str, ...]) -> None:
    assert STUDIO.regions[region].languages == languages


@pytest.mark.parametrize(("region", "name"), ASKED_FOR, ids=lambda one: getattr(one, "name", one))
def test_every_text_that_can_reach_a_label_is_translated(region: Region, name: str) -> None:
    assert [text for text in texts_of(region.name) if not STUDIO.languages[name].text(text)] == []


def test_every_translation_is_of_a_text_of_the_stock_or_of_a_message() -> None:
    known = {fold(text) for region in STUDIO.regions for text in texts_of(region)}
    known |= {fold(message.id if isinstance(message.id, str) else message.id[0]) for message in messages()}
    assert [text for language in STUDIO.languages.values() for _, text in language.holds if fold(text) not in known] == []


def test_every_word_of_labels_is_translated() -> None:
    words = {(message.context, message.id) for message in messages() if message.context == LABEL}
    assert len(words) > 10
    for _, name in ASKED_FOR:
        assert words - STUDIO.languages[name].holds == set()


def test_the_fonts_have_every_letter() -> None:
    letters = letters_of_fonts()
    files = [(CONTENT / "languages" / f"{name.casefold()}.po").read_text(encoding="utf-8") for _, name in ASKED_FOR]
    said = "".join(files).replace("\n", "") + "\u00a0«»"
    assert {letter for letter in said if ord(letter) not in letters} == set()


def test_a_file_of_our_own_translation_says_so() -> None:
    text = (CONTENT / "languages" / "french.po").read_text(encoding="utf-8")
    assert "project's own translation" in text and "French speaker" in text
