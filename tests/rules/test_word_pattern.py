"""Looking through a text for many patterns at once misses none that looking for each by itself finds."""

import os
import pickle
from collections.abc import Iterator
from pathlib import Path

import pytest
import yaml

from builder.rules.grammar.pattern_search import PatternIndex, Words, possible_in
from builder.rules.grammar.patterns import compile_pattern
from tests.studios import sound_studio
from tests.whole_run import LONG

HERE = Path(__file__).parent.parent
STUDIO, _ = sound_studio()
TABLES = {
    "steps": [danger.says for danger in STUDIO.unsafe_steps],
    "tools": [danger.in_tools for danger in STUDIO.unsafe_steps],
    "claims": [claim.says for claim in STUDIO.claims.claims],
    "lye": [words for one in STUDIO.lye_words.values() for words in (one.says, one.in_titles, one.unless)],
}


def texts_in(
    value: object,
) -> Iterator[str]:
    if isinstance(value, str):
        yield value
    elif isinstance(value, dict):
        for key, one in value.items():
            yield from (*texts_in(key), *texts_in(one))
    elif isinstance(value, list):
        for one in value:
            yield from texts_in(one)


def texts() -> Iterator[str]:
    for name in ("unsafe_sentences", "claim_sentences"):
        yield from texts_in(yaml.load((HERE / "check" / f"{name}.yaml").read_text(encoding="utf-8"), yaml.CSafeLoader))


TEXTS = [Words(changed) for text in texts() for changed in (text, text.upper(), text.replace(" ", "-"), text.replace("'", "’"))]


def test_there_are_texts_enough_in_which_something_is_found() -> None:
    assert len(TEXTS) > 2000
    assert sum(any(pattern.regex.search(words.text) for row in TABLES["steps"][:20] for pattern in row) for words in TEXTS[::40]) > 3


@pytest.mark.long(sample=True)
@pytest.mark.parametrize("table", TABLES)
def test_every_row_of_which_a_pattern_stands_in_a_text_is_among_the_possible(table: str) -> None:
    rows, index = TABLES[table], PatternIndex(TABLES[table])
    ruled_out = 0
    texts = TEXTS[:: 9 if LONG in os.environ else 45]
    for words in texts:
        possible = index.possible(words)
        assert possible == sorted(set(possible))
        stand = {number for number, row in enumerate(rows) if any(words.search(pattern) for pattern in row)}
        assert stand <= set(possible)
        ruled_out += len(rows) - len(possible)
    assert ruled_out > len(texts)


def test_no_pattern_is_ruled_out_of_a_text_in_which_its_expression_finds_it() -> None:
    for row in TABLES["steps"][::6]:
        for pattern in row:
            assert [words.text for words in TEXTS[::61] if pattern.regex.search(words.text) and not words.may_hold(pattern)] == []


@pytest.mark.parametrize(
    ("written", "text"),
    [
        ("pour", "Pour."),
        ("(mix~)", "(mixing)"),
        ("stir~", "STIRRING-IN"),
        ("solidif*", "it solidifies"),
        ("grandma's recipe", "Grandma’s recipes"),
        ("lye? water", "the water"),
        ("pour? the? ... lye", "Lye"),
        ("naïve", "NAÏVE"),
        ("in the next room", "in the-next rooms"),
        ("it won't trace", "It won’t trace."),
        ("100 %", "100 % of it"),
    ],
)
def test_among_many_others_a_pattern_is_possible_where_it_stands(written: str, text: str) -> None:
    pattern = compile_pattern(written, {})
    others = tuple(compile_pattern(f"word{number}", {}) for number in range(20))
    found = [one for one in possible_in((*others, pattern), Words(text)) if Words(text).search(one)]
    assert found == ([pattern] if Words(text).search(pattern) else [])


def test_a_pattern_is_handed_on_without_its_expression_made() -> None:
    pattern = compile_pattern("<pour> ... <water>", {"pour": ("pour", "tip"), "water": ("water",)})
    assert Words("Pour in the cold water.").search(pattern)
    handed_on = pickle.loads(pickle.dumps(pattern))
    assert "regex" in vars(pattern)
    assert "regex" not in vars(handed_on)
    assert handed_on == pattern
    assert Words("Tip the water out.").search(handed_on)
