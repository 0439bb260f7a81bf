"""A pattern of words, as the tables of unsafe steps and of claims write it, and the search for it in a text.

    <pour> ... <water> <onto> <lye>

`<pour>` is one of the words of a group. `...` is a gap of at most six words, `...12` one of at most twelve. `word?` may be missing. `stir~`
is any form of a verb, `solidif*` any word that begins so, `lye!` that word itself and not "lye water", "lye jug". Articles and the like may
stand between any two words. Every other word may be a plural. Nothing depends on the case.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import cache, cached_property
from itertools import chain

from builder.model.remembered import remembered
from builder.words.fold import in_small_letters
from builder.words.spelling import american, british

GAP = 6
_BETWEEN = r"""(?:[\s,()"'“”‘’/]+(?:(?:the|a|an|some|all|of|any|your|our|their|its|this|that|these|those|each|every)\b[\s]+){0,3})"""
_GAP = r"""(?:[\s,()"'“”‘’/-]+[\w°%.’'-]+)"""
_NO_COMPOUND = (
    r"(?![\s-]+(?:water|solution|liquor|jug|pot|cup|bottle|bucket|pan|pitcher|beaker|container|tub|station|table|bench|mix|mixture|page|sheet|spoon"
    r"|step|label|bowl|concentration|amount|weight|calculation)s?\b)"
)
_VOWELS = "aeiou"
# Participles that no rule makes, of verbs that patterns look for; each begins as its verb does.
_DONE = {
    "beat": "beaten", "bend": "bent", "blow": "blown", "eat": "eaten",
    "give": "given", "shake": "shaken", "take": "taken", "throw": "thrown",
}  # fmt: skip
_WORD = re.compile(r"\w+")
_LONGEST = 40  # signs of a beginning that is remembered: a "word" of a whole file has too many others.
_BEGINNING = re.compile(rf"\w{{1,{_LONGEST}}}")
Groups = Mapping[str, tuple[str, ...]]


class PatternError(ValueError):
    """A pattern that names a group which nobody has defined."""


@dataclass(frozen=True, eq=False)
class Stems:
    """The beginnings of words of which one must stand in a text. Each is made once, so that it is known by its identity."""

    any_of: tuple[str, ...]

    @cached_property
    def begin_words(self) -> bool:
        """Tell whether each is the plain beginning of a word: a phrase begins with a word, so that it stands where one begins."""
        return all(map(_BEGINNING.fullmatch, self.any_of))

    def __reduce__(self) -> tuple[Callable[..., Stems], tuple[tuple[str, ...]]]:
        """Return what it is made of, so that it is the same one in every process."""
        return stems_of, (self.any_of,)


@cache
def stems_of(any_of: tuple[str, ...]) -> Stems:
    """Make it, once."""
    return Stems(any_of)


@dataclass(frozen=True)
class Words:
    """A text to look in. It remembers which stems it holds, so that most patterns are ruled out without a search."""

    text: str
    known: dict[Stems, bool] = field(default_factory=dict, compare=False, repr=False)

    @cached_property
    def small(self) -> str:
        """Return it in small letters, with one kind of space."""
        return in_small_letters(self.text.replace("-", " "))

    @cached_property
    def beginnings(self) -> frozenset[str]:
        """Return every beginning of every word in it, but none longer than a stem by which patterns are sorted."""
        words = {word[:_LONGEST] for word in _WORD.findall(self.small)}
        return frozenset(word[:end] for word in words for end in range(1, len(word) + 1))

    def has_any(self, stems: Stems) -> bool:
        """Tell whether one of some stems stands in it."""
        known = self.known.get(stems)
        if known is None:
            begins = stems.begin_words
            found = not self.beginnings.isdisjoint(stems.any_of) if begins else any(stem in self.small for stem in stems.any_of)
            known = self.known[stems] = found
        return known


@dataclass(frozen=True)
class WordPattern:
    """One pattern: as it is written, the expression that finds it, and for each of its words the stems of which one must be there."""

    written: str
    expression: str
    needs: tuple[Stems, ...]

    @cached_property
    def regex(self) -> re.Pattern[str]:
        """Compile the expression; most are never needed."""
        return re.compile(self.expression, re.IGNORECASE)

    def __reduce__(self) -> tuple[Callable[..., WordPattern], tuple[str, str, tuple[Stems, ...]]]:
        """Return what it is made of: a process that takes it over compiles it where it needs it, and not on reading it."""
        return WordPattern, (self.written, self.expression, self.needs)

    def search(self, words: Words) -> re.Match[str] | None:
        """Find it in a text."""
        return self.regex.search(words.text) if self.may_stand_in(words) else None

    def find_all(self, words: Words) -> Iterator[re.Match[str]]:
        """Find it wherever it stands in a text."""
        return self.regex.finditer(words.text) if self.may_stand_in(words) else iter(())

    def may_stand_in(self, words: Words) -> bool:
        """Tell whether a text holds a stem of each of its words."""
        return all(map(words.has_any, self.needs))


class PatternIndex:
    """The patterns of many rows of a table. A text is looked through once for all: by the words that it holds, most rows are ruled out."""

    def __init__(self, rows: Iterable[tuple[WordPattern, ...]]) -> None:
        """Sort the patterns by their rarest stems, and these by their letters."""
        self._by_stems: dict[Stems, list[tuple[int, WordPattern]]] = {}
        self._by_beginning: dict[str, list[Stems]] = {}
        self._always: list[tuple[int, WordPattern]] = []
        for number, patterns in enumerate(rows):
            for pattern in patterns:
                certain = [stems for stems in pattern.needs if stems.begin_words]
                rarest = min(certain, key=lambda stems: len(stems.any_of), default=None)
                (self._always if rarest is None else self._by_stems.setdefault(rarest, [])).append((number, pattern))
        for stems in self._by_stems:
            for stem in stems.any_of:
                self._by_beginning.setdefault(stem, []).append(stems)

    def possible(self, words: Words) -> list[int]:
        """Return the numbers of the rows of which a pattern may stand in a text, in order: all of which one does, and few others."""
        found = {stems for one in words.beginnings & self._by_beginning.keys() for stems in self._by_beginning[one]}
        looked_at = chain(self._always, *(self._by_stems[stems] for stems in found))
        return sorted({number for number, pattern in looked_at if pattern.may_stand_in(words)})


def possible_in(patterns: tuple[WordPattern, ...], words: Words) -> Iterable[WordPattern]:
    """Return those of some patterns that may stand in a text, in their order."""
    if len(patterns) < _MANY:
        return patterns
    return (patterns[number] for number in _index_of(patterns).possible(words))


# For fewer patterns than this looking through a text takes longer than trying them one by one.
_MANY = 8


@remembered(256)
def _index_of(patterns: tuple[WordPattern, ...]) -> PatternIndex:
    return PatternIndex((one,) for one in patterns)


def any_in(patterns: tuple[WordPattern, ...], words: Words) -> bool:
    """Tell whether one of some patterns is found in a text."""
    return any(pattern.search(words) for pattern in possible_in(patterns, words))


def compile_patterns(written: tuple[str, ...], groups: Groups) -> tuple[WordPattern, ...]:
    """Compile patterns; raise PatternError where one names an unknown group."""
    return tuple(compile_pattern(one, groups) for one in written)


def compile_pattern(written: str, groups: Groups) -> WordPattern:
    """Compile a pattern; raise PatternError where it names an unknown group."""
    made, gap = "", ""
    needs: list[Stems] = []
    for token in re.findall(r"<[^>]*>\??|\S+", written):
        if re.fullmatch(r"\.\.\.\d*", token):
            gap = rf"{_GAP}{{0,{int(token[3:] or GAP)}}}?"
            continue
        optional = token.endswith("?")
        word, stems = _any_of(tuple(_phrases(token.removesuffix("?"), groups)))
        between = gap + _BETWEEN if made else ""
        made += f"(?:{between}{word})?" if optional else between + word
        needs += [] if optional else [stems]
        gap = ""
    return WordPattern(written, made, tuple(needs))


@cache
def _any_of(phrases: tuple[str, ...]) -> tuple[str, Stems]:
    """Return the expression that finds one of some phrases, the longest first, and the stems of which one must be there."""
    alone = [phrase[:-1] for phrase in phrases if phrase.endswith("!")]
    others = [phrase for phrase in phrases if not phrase.endswith("!")]
    expression = "(?:" + "|".join([*([_one_of(others)] if others else []), *([_one_of(alone) + _NO_COMPOUND] if alone else [])]) + ")"
    return expression, stems_of(tuple(dict.fromkeys(map(_stem, phrases))))


def _phrases(token: str, groups: Groups) -> Iterator[str]:
    """Yield the phrases that a token stands for, in both spellings, those of groups within groups too."""
    if not token.startswith("<"):
        yield from dict.fromkeys((token, american(token), british(token)))
        return
    name = token[1:-1]
    if name not in groups:
        raise PatternError(name)
    for phrase in groups[name]:
        yield from _phrases(phrase, groups)


def _one_of(phrases: list[str]) -> str:
    """Return the expression that finds one of some phrases, the longest first; what all share stands once, so that it is soon compiled.

    So do the endings that words share: whichever word is found, all of it is.
    """
    alone: dict[str, list[str]] = {}
    others = []
    for phrase in sorted(dict.fromkeys(phrases), key=len, reverse=True):
        *before, (begin, ending) = map(_form, _parts(phrase))
        if before or not _BEGINNING.fullmatch(phrase.rstrip("*~")):
            others.append(r"[\s-]+".join([*(one + its for one, its in before), begin + ending]))
        else:
            alone.setdefault(ending, []).append(begin)
    words = [(begins[0] if len(begins) == 1 else f"(?:{'|'.join(begins)})") + ending for ending, begins in alone.items()]
    return r"\b(?:" + "|".join([*others, *words]) + r")(?!\w)"


def _parts(phrase: str) -> list[str]:
    return in_small_letters(phrase.replace("-", " ")).split(" ")


def _stem(phrase: str) -> str:
    """Return the longest beginning that all forms of a word of a phrase share: a text that holds the phrase holds it."""
    return max(map(_beginning, _parts(phrase.removesuffix("!"))), key=len)


def _beginning(word: str) -> str:
    return word[:-1] if word.endswith("*") else word[:-2] if word.endswith(("~", "y")) else word.replace("’", "'").partition("'")[0]


def _form(word: str) -> tuple[str, str]:
    """Return what all forms of a word begin with, and the expression of how they go on."""
    if word.endswith("*"):
        return re.escape(word[:-1]), r"\w*"
    if word.endswith("~"):
        return _verb(word[:-1])
    if word.endswith("y") and word[-2:-1] not in _VOWELS:
        return re.escape(word[:-1]), "(?:y|ies)"
    return re.escape(word).replace("'", "['’]"), r"(?:e?s)?"


def _verb(base: str) -> tuple[str, str]:
    if base in _DONE:
        return f"(?:{''.join(_regular(base))}|{_DONE[base]})", ""
    return _regular(base)


def _regular(base: str) -> tuple[str, str]:
    if base.endswith("e"):
        return re.escape(base[:-1]), "(?:e|es|ed|ing)"
    if base.endswith("y") and base[-2] not in _VOWELS:
        return re.escape(base[:-1]), "(?:y|ies|ied|ying)"
    return re.escape(base), f"(?:e?s|{re.escape(base[-1])}?(?:ed|ing))?"
