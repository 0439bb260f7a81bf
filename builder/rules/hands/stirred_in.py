"""What the steps of a part stir in, and how hot what it goes into is told to be.

Decided: only degrees that a part names count, up to its next word of cooling or waiting. Why: between two parts, and where a step says
"when it is cool", nobody knows how warm a pot still is.
"""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction

from builder.model.place import Place
from builder.model.recipe.ingredient import Ingredient
from builder.model.teaching.lesson import Part
from builder.model.teaching.prose import Sentence
from builder.rules.clauses import clauses_of, explains, matches_in, stands
from builder.rules.degrees import all_degrees_in, degrees_meant
from builder.rules.grammar.verbs import STIRS_IN, verbs_that

# Ordinary English (common practice, no source). The last verb before a thing tells whether it goes in.
_VERB = re.compile(
    rf"\b(?:(?P<puts>{'|'.join(verbs_that(STIRS_IN))}|put(?! on)|work)"
    r"|bring|choose|fetch|hand|lay|look|measure|open|read|set|show|take|talk|tell|weigh)(?:e?s|\w?ed|\w?ing)?\b",
    re.IGNORECASE,
)
_FAR = 200  # signs between a verb and what it puts in, at most.
_GOES_IN = re.compile(r"\s+(?:\w+\s+)?(?:goes|comes|(?:is|are) (?:then |now )?(?:added|stirred|mixed|put|poured))\b", re.IGNORECASE)
_COOLS = re.compile(
    r"\b(?:cool\w*|chill\w*|cold|ice|(?<!n['’]t )(?<!not )wait\w*|rests?|"
    r"(?:luke|hand|skin|body|barely|just)[\s-]?warm|body heat|room temperature)\b",
    re.IGNORECASE,
)


@dataclass(frozen=True)
class Named:
    """An ingredient with the words by which the steps of its recipe call it."""

    card: Ingredient
    words: frozenset[str]


@dataclass(frozen=True)
class StirredIn:
    """What goes in, at how many degC of what it goes into, and where that is said."""

    card: Ingredient
    celsius: Fraction
    place: Place


def stirred_in_hot(part: Part, named: Iterable[Named]) -> Iterator[StirredIn]:
    """Yield what the steps of a part stir in where degrees are told for it."""
    looked_for = [(one.card, _any_of(one.words)) for one in named]
    heat: Fraction | None = None
    for sentence in (sentence for step in part.steps for sentence in step.sentences):
        for card, words in looked_for:
            at = _goes_in(sentence, words)
            told = _heat_at(sentence, at[0], heat) if at else None
            if at and told is not None:
                yield StirredIn(card, told, sentence.place(*at))
        if all_degrees_in(sentence):
            meant = degrees_meant(sentence)
            heat = meant[-1].low if meant and not _cools(sentence, meant[-1].end) else None
        elif _cools(sentence):
            heat = None


def _any_of(words: Iterable[str]) -> re.Pattern[str]:
    longest_first = sorted(words, key=lambda one: (-len(one), one))
    return re.compile(rf"\b(?:{'|'.join(map(re.escape, longest_first))})s?\b", re.IGNORECASE)


def _goes_in(sentence: Sentence, words: re.Pattern[str]) -> tuple[int, int] | None:
    """Return where a sentence says of something that it goes in; None where it does not."""
    for clause in clauses_of(sentence):
        for match in words.finditer(clause.words):
            verbs = list(_VERB.finditer(clause.words, match.start() - _FAR, match.start()))
            goes_in = (bool(verbs) and verbs[-1]["puts"] is not None) or _GOES_IN.match(clause.words, match.end())
            if goes_in and not explains(clause) and stands(clause, match):
                return clause.begin + match.start(), clause.begin + match.end()
    return None


def _heat_at(sentence: Sentence, at: int, heat: Fraction | None) -> Fraction | None:
    """Return the degC told at a spot of a sentence: the last before it, else the first after it, else those told before the sentence."""
    degrees = all_degrees_in(sentence)
    before = [one for one in degrees if one.end <= at]
    if before:
        return None if _cools(sentence, before[-1].end) else before[-1].low
    if degrees:
        return degrees[0].low
    return None if _cools(sentence) else heat


def _cools(sentence: Sentence, begin: int = 0) -> bool:
    """Tell whether a sentence says from a spot on that something cools or waits."""
    return any(clause.begin + match.start() >= begin and stands(clause, match) for clause, match in matches_in(sentence, _COOLS))
