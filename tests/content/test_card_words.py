"""What the text of a card warns of is data too: a hazard with its caution, a family of allergens, a line of the label."""

import re

import pytest

from builder.model.recipe.ingredient import Ingredient
from builder.words.fold import fold
from tests.making import sure
from tests.studios import sound_studio

STUDIO, _ = sound_studio()
CARDS = {card.key: card for card in STUDIO.ingredients.values()}.values()

# What the words of a card say, and what of its data a rule or a document reads.
SAID = {
    "eyes": (r"(harms?|damage|hurts?) eyes|hurt the eyes", {"harms eyes", "irritant acid", "neat essential oil"}),
    "dust": (r"\bdust\b (hurts|stings|makes|harms|nose)|be breathed", {"dust"}),
    "oily cloths": (r"[Cc]loths", {"oily cloths"}),
    "sunlight": (r"(burns?|able to burn) skin in sunlight", {"phototoxic"}),
    "stains": (r"stains? (a tub|skin)|bleed colour", {"stains"}),
    "slippery": (r"tub slippery", {"slippery"}),
    "acid": (r"Acid destroys it", {"acid frees"}),
}


def data_of(card: Ingredient) -> set[str]:
    return {*card.hazards, *(["acid frees"] if card.acid_frees else [])}


@pytest.mark.parametrize("said", SAID)
def test_what_a_card_says_of_a_danger_stands_in_its_data(said: str) -> None:
    pattern, any_of = SAID[said]
    saying = [card for card in CARDS if re.search(pattern, card.about) and "not burn" not in card.about]
    assert saying
    assert {card.name: card.about for card in saying if not data_of(card) & any_of} == {}


def test_who_is_said_to_react_to_a_family_finds_the_card_by_it() -> None:
    for words, family in (("daisy family", "daisy family"), ("tree nut:|is a tree nut", "tree nut"), ("wool alcohols", "wool alcohols")):
        saying = [card for card in CARDS if re.search(words, card.about)]
        assert saying
        assert [card.name for card in saying if family not in card.allergens] == []


def test_what_is_not_for_small_children_has_a_limit_for_them() -> None:
    saying = [
        card
        for card in CARDS
        if re.search(r"[Nn]ot for (babies|those under two|small children|children)|for (small )?children", card.about)
    ]
    judged = [limit for limit in STUDIO.limits if limit.below_age is not None and limit.most is not None]
    alone = [card.name for card in saying if not any(card.speaks_of & limit.speaks_of for limit in judged)]
    # Talc is not kept from children; EU law asks for a line on the label.
    assert len(saying) > 10
    assert alone == ["Talc"]


def warned_by(name: str) -> list[str]:
    card = STUDIO.ingredients[fold(name)]
    names = {fold(one) for one in sure(card.label_name).inci}
    return [rule.wording for rule in STUDIO.label_warnings if names & set(rule.names)]


def test_what_is_not_for_pregnancy_says_so_on_its_label() -> None:
    saying = [card.name for card in CARDS if "pregnancy" in card.about]
    assert saying == ["Borax", "Neem oil"]
    assert all(any("pregnancy" in wording for wording in warned_by(name)) for name in saying)
    assert warned_by("Olive oil") == []
