"""Bench cards that say the same to several groups: one card, with the groups that it is for and how many copies to print.

Decided: such a card names all its groups, and leaves no number to write in. Why: a card with a number to fill in can be laid at a bench
that it is not for; with their numbers printed it cannot, and a teacher has the same page to print as often as there are groups.
Decided: a card on which neighbours who work alone tick nothing lies between two of them, as their steps do. Why: nobody writes on it.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from builder.compose.teaching.supervision_words import people_of
from builder.compose.views.bench_cards import BenchProduct
from builder.words.listed import listed
from builder.words.say import say, say_count


@dataclass(frozen=True)
class SharedCard:
    """What one card says, and to which groups, by their numbers; `people` are those of one group, and two may read one card."""

    groups: tuple[int, ...]
    people: int
    products: tuple[BenchProduct, ...]
    between_two: bool = False

    @property
    def copies(self) -> int:
        """Return how many are printed."""
        return -(-len(self.groups) // 2) if self.between_two else len(self.groups)


def shared(cards: Sequence[SharedCard]) -> tuple[SharedCard, ...]:
    """Put together the cards that say the same, in the order of the first group of each."""
    groups: dict[SharedCard, list[int]] = {}
    for card in cards:
        groups.setdefault(replace(card, groups=()), []).extend(card.groups)
    return tuple(replace(card, groups=tuple(sorted(numbers))) for card, numbers in groups.items())


def heading(card: SharedCard, of: int, *, in_groups: bool) -> str:
    """Name the groups of a card: `Group 4 of 4`, `Places 1 to 3 of 4`."""
    numbers, several = numbers_in_words(card.groups), len(card.groups) > 1
    if in_groups:
        return (
            say("Groups {numbers} of {of}", numbers=numbers, of=of) if several else say("Group {numbers} of {of}", numbers=numbers, of=of)
        )
    return say("Places {numbers} of {of}", numbers=numbers, of=of) if several else say("Place {numbers} of {of}", numbers=numbers, of=of)


def people(card: SharedCard) -> str:
    """Return in words how many people are at each bench of a card."""
    if len(card.groups) == 1:
        return people_of(card.people)
    return say_count("{count}\xa0person each", "{count}\xa0people each", card.people)


def two_to_a_page(cards: Sequence[SharedCard]) -> tuple[tuple[int, tuple[SharedCard, ...]], ...]:
    """Lay cards on pages of two, alike ones together, with how often each page is printed.

    No group is left without one. A last card that has nobody to share its page with is printed on a page with its like, one too many, or
    alone where it is the only one.
    """
    pages = [(card.copies // 2, (card, card)) for card in cards if card.copies > 1]
    single = [card for card in cards if card.copies % 2]
    mixed = [(1, (one, other)) for one, other in zip(single[::2], single[1::2], strict=False)]
    last = single[-1] if len(single) % 2 else None
    if last is None:
        return (*pages, *mixed)
    if last.copies == 1:
        return (*pages, *mixed, (1, (last,)))
    return (*((copies + (on_it[0] is last), on_it) for copies, on_it in pages), *mixed)


def on_the_page(copies: int) -> str:
    """Return in words how often to print a page of cards; empty where that is once."""
    return say("Print this page {count} times.", count=copies) if copies > 1 else ""


def on_the_check_list(cards: Sequence[SharedCard], *, in_groups: bool) -> str:
    """Return for the check list how often to print which card."""
    if len(cards) == 1:
        return say_count("Bench cards: {count}\xa0copy", "Bench cards: {count}\xa0copies of one card", cards[0].copies)
    if all(len(card.groups) == 1 for card in cards):
        if in_groups:
            return say("Bench cards: 1 set, a card for each of {count}\xa0groups", count=len(cards))
        return say("Bench cards: 1 set, a card for each of {count}\xa0places", count=len(cards))
    return say("Bench cards: {each}", each=listed([_of_card(card, in_groups=in_groups) for card in cards]))


def numbers_in_words(groups: Sequence[int]) -> str:
    """Write numbers, three and more in a row by the first and the last: `1, 3 and 5 to 8`."""
    runs: list[list[int]] = []
    for number in groups:
        if runs and runs[-1][-1] == number - 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    pieces = [[say("{first} to {last}", first=run[0], last=run[-1])] if len(run) > 2 else [str(number) for number in run] for run in runs]
    return listed([piece for run in pieces for piece in run])


def _of_card(card: SharedCard, *, in_groups: bool) -> str:
    numbers, count = numbers_in_words(card.groups), card.copies
    if in_groups:
        return say_count("{count}\xa0copy for group {numbers}", "{count}\xa0copies for groups {numbers}", count, numbers=numbers)
    return say_count("{count}\xa0copy for place {numbers}", "{count}\xa0copies for places {numbers}", count, numbers=numbers)
