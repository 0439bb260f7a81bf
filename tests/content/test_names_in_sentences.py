"""How the names of cards stand inside a sentence: small, but for names of places and people, and abbreviations."""

import pickle

import pytest

from builder.library import CONTENT
from builder.read.library import read_shelf
from builder.words.within import spelled, within

CARDS, _ = read_shelf(None, CONTENT)
NAMES = {card.name: card.name for card in CARDS.values()}
# Places and peoples as an English dictionary writes them (from memory), and a substance that is named by letters.
CAPITAL = {
    "Ceylon citronella essential oil", "Dead Sea salt", "Epsom salt", "German chamomile essential oil", "Indian sandalwood essential oil",
    "Java citronella essential oil", "PEG-40 hydrogenated castor oil", "Peru balsam essential oil", "Scots pine essential oil",
    "Siberian fir essential oil", "Spanish sage essential oil", "Virginian cedarwood essential oil", "West Indian bay essential oil",
}  # fmt: skip


def test_capitals_of_the_cards_that_ship() -> None:
    assert {str(name) for name in NAMES if within(name)[0].isupper()} == CAPITAL
    assert all(within(name).casefold() == name.casefold() for name in NAMES)


@pytest.mark.parametrize(
    ("name", "plain", "stands"),
    [
        ("Tuscan clay", "Tuscan clay", "Tuscan clay"),
        ("Tuscan clay", "clay", "tuscan clay"),
        ("Olive oil", "olive oil", "olive oil"),
        ("Bourbon geranium oil", "Bourbon geranium leaf oil", "Bourbon geranium oil"),
    ],
)
def test_the_plain_name_on_the_label_decides(name: str, plain: str, stands: str) -> None:
    assert within(spelled(name, plain)) == stands


def test_the_form_goes_along_into_another_process() -> None:
    name = pickle.loads(pickle.dumps(spelled("Java citronella", "Java citronella oil")))
    assert (name, within(name)) == ("Java citronella", "Java citronella")
