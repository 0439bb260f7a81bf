"""Words that people type: both spellings, letters for degrees, things by their whole name, and other words for a kind of product."""

from collections.abc import Set as AbstractSet
from fractions import Fraction

import pytest

from builder.model.finding import Finding
from builder.read.shapes.labels import StudioLabelsShape
from builder.read.text.file_names import is_picture_name
from builder.read.text.text_error import AmountError
from builder.read.values.amounts import parse_count, parse_heat
from builder.read.yaml.fit import fit
from builder.read.yaml.placed_yaml import read_yaml
from builder.tasks.drafts import library_of, studio_of
from builder.words.fold import fold
from builder.words.nearest import nearest
from builder.words.spelling import american, british
from tests.making import Number, sure
from tests.test_readme import FILES

LIBRARY = library_of(None)
CARDS = [card.name for card in LIBRARY.ingredients.values()]
CONTAINERS = [one.name for one in LIBRARY.containers.values()]
RECIPE = "recipes/orchard-bar.yaml"


@pytest.mark.parametrize(
    ("typed", "same"),
    [("Mold", "mould"), ("no color", "no colour"), ("COLORS", "colours"), ("flavoring", "flavouring"), ("gray clay", "grey clay"),
     ("aluminum", "aluminium"), ("colorless", "colourless"), ("poison center", "poison centre")],
)  # fmt: skip
def test_both_spellings_are_one_name(typed: str, same: str) -> None:
    assert fold(typed) == fold(same)


@pytest.mark.parametrize("word", ["Coloradoite", "moldavite", "grayling", "doctor", "flavoprotein"])
def test_words_that_only_begin_alike_stay_what_they_are(word: str) -> None:
    assert fold(word) == word.casefold()


@pytest.mark.parametrize("text", ["Pour it into the mould.", "Colour and flavour", "GREY", "a colouring book", "Nothing of it here"])
def test_a_text_goes_there_and_back(text: str) -> None:
    assert british(american(text)) == text


@pytest.mark.parametrize(
    ("text", "celsius"), [("100 F", Fraction(340, 9)), ("100F", Fraction(340, 9)), ("38 c", 38), ("104 degrees F", 40)]
)
def test_a_letter_is_a_degree(text: str, celsius: Number) -> None:
    assert parse_heat(text).celsius == celsius


@pytest.mark.parametrize(("text", "number"), [("6 bath bombs", 6), ("3 lip balms", 3), ("12 bars", 12), ("4 boxes", 4)])
def test_things_are_counted_by_their_whole_name(text: str, number: int) -> None:
    assert parse_count(text).number == number


@pytest.mark.parametrize("text", ["2 fl oz jars", "250 g jars", "500 g soap", "3 cups"])
def test_an_amount_is_not_taken_for_a_number_of_things(text: str) -> None:
    with pytest.raises(AmountError):
        parse_count(text)


@pytest.mark.parametrize("key", ["to colour", "to color"])
def test_keys_may_be_typed_in_both_spellings(key: str) -> None:
    findings: list[Finding] = []
    shape = fit(StudioLabelsShape, sure(read_yaml(f"{key}: yes\n", "studio.yaml", findings)), findings)
    assert sure(shape).to_colour is True and findings == []


def test_the_two_spellings_of_one_key_are_the_same_key() -> None:
    findings: list[Finding] = []
    read_yaml("to color: yes\nto colour: no\n", "studio.yaml", findings)
    assert [one.name for one in findings] == ["key-repeated"]


@pytest.mark.parametrize(
    ("typed", "read"), [("salve", "balm"), ("Sugar scrub", "scrub"), ("melt and pour", "melt-and-pour soap"), ("shower gel", "body wash")]
)
def test_another_word_for_a_kind_is_read_as_it(typed: str, read: str) -> None:
    text = FILES[RECIPE].partition("lye:")[0].replace("cold-process soap", typed) + "fills: {container: bar mold cavity, weight: 100 g}\n"
    studio = studio_of(FILES | {RECIPE: text})
    assert studio.recipes["orchard-bar"].product == read
    assert sure(studio.container(studio.recipes["orchard-bar"].fill.container)).name == "bar mould cavity"


def test_every_word_means_something_that_there_is() -> None:
    """A word is not also the name of something, and all that it means exists."""
    synonyms = LIBRARY.synonyms
    assert set(synonyms.kinds.values()) <= set(LIBRARY.products)
    assert not set(synonyms.kinds) & {fold(name) for name in LIBRARY.products}
    assert {name for meant in synonyms.ingredients.values() for name in meant} <= set(CARDS)
    assert not set(synonyms.ingredients) & set(LIBRARY.ingredients)
    assert {name for meant in synonyms.containers.values() for name in meant} <= set(CONTAINERS)
    assert not set(synonyms.containers) & set(LIBRARY.containers)


def test_another_word_brings_no_limit_to_nothing() -> None:
    """A kind with parts of the body of its own is never read as one without them: narrower limits hold for a face, a hand, an eye."""
    parts = ("face", "hand", "eye", "lip")
    assert [word for word, kind in LIBRARY.synonyms.kinds.items() if any(part in word and part not in kind for part in parts)] == []


@pytest.mark.parametrize(
    ("typed", "offered"),
    [("lye", {"Sodium hydroxide", "Potassium hydroxide"}), ("shea", {"Shea butter"}), ("tea tree", {"Tea tree essential oil"}),
     ("clay", {"Kaolin clay"}), ("charcoal", {"Activated charcoal"}), ("olve oil", {"Olive oil"})],
)  # fmt: skip
def test_an_ingredient_is_found_by_its_meaning(typed: str, offered: AbstractSet[str]) -> None:
    assert offered <= set(nearest(typed, CARDS, meanings=LIBRARY.synonyms.ingredients))


def test_a_tin_brings_the_tins() -> None:
    assert nearest("2 oz tin", CONTAINERS) == ("2 fl oz tin", "1/2 fl oz tin", "4 fl oz tin")
    assert all(name.endswith("tin") for name in nearest("tin", CONTAINERS))


@pytest.mark.parametrize("name", ["isopropyl alcohol", "rubbing alcohol", "baking soda", "distilled water", "epsom salts", "white sugar"])
def test_what_every_studio_has_exists(name: str) -> None:
    assert fold(name) in LIBRARY.ingredients


@pytest.mark.parametrize(
    ("name", "fine"), [("IMG_2041", True), ("DSC-0042.edited", True), ("my picture", False), ("über", False), ("..", False)]
)
def test_a_picture_is_called_as_cameras_call_it(name: str, fine: bool) -> None:
    assert is_picture_name(name) is fine
