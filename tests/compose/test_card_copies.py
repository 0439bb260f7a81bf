"""Bench cards that say the same are one card for several groups; together they are as many copies as there are groups."""

import re
from collections import Counter
from collections.abc import Set as AbstractSet

import pytest

from builder.compose.documents.card_copies import (
    SharedCard,
    heading,
    numbers_in_words,
    on_the_check_list,
    on_the_page,
    people,
    shared,
    two_to_a_page,
)
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
    said = "Bench cards: 2 copies for groups 1 and 3, 1 copy for group 2 and 1 copy for group 4"
    assert plain(on_the_check_list(cards, in_groups=True)) == said


@pytest.mark.parametrize("number", [1, 2, 3, 12])
@pytest.mark.parametrize("odd", [set(), {1}, {2}, {1, 3}])
@pytest.mark.parametrize("in_groups", [True, False])
def test_cards_and_check_list_count_alike_and_every_group_has_one(number: int, odd: AbstractSet[int], in_groups: bool) -> None:
    cards = shared([SharedCard((one,), 2, A if one in odd else B) for one in range(1, number + 1)])
    assert sorted(group for card in cards for group in card.groups) == list(range(1, number + 1))
    printed = Counter(card.groups for copies, on_it in two_to_a_page(cards) for card in on_it * copies)
    # A page that is cut in two may leave one card over, and no more; nobody is left without one.
    over = sum(printed.values()) - number
    assert all(printed[card.groups] >= len(card.groups) for card in cards) and over in (0, 1)
    assert over == 0 or number % 2
    line = plain(on_the_check_list(cards, in_groups=in_groups))
    each = re.search(r"for each of (\d+) ", line)
    listed = int(each[1]) if each else sum(map(int, re.findall(r"(\d+) cop", line)))
    assert listed == number, line


@pytest.mark.parametrize(("places", "copies", "pages"), [(1, 1, [(1, 1)]), (2, 1, [(1, 1)]), (4, 2, [(1, 2)]), (9, 5, [(3, 2)])])
def test_a_card_that_is_read_alone_lies_between_two_places(places: int, copies: int, pages: list[tuple[int, int]]) -> None:
    """Worked by hand; each page is how often it is printed, and how many cards are on it."""
    (card,) = cards = shared([SharedCard((place,), 1, A, between_two=True) for place in range(1, places + 1)])
    said = on_the_check_list(cards, in_groups=False)
    assert (card.copies, plain(said).startswith(f"Bench cards: {copies} cop")) == (copies, True)
    printed = [(times, len(on_it)) for times, on_it in two_to_a_page(cards)]
    assert (printed, sum(times * on_it for times, on_it in printed) >= copies) == (pages, True)


@pytest.mark.parametrize(
    ("kinds", "pages"),
    [
        ("aaaa", [(2, "aa")]),
        ("aaaaa", [(3, "aa")]),
        ("aaab", [(1, "aa"), (1, "ab")]),
        ("aab", [(1, "aa"), (1, "b")]),
        ("a", [(1, "a")]),
        ("abc", [(1, "ab"), (1, "c")]),
        ("aaabbbccc", [(1, "aa"), (1, "bb"), (2, "cc"), (1, "ab")]),
    ],
)
def test_two_cards_share_a_page(kinds: str, pages: list[tuple[int, str]]) -> None:
    """Worked by hand: alike cards lie together, then those that are left over, in order."""
    cards = shared([SharedCard((place,), 2, (BenchProduct(kind, "", "", (), (), ()),)) for place, kind in enumerate(kinds, start=1)])
    assert [(copies, "".join(card.products[0].name for card in on_it)) for copies, on_it in two_to_a_page(cards)] == pages
    assert [on_the_page(copies) for copies in (1, 3)] == ["", "Print this page 3 times."]
