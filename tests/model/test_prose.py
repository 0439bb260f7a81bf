"""Text as sentences and clauses that know where they stand, and what in them is meant."""

import re

import pytest

from builder.model.place import Place
from builder.model.teaching.prose import RunningText, Sentence, sentences_of
from builder.rules.clauses import clauses_of, is_order, stands
from builder.rules.grammar.pattern_search import Words
from builder.rules.grammar.patterns import PatternError, compile_pattern


def sentences(text: str, line: int = 1) -> tuple[Sentence, ...]:
    lines = text.split("\n")
    begins = tuple(sum(len(one) + 1 for one in lines[:number]) for number in range(len(lines)))
    return sentences_of(RunningText(text, begins, tuple(Place("lesson.md", line + number, 1) for number in range(len(lines)))))


def test_a_sentence_knows_its_line_and_column() -> None:
    first, second = sentences("Weigh the oils. Pour {lye water} of\ncold water into the **steel** jug.")
    assert first.words == "Weigh the oils."
    assert second.place(0, 4) == Place("lesson.md", 1, 17, 4)
    at = second.words.index("steel")
    assert second.place(at, at + 5) == Place("lesson.md", 2, 23, 5)


@pytest.mark.parametrize(
    ("written", "said"),
    [
        ("Weigh {lye water} of cold water.", "Weigh cold water."),
        ("Pour {water} onto {sodium hydroxide}.", "Pour water onto sodium hydroxide ."),
        ("{caution: neat-essential-oil} Stir.", "Stir."),
        ("See [our page](page:safety) first.", "See our page first."),
    ],
)
def test_what_markdown_and_braces_add_is_left_out(written: str, said: str) -> None:
    assert " ".join(sentences(written)[0].words.split()) == said


def test_a_point_in_a_number_or_a_short_word_ends_no_sentence() -> None:
    assert len(sentences("Weigh 2.5 g of salt, i.e. a pinch. Stir.")) == 2


@pytest.mark.parametrize("text", ["Then slowly pour it in.", "When it is clear, stir again.", "You can pour it in.", "Pour it."])
def test_what_orders(text: str) -> None:
    assert is_order(sentences(text)[0])


@pytest.mark.parametrize("text", ["Aluminium is eaten by lye.", "Vinegar makes it worse.", "Lye is strong."])
def test_what_does_not_order(text: str) -> None:
    assert not is_order(sentences(text)[0])


def meant(text: str, word: str = "shake") -> bool:
    (sentence,) = sentences(text)
    found = [(clause, match) for clause in clauses_of(sentence) for match in re.finditer(word, clause.words, re.IGNORECASE)]
    assert found
    return all(stands(clause, match) for clause, match in found)


@pytest.mark.parametrize(
    "text",
    [
        "Shake the jug.",
        "Do not worry, shake the jug.",
        "Not only stir, shake it.",
        "Shake it for no longer than a minute.",
        "Without a lid on it, shake the jug.",
        "Never wait: shake it.",
        "Do not stir it but shake it.",
        "If it is thick, shake it.",
        "Don't forget to shake it.",
    ],
)
def test_what_is_meant(text: str) -> None:
    assert meant(text)


@pytest.mark.parametrize(
    "text",
    [
        "Never shake the jug.",
        "Do not stir, beat or shake the jug.",
        "Never, ever, shake it.",
        "Stir it instead of shaking it.",
        "Stir without shaking it.",
        "Why must nobody shake it?",
        "If you shake it, it spits.",
        "To shake it is forbidden.",
        "Avoid shaking it.",
    ],
)
def test_what_is_not_meant(text: str) -> None:
    assert not meant(text, "shak")


def test_a_pattern_of_words() -> None:
    pattern = compile_pattern("<pour> ... <water> onto lye", {"pour": ("pour~", "tip~"), "water": ("water", "goat milk")})
    assert Words("Tipping the cold goat-milk onto the lye").search(pattern)
    assert not Words("Pour the lye into the water").search(pattern)
    assert not Words("Pour one two three four five six seven water onto lye").search(pattern)
    with pytest.raises(PatternError):
        compile_pattern("<nobody>", {})


@pytest.mark.parametrize(
    "text",
    [
        "Can I use it on a cut? Yes, it soothes.",
        "Is it safe to bend over the jug? Yes.",
        "May the children stir? Of course, they love it.",
        "Should we shake it? Sure.",
    ],
)
def test_what_is_asked_and_answered_with_yes_is_allowed(text: str) -> None:
    asked, _ = sentences(text)
    assert asked.affirmed and not asked.is_question


@pytest.mark.parametrize(
    "text",
    [
        "Can I use it on a cut? No, keep it off.",
        "Does lye eat aluminium? Yes, and fast.",
        "Is the lye clear? Yes, pour it.",
        "Can I use it on a cut? Yes, but only when it has healed.",
        "Can I use it on a cut? Ask your doctor. Yes or no, he knows.",
        "What does lye do? Yes, it burns.",
    ],
)
def test_what_is_asked_and_answered_otherwise_is_a_question(text: str) -> None:
    asked = sentences(text)[0]
    assert asked.is_question and not asked.affirmed


def test_a_question_at_the_end_stays_one() -> None:
    assert sentences("Can I shake it?")[0].is_question


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("Do I have to wear goggles? No, it is little.", "no need to   wear goggles?"),
        ("Do I need gloves? No.", "no need   gloves?"),
        ("Must we rinse the tub? No, never mind.", "no need rinse the tub?"),
    ],
)
def test_what_is_asked_and_answered_with_no_need_not_be(text: str, said: str) -> None:
    asked = sentences(text)[0]
    assert asked.words == said and not asked.is_question


@pytest.mark.parametrize("text", ["Do I have to wear goggles? Yes.", "Do I get gloves? No."])
def test_other_questions_stay_as_they_are(text: str) -> None:
    assert sentences(text)[0].words == f"{text.split('?')[0]}?"
