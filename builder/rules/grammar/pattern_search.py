"""The search for patterns of words in a text, with most of them ruled out by the words that it holds."""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from functools import cached_property
from itertools import accumulate, chain

from builder.model.remembered import remembered
from builder.model.teaching.word_pattern import Stems, WordPattern
from builder.rules.grammar.patterns import LONGEST
from builder.words.fold import in_small_letters

_WORD = re.compile(r"\w+")


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
        words = {word[:LONGEST] for word in _WORD.findall(self.small)}
        return frozenset(chain.from_iterable(map(accumulate, words)))

    def has_any(self, stems: Stems) -> bool:
        """Tell whether one of some stems stands in it."""
        known = self.known.get(stems)
        if known is None:
            found = not self.beginnings.isdisjoint(stems.any_of) if stems.begin_words else any(stem in self.small for stem in stems.any_of)
            known = self.known[stems] = found
        return known

    def may_hold(self, pattern: WordPattern) -> bool:
        """Tell whether it holds a stem of each of the words of a pattern."""
        return all(map(self.has_any, pattern.needs))

    def search(self, pattern: WordPattern) -> re.Match[str] | None:
        """Return the first match of a pattern; None where it has none."""
        return pattern.regex.search(self.text) if self.may_hold(pattern) else None

    def find_all(self, pattern: WordPattern) -> Iterator[re.Match[str]]:
        """Yield every match of a pattern."""
        return pattern.regex.finditer(self.text) if self.may_hold(pattern) else iter(())


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
        return sorted({number for number, pattern in looked_at if words.may_hold(pattern)})


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
    return any(words.search(pattern) for pattern in possible_in(patterns, words))
