"""Degrees that a sentence names: "40 °C", "70 to 75 °C", "105 degrees F"."""

import re
from dataclasses import dataclass
from fractions import Fraction

from builder.model.place import Place
from builder.model.teaching.prose import Sentence
from builder.rules.clauses import clauses_of, stands

_DEGREES = re.compile(r"(\d{2,3})\s*(?:(?:to|-|–)\s*(\d{2,3})\s*)?(?:°\s*|deg(?:rees)?\s*)(C|F)\b", re.IGNORECASE)


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
    """Return every temperature that a sentence names, in order."""
    return tuple(_degrees(sentence, match) for match in _DEGREES.finditer(sentence.words))


def degrees_meant(sentence: Sentence) -> tuple[Degrees, ...]:
    """Return every temperature that a sentence names and does not deny, suppose or ask for, in order."""
    matches = ((clause, match) for clause in clauses_of(sentence) for match in _DEGREES.finditer(clause.words))
    return tuple(_degrees(sentence, match, clause.begin) for clause, match in matches if stands(clause, match))


def _degrees(sentence: Sentence, match: re.Match[str], before: int = 0) -> Degrees:
    low, high = Fraction(match[1]), Fraction(match[2] or match[1])
    if match[3].upper() == "F":
        low, high = ((one - 32) * Fraction(5, 9) for one in (low, high))
    begin, end = before + match.start(), before + match.end()
    return Degrees(low, high, begin, end, sentence.place(begin, end))
