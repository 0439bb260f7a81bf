"""Sentences as teachers write them: what tells people to do what hurts is found, and what is right stays silent.

The sentences stand in `unsafe_sentences.yaml`. Those marked published are those of the reference collection; each of the others was
written before it was tried.
"""

from dataclasses import replace
from pathlib import Path

import pytest
import yaml

from builder.check.teaching.statements import Said, Statement
from builder.check.teaching.unsafe_steps import dangers_in
from builder.model.place import Place
from builder.model.recipe.product import Condition
from builder.model.teaching.prose import sentences_of, value_as_text
from tests.studios import sound_studio

STUDIO, _ = sound_studio()
ROWS = yaml.load((Path(__file__).parent / "unsafe_sentences.yaml").read_text(encoding="utf-8"), yaml.CSafeLoader)
HOLDS = {
    "lye": {"lye", "wet", "uncured"},
    "kids": {"lye", "wet", "uncured"},
    "tools": {"lye", "wet", "uncured"},
    "lotion": {"no lye", "unpreserved"},
    "scrub": {"no lye", "wet", "scrub", "scented", "oily"},
    "bomb": {"no lye", "wet", "bath", "fizz"},
    "balm": {"no lye"},
    "nuts": {"no lye", "nuts", "soy"},
    "milk and wheat": {"no lye", "milk", "wheat"},
    "text": set(),
}
SAID = {"tools": Said.TOOL, "text": Said.TEXT}
LEADS_UP = {"lye": "Make the soap with lye.", "kids": "Make the soap.", "bomb": "Press the bath bombs."}
CHILD, ADULT = 8, 18


def found_in(text: str, where: str, youngest: int | None = None) -> list[str]:
    around = f"{LEADS_UP.get(where, '')} {text}"
    found, before = [], ""
    for sentence in sentences_of(value_as_text(text, Place("lesson.md", 1, 1))):
        statement = Statement(
            sentence,
            SAID.get(where, Said.STEP),
            f"{LEADS_UP.get(where, '')} {before}",
            around,
            "",
            frozenset(map(Condition, HOLDS[where])),
            youngest or (CHILD if where == "kids" else ADULT),
        )
        found += [danger.key for danger, _ in dangers_in(statement, STUDIO.unsafe_steps)]
        before = sentence.words
    return found


def rows(kind: str, ending: str) -> list[tuple[str, ...]]:
    return [
        (where, text, *rest)
        for title, places in ROWS.items()
        if title.endswith(ending) and title.startswith(kind)
        for where, texts in places.items()
        for text, *rest in ([(text,) for text in texts] if isinstance(texts, list) else texts.items())
    ]


PASS = rows("", ", pass")
FOUND = rows("", ", found")


@pytest.mark.parametrize(("where", "text"), PASS)
def test_what_is_right_stays_silent(where: str, text: str) -> None:
    assert found_in(text, where) == []


@pytest.mark.parametrize(("where", "text", "danger"), FOUND)
def test_what_hurts_is_found(where: str, text: str, danger: str) -> None:
    assert danger in found_in(text, where)


# Raw soap and hot liquids are no matter of children under twelve (common practice, no source).
@pytest.mark.parametrize(("age", "found"), [(11, True), (12, False)])
@pytest.mark.parametrize("text", ["The children stir the raw soap.", "Let the kids pour the melted base."])
def test_what_is_not_for_children_is_found_below_their_age(text: str, age: int, *, found: bool) -> None:
    assert bool(found_in(text, "kids", age)) is found


def test_both_lists_are_long_enough() -> None:
    assert len(rows("published", ", pass")) == 11
    assert len({text.replace(",", ":") for _, text, _ in rows("published", ", found")}) == 11
    assert min(len(rows("written", ", pass")), len(rows("written", ", found"))) >= 60


def test_every_danger_is_met_by_a_sentence_or_has_none_yet() -> None:
    met = {danger for _, _, danger in FOUND}
    assert met <= {danger.key for danger in STUDIO.unsafe_steps}


# Tin foil is of aluminium, and lye added "for hardness" is both ordered and praised: one fault each.
@pytest.mark.parametrize(
    "text",
    ["Cover the jug of lye with tin foil.", "Pour the lye into a bowl lined with tin foil.", "Some extra lye is added for hardness."],
)
def test_one_fault_is_found_once(text: str) -> None:
    assert len(found_in(text, "lye")) == 1


# In a class from 14 on "the children" are those who come, and the rules on supervision judge them; in one from 16 on they are others.
@pytest.mark.parametrize(("age", "found"), [(15, False), (16, True)])
def test_children_at_raw_soap_are_others_where_nobody_so_young_comes(age: int, *, found: bool) -> None:
    assert bool(found_in("Let the children stir the batter.", "lye", age)) is found


@pytest.mark.parametrize(("age", "found"), [(17, False), (18, True)])
def test_teenagers_at_raw_soap_are_others_in_a_class_for_adults(age: int, *, found: bool) -> None:
    assert bool(found_in("Let the teenagers stir the batter.", "lye", age)) is found


# A page is for everybody: nobody knows how old those are who read it, so that no danger of an age is met.
@pytest.mark.parametrize("text", ["Let the kids pour the melted base.", "Let the children stir the batter."])
def test_where_no_age_is_known_no_danger_of_an_age_is_met(text: str) -> None:
    (sentence,) = sentences_of(value_as_text(text, Place("pages/about.md", 1, 1)))
    said = Statement(sentence, Said.STEP, "Make the soap with lye.", text, holds=frozenset(map(Condition, HOLDS["lye"])))
    of_age = tuple(danger for danger in STUDIO.unsafe_steps if danger.younger_than is not None or danger.from_age is not None)
    met = {age: list(dangers_in(replace(said, youngest=age), of_age)) for age in (None, CHILD, ADULT)}
    assert not met[None] and (met[CHILD] or met[ADULT])
