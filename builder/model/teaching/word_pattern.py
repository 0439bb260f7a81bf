"""A pattern of words of a table on prose, compiled (`rules/grammar/patterns.py`), and what of it a text must hold for it to be found."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from functools import cache, cached_property


@dataclass(frozen=True, eq=False)
class Stems:
    """The beginnings of words of which one must stand in a text. Each is made once, so that it is known by its identity.

    `begin_words`: each is the plain beginning of a word, and so stands only where a word of the text begins.
    """

    any_of: tuple[str, ...]
    begin_words: bool

    def __reduce__(self) -> tuple[Callable[..., Stems], tuple[tuple[str, ...], bool]]:
        """Return what it is made of, so that it is the same one in every process."""
        return stems_of, (self.any_of, self.begin_words)


@cache
def stems_of(any_of: tuple[str, ...], begin_words: bool) -> Stems:
    """Make it, once."""
    return Stems(any_of, begin_words)


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
