"""Degrees that a sentence names: "40 °C", "70 to 75 °C", "105 degrees F"."""

import re
from dataclasses import dataclass
from fractions import Fraction
from itertools import islice, pairwise

from builder.model.place import Place
from builder.model.recipe.quantity import Temperature
from builder.model.teaching.prose import Sentence
from builder.rules.clauses import matches_in, stands

_DEGREES = re.compile(r"(\d{2,3})\s*(?:(?:to|-|–)\s*(\d{2,3})\s*)?(?:°\s*|deg(?:rees)?\s*)(C|F)\b", re.IGNORECASE)

_SAME = re.compile(r"[\s/(,]*(?:or)?\s*")
_BELOW = re.compile(r"\b(?:below|under|beneath|at most|no \w+ than|not \w+ than|not above)\W+(?:about\W+)?$", re.IGNORECASE)

_MOST = 8  # temperatures of one sentence.
_NEAR = 40  # signs in which a bound stands before its degrees.


@dataclass(frozen=True)
class Degrees:
    """A temperature or a range of it, in degC, and where it is written."""

    low: Fraction
    high: Fraction
    begin: int
    end: int
    place: Place


def degrees_in(sentence: Sentence) -> Degrees | None:
    """Return the first temperature that a sentence names, if it names one."""
    return next(iter(all_degrees_in(sentence)), None)


def all_degrees_in(sentence: Sentence) -> tuple[Degrees, ...]:
    """Return every temperature that a sentence names, in order; what is written in both scales ("104 °F (40 °C)") once."""
    return _once(sentence, [_degrees(sentence, match) for match in _DEGREES.finditer(sentence.words)])


def degrees_meant(sentence: Sentence) -> tuple[Degrees, ...]:
    """Return the temperatures that a sentence names and does not deny, suppose or ask for, in order, of as many as a step ever names."""
    first = islice(matches_in(sentence, _DEGREES), _MOST)
    meant = [_degrees(sentence, match, clause.begin) for clause, match in first if stands(clause, match)]
    return tuple(one for one in all_degrees_in(sentence) if one in meant)


def is_bound(sentence: Sentence, degrees: Degrees) -> bool:
    """Tell whether a temperature of a sentence is one that something stays below."""
    return _BELOW.search(sentence.words, degrees.begin - _NEAR, degrees.begin) is not None


def _once(sentence: Sentence, found: list[Degrees]) -> tuple[Degrees, ...]:
    again = [two for one, two in pairwise(found) if _SAME.fullmatch(sentence.words[one.end : two.begin])]
    return tuple(one for one in found if one not in again)


def _degrees(sentence: Sentence, match: re.Match[str], before: int = 0) -> Degrees:
    low, high = Fraction(match[1]), Fraction(match[2] or match[1])
    if match[3].upper() == "F":
        low, high = (Temperature.of_fahrenheit(one).celsius for one in (low, high))
    begin, end = before + match.start(), before + match.end()
    return Degrees(low, high, begin, end, sentence.place(begin, end))
