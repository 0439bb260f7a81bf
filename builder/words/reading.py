"""How hard English is to read, by lengths alone: the words and sentences of a text, its syllables, and the grade of Flesch and Kincaid.

Grade: 0.39 words to a sentence + 11.8 syllables to a word - 15.59 (Kincaid, Fishburne, Rogers and Chissom, "Derivation of New Readability
Formulas", Research Branch Report 8-75, 1975, from memory). It answers with a class of school in the United States.

Ease: 206.835 - 1.015 words to a sentence - 84.6 syllables to a word (Flesch, "A new readability yardstick", 1948, from memory); from 60 on
it is plain English.

Decided: syllables are counted by rule. Why: a dictionary of pronunciations is large and lacks the words of this trade; a rule is off by one
syllable now and then, which hardly moves the grade of a whole sheet.
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass

PER_SENTENCE, PER_SYLLABLE, BASE = 0.39, 11.8, 15.59
EASE, EASE_PER_SENTENCE, EASE_PER_SYLLABLE = 206.835, 1.015, 84.6

_WORD = re.compile(r"[^\W\d_][\w'’\-]*")
_END = re.compile(r"(?<=[.!?])[\"”’)]*\s+(?=[\"“‘(]?[A-Z0-9À-Þ])")
_VOWELS = re.compile(r"[aeiouy]+")
# `i` that only softens what is before it, as in lotion, special, cautious; `u` behind q or g, as in liquid, guide.
_UNHEARD = re.compile(r"(?<=[tscgx])i(?=o|a[lnt]|ou)|(?<=l)i(?=an)|(?<=[qg])u(?=[aeiy])")
# An `e` at an end that is not heard, also of a plural, of a past, and before another ending.
_SILENT = re.compile(r"(?<=[^aeiou])e(?=\b|ly\b|ful|ment|less)|(?<=[^aeioudt])e(?=d\b)|(?<=[^aeiousxzcg])(?<!ch)(?<!sh)e(?=s\b)")
# Where an end of `le` is heard, as in table.
_LE = re.compile(r"[^aeiouyl]les?\b")
# Neighbouring vowels that are two syllables, as in sodium, area, ingredient, drying, doing, fluid, react.
_APART = re.compile(r"i[ao]|iu|eo(?!p)|ua(?!r)|ui(?=d|ng)|ie(?=n[ct]|t\b|r\b)|y(?=ing|er)|oi(?=ng)|ei(?=ng)")
# Words of this trade that the rules count wrongly.
_KNOWN = {
    "recipe": 3, "recipes": 3, "safely": 2, "area": 3, "areas": 3, "idea": 3, "ideas": 3, "create": 2, "creates": 2, "created": 3,
    "stearic": 3, "people": 2, "every": 2, "everything": 3, "evenly": 3, "react": 2, "reacts": 2, "being": 2,
}  # fmt: skip


@dataclass(frozen=True)
class Reading:
    """What a text comes to: its sentences, words and syllables."""

    sentences: int
    words: int
    syllables: int

    @property
    def mean(self) -> float:
        """Return the words to a sentence. Raises ZeroDivisionError without a sentence."""
        return self.words / self.sentences

    @property
    def grade(self) -> float:
        """Return the grade of Flesch and Kincaid. Raises ZeroDivisionError without a word."""
        return PER_SENTENCE * self.mean + PER_SYLLABLE * self.syllables / self.words - BASE

    @property
    def ease(self) -> float:
        """Return the reading ease of Flesch. Raises ZeroDivisionError without a word."""
        return EASE - EASE_PER_SENTENCE * self.mean - EASE_PER_SYLLABLE * self.syllables / self.words


def words_of(text: str) -> list[str]:
    """Return the words of a text: what has letters; figures, signs and amounts such as `40` are none."""
    return _WORD.findall(text)


def sentences_of(text: str) -> list[str]:
    """Return the sentences of a text that is closed, each without what divides it from the next."""
    return [one for one in _END.split(" ".join(text.split())) if words_of(one)]


def syllables_of(word: str) -> int:
    """Count the syllables of an English word by its letters; at least one. A hyphen divides words."""
    parts = [part for part in re.split(r"[-'’]", word.casefold()) if part and part not in ("s", "t", "d")]
    return sum(map(_syllables, parts)) or 1


def _syllables(word: str) -> int:
    if word in _KNOWN:
        return _KNOWN[word]
    spoken = _UNHEARD.sub("", word if _LE.search(word) else _SILENT.sub("", word))
    return max(1, len(_VOWELS.findall(spoken)) + len(_APART.findall(spoken)))


def reading_of(sentences: Sequence[str], apart_from: frozenset[str] = frozenset()) -> Reading:
    """Count sentences, each of which is closed, without some words (folded)."""
    words = [word for sentence in sentences for word in words_of(sentence) if word.casefold() not in apart_from]
    return Reading(len(sentences), len(words), sum(map(syllables_of, words)))
