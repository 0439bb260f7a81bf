"""What a negation rules over in a sentence, word by word: ordinary English, each sentence judged before it was tried."""

import re

import pytest

from builder.model.place import Place
from builder.model.teaching.prose import Sentence, sentences_of, value_as_text
from builder.rules.clauses import clauses_of, explains, is_bare_order, is_order, matches_in, orders, says, stands
from builder.rules.grammar.counted import orders_in
from builder.rules.grammar.negation import denies_within, lists_no, negates, scope, without_seeming_ones

POUR = re.compile(r"\bpour\w*|\bsoap\b", re.IGNORECASE)


def sentence(text: str) -> Sentence:
    (one, *_) = sentences_of(value_as_text(text, Place("lesson.md", 1, 1)))
    return one


@pytest.mark.parametrize(
    ("text", "meant"),
    [
        ("Pour it in.", True),
        ("Do not pour it in.", False),
        ("Never pour it in.", False),
        ("Don’t pour it in.", False),
        ("Nobody pours it in.", False),
        ("Do not wait, pour it in.", True),
        ("Do not stir or pour it.", False),
        ("Do not stir, shake or pour it.", False),
        ("Do not stir it, but pour it in.", True),
        ("Do not hurry; pour it in.", True),
        ("Never forget to pour it in.", True),
        ("Don't be afraid to pour it in.", True),
        ("Pour not too fast.", True),
        ("Pour it in, or not.", True),
        ("Pour no more than a cup.", True),
        ("Without gloves nobody pours it.", False),
        ("Do not stir without gloves, and pour it in.", True),
        ("Never without gloves pour it in.", True),
        ("Stir it without pouring.", False),
        ("Instead of pouring, stir.", False),
        ("No pouring at the bench.", False),
        ("Pouring is forbidden.", False),
        ("Pouring it in is never right.", False),
        ("Pouring lye is dangerous.", False),
        ("To pour it in is a mistake.", False),
        ("If you pour it in, wait.", False),
        ("If it is cool, pour it in.", True),
        ("Should any soap spill, wipe it up.", False),
        ("Stop at once if you pour", False),
        ("Wipe it up if soap, oil or lye spills.", False),
        ("Do you pour it in?", False),
        ("Keep the soap away from the sink.", False),
        ("Keep the cup away; pour the lye.", True),
        ("Leave the soap out.", False),
        ("It is forbidden by law that we pour it.", False),
    ],
)
def test_a_sentence_means_what_it_does_not_deny_suppose_or_ask(text: str, *, meant: bool) -> None:
    assert says(sentence(text), POUR) is meant


# What is about something missing has its own "no".
def test_its_own_no_is_no_negation_of_what_is_missing() -> None:
    one = sentence("Pour the soap with no gloves.")
    ((clause, match),) = matches_in(one, re.compile(r"\bno gloves\b"))
    assert not stands(clause, match) and stands(clause, match, says_no_itself=True)
    denied = sentence("Do not pour the soap with no gloves.")
    ((clause, match),) = matches_in(denied, re.compile(r"\bno gloves\b"))
    assert not stands(clause, match, says_no_itself=True)


# The clause of a word begins behind the last comma that brings a new order, and does not where a list goes on.
@pytest.mark.parametrize(
    ("words", "word", "before"),
    [
        ("Do not wait, pour it", "pour", ""),
        ("Stir it, then pour it", "pour", ""),
        ("Do not stir, shake or pour it", "pour", "Do not stir, shake or "),
        ("Pour it", "Pour", ""),
        ("Never hurry but pour it", "pour", ""),
        ("With the lid on pour it", "pour", "With the lid on "),
    ],
)
def test_a_new_order_begins_a_clause(words: str, word: str, before: str) -> None:
    at = words.index(word)
    assert words[scope(words, at) : at].lstrip(" ").removeprefix("but ").removeprefix("then ") == before


@pytest.mark.parametrize(
    ("before", "denied"),
    [
        ("do not ", True), ("never ", True), ("then ", False), ("without ", True), ("without a word of ", True),
        # A "no" or "without" reaches over four words, and not beyond what leads on.
        ("without one two three four ", True), ("without one two three four five ", False), ("without gloves, ", True),
        ("no lid on and ", False), ("instead of ", True), ("never without gloves ", False), ("nobody without gloves ", False),
    ],
)  # fmt: skip
def test_what_stands_before_a_word_denies_it(before: str, *, denied: bool) -> None:
    assert negates(before) is denied


def test_a_list_that_begins_with_no_forbids_all_of_it() -> None:
    assert lists_no("No food, drink or ", "gum") and lists_no("At the bench no ", "food")
    assert not lists_no("No food in the room, ", "pour") and not lists_no("Pour the ", "soap")
    assert not lists_no("No food, ", "gum and pour it")
    assert denies_within("is not") and denies_within("without gloves") and denies_within("no gloves") and not denies_within("with gloves")


def test_what_only_looks_like_a_negation_is_blanked_out() -> None:
    for words, left in (
        ("not only water", "water"), ("no more than a cup", "a cup"), ("don't forget to stir", "to stir"), ("no rush, stir", ", stir"),
        ("do not stir", "do not stir"),
    ):  # fmt: skip
        blanked = without_seeming_ones(words)
        assert blanked.strip() == left and len(blanked) == len(words)


@pytest.mark.parametrize(
    ("text", "ordered", "bare"),
    [
        ("Stir it.", True, True),
        ("Slowly stir it.", True, True),
        ("Students stir it.", True, False),
        ("When it is cool, stir it.", True, False),
        ("It is late, so stir it.", True, False),
        ("Stirring is fun.", False, False),
        ("It stirs itself.", False, False),
        ("The soap cools, and stir bars turn.", False, False),
    ],
)
def test_a_sentence_orders_by_a_verb_or_by_what_people_do(text: str, *, ordered: bool, bare: bool) -> None:
    one = sentence(text)
    assert is_order(one) is ordered and is_bare_order(one) is bare
    assert orders(one, re.compile(r"\bstir\b", re.IGNORECASE)) is (ordered and "stir" in text.casefold())


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("Lye eats aluminium.", [True]),
        ("Stir what floats.", [False]),
        ("Lye burns; stir it.", [True, False]),
        ("Stir it; it means trace.", [False, True]),
        ("Look: you stir what floats.", [False, False]),
        ("It is late: when it floats, stir it.", [False, False]),
    ],
)
def test_a_clause_explains_how_things_are_or_orders(text: str, told: list[bool]) -> None:
    assert [explains(clause) for clause in clauses_of(sentence(text))] == told


@pytest.mark.parametrize(
    ("words", "verbs"),
    [
        ("Stir, pour and cover it", ["stir", "pour", "cover"]),
        ("Students stir and then pour it", ["stir", "pour"]),
        ("Stir or shake it", ["stir"]),
        ("Clean, then dry the jar", ["dry"]),
        ("Clean the jar, dry the lid", ["clean", "dry"]),
        ("Enjoy it and stir", ["stir"]),
        ("Take the funnel and cap", ["take"]),
        ("Take the funnel and cap the jar", ["take", "cap"]),
        ("The jars stand, and cool air comes in", []),
    ],
)
def test_orders_are_counted_once_each(words: str, verbs: list[str]) -> None:
    assert [found["verb"].casefold() for found in orders_in(words)] == verbs
