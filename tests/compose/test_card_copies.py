"""Bench cards that say the same are one card for several groups; together they are as many copies as there are groups."""

import re
from collections.abc import Set as AbstractSet

import pytest

from builder.compose.documents.card_copies import SharedCard, heading, numbers_in_words, on_the_card, on_the_check_list, people, shared
from builder.compose.views.bench_cards import BenchProduct


def plain(text: str) -> str:
    return text.replace("\u00a0", " ")


A, B = ((BenchProduct(name, "", "", (), (), ()),) for name in "ab")


@pytest.mark.parametrize(
    ("groups", "words"),
    [((4,), "4"), ((1, 2), "1 and 2"), ((1, 2, 3), "1 to 3"), ((1, 3, 5, 6, 7), "1, 3 and 5 to 7"), ((2, 3, 5), "2, 3 and 5")],
)
def test_numbers(groups: tuple[int, ...], words: str) -> None:
    assert numbers_in_words(groups) == words


def test_cards_that_say_the_same_are_one_and_others_stay_by_themselves() -> None:
    alone = [SharedCard((1,), 2, A), SharedCard((2,), 2, B), SharedCard((3,), 2, A), SharedCard((4,), 1, A)]
    cards = shared(alone)
    assert [card.groups for card in cards] == [(1, 3), (2,), (4,)]
    assert [heading(card, 4, in_groups=True) for card in cards] == ["Groups 1 and 3 of 4", "Group 2 of 4", "Group 4 of 4"]
    assert [plain(people(card)) for card in cards] == ["2 people each", "2 people", "1 person"]
    assert [on_the_card(card) for card in cards] == ["Print 2 copies.", "", ""]
    said = "Bench cards: 2 copies for groups 1 and 3, 1 copy for group 2 and 1 copy for group 4"
    assert plain(on_the_check_list(cards, in_groups=True)) == said


@pytest.mark.parametrize("number", [1, 2, 3, 12])
@pytest.mark.parametrize("odd", [set(), {1}, {2}, {1, 3}])
@pytest.mark.parametrize("in_groups", [True, False])
def test_cards_and_check_list_count_alike_and_every_group_has_one(number: int, odd: AbstractSet[int], in_groups: bool) -> None:
    cards = shared([SharedCard((one,), 2, A if one in odd else B) for one in range(1, number + 1)])
    assert sorted(group for card in cards for group in card.groups) == list(range(1, number + 1))
    on_cards = sum(int(match[1]) if (match := re.search(r"Print (\d+)", on_the_card(card))) else 1 for card in cards)
    line = plain(on_the_check_list(cards, in_groups=in_groups))
    each = re.search(r"for each of (\d+) ", line)
    listed = int(each[1]) if each else sum(map(int, re.findall(r"(\d+) cop", line)))
    assert on_cards == listed == number, line
