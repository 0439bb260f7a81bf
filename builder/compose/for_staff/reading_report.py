"""What `check --reading` says of a sheet: its grade, its longest sentence, sentences that are too long, words of the trade not explained.

Decided: it is a report and no finding, and holds nothing back. Why: a grade counts lengths alone. It is an alarm for smoke, and text
written to please it reads worse.

Measures: grade 6 is the aim and 8 the most (guidance on health texts of the US National Library of Medicine, 6th to 7th grade, from
memory); 20 words to a sentence of a step, and 100 words before a grade is given, are this program's own.
"""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from builder.compose.for_staff.sheet_text import Said, said_on
from builder.compose.for_staff.steps_report import step_lines
from builder.model.teaching.lesson import Step
from builder.words.reading import reading_of, words_of

AIM, MOST, IN_A_STEP, LEAST_WORDS = 6, 8, 20, 100


@dataclass(frozen=True)
class Explained:
    """A word of the trade: other words for the same, and how a sheet may explain it in a few words."""

    name: str
    also_called: tuple[str, ...]
    on_sheets: str


def reading_lines(html: str, words: Sequence[Explained], steps: Mapping[str, Step], *, in_english: bool) -> Iterator[str]:
    """Yield in words how a sheet reads, line by line; nothing of a sheet without steps and cautions. `steps` are those of its class."""
    said = said_on(html)
    if not said:
        return
    yield _lengths(said)
    yield _grade(said, words) if in_english else "no grade: its formula is for English alone"
    longest = max(said, key=lambda one: len(words_of(one.text)))
    yield f'longest sentence: {len(words_of(longest.text))} words, in {longest.at}: "{longest.text}"'
    long = [one for one in said if one.is_step and len(words_of(one.text)) > IN_A_STEP]
    yield from (f'over {IN_A_STEP} words in a step: {len(words_of(one.text))} in {one.at}: "{one.text}"' for one in long if one != longest)
    yield from step_lines(said, steps, in_english=in_english)
    if in_english:
        yield from _unexplained(said, words)


def _lengths(said: Sequence[Said]) -> str:
    count = sum(len(words_of(one.text)) for one in said)
    return f"{count} words in {len(said)} sentences of steps and cautions, {count / len(said):.1f} to a sentence"


def _grade(said: Sequence[Said], words: Sequence[Explained]) -> str:
    texts = [one.text for one in said]
    whole = reading_of(texts)
    if whole.words < LEAST_WORDS:
        return f"too short for a grade: under {LEAST_WORDS} words"
    trade = frozenset(part.casefold() for word in words for name in (word.name, *word.also_called) for part in words_of(name))
    without = reading_of(texts, trade)
    told = "" if whole.grade <= AIM else f", above the aim of {AIM}" if whole.grade <= MOST else f", above {MOST}: shorten its sentences"
    return f"grade {whole.grade:.1f} ({without.grade:.1f} without the words of the trade), reading ease {whole.ease:.0f}{told}"


def _unexplained(said: Sequence[Said], words: Sequence[Explained]) -> Iterator[str]:
    for word in words:
        names = "|".join(re.escape(name) for name in sorted((word.name, *word.also_called), key=len, reverse=True))
        met = re.compile(rf"\b(?:{names})\b", re.IGNORECASE)
        # Explained where it first stands: in brackets, behind a colon, or in a sentence of its own.
        told = re.compile(rf"\b(?:{names})\b\s*(?:\(|:|,? (?:is|means|that is|which is)\b)", re.IGNORECASE)
        first = next((one for one in said if met.search(one.text)), None)
        if first and not told.search(first.text) and word.on_sheets.casefold() not in first.text.casefold():
            yield f"not explained where it first stands, in {first.at}: {word.name} ({word.on_sheets})"


def notes(*, in_english: bool) -> tuple[str, ...]:
    """Return in words what the report is worth."""
    if not in_english:
        return ("Lengths are counted in words between stops. They say nothing of sense, order or what is missing.",)
    return (
        "The grade is that of Flesch and Kincaid (1975): 0.39 words to a sentence + 11.8 syllables to a word - 15.59. Syllables are "
        "counted by rule, and a few wrongly.",
        "It counts lengths alone, and knows nothing of sense, order or what is missing: let somebody read it who has not seen the class.",
    )


def kinds_read() -> Mapping[str, str]:
    """Return the kinds of document that people follow with their hands, each with what it is called here."""
    return {"take-home page": "take-home sheet", "steps at the bench": "steps at the bench", "teacher's sheet": "teacher's sheet"}
