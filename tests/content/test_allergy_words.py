"""The rows of `content/allergy_words.yaml`: each word says one thing, and what it means is known to the cards."""

from collections import Counter

from builder.model.recipe.figure import Known
from builder.model.roster.allergen_family import AllergenFamily
from builder.model.roster.allergy import Says
from builder.reckon.roster.word_forms import words_of
from tests.studios import sound_studio

STUDIO, _ = sound_studio()
ROWS = STUDIO.allergy_words


def test_no_word_says_two_things() -> None:
    counts = Counter(words for row in ROWS if row.says is Says.AN_ALLERGEN for words in {words_of(text) for text in row.words})
    assert [words for words, count in counts.items() if count > 1] == []


def test_words_that_say_nothing_are_single_and_mean_nothing() -> None:
    for row in ROWS:
        if row.says in (Says.NOTHING, Says.TOO_MUCH):
            assert [text for text in row.words if len(words_of(text)) != 1] == []
        if row.says is not Says.AN_ALLERGEN:
            assert not (row.families or row.kinds or row.mind)


def test_every_row_of_an_allergen_leads_somewhere() -> None:
    kinds = {card.kind for card in STUDIO.ingredients.values()}
    for row in ROWS:
        if row.says is Says.AN_ALLERGEN:
            assert row.families or row.kinds or row.mind
        assert set(row.kinds) <= kinds


def test_every_family_of_the_cards_can_be_written() -> None:
    assert {family for row in ROWS for family in row.families} == set(AllergenFamily)


def test_what_has_no_source_says_so() -> None:
    assert {(row.source.kind, row.known) for row in ROWS} == {("practice", Known.PRACTICE)}
