"""Where a word may be broken at the end of a line, by the patterns of a language.

Decided: pyphen. Why: it comes with the PDF engine, and holds the patterns that office programs break words by.
"""

from functools import lru_cache

import pyphen

# English: INCI names and names of products are English or Latin, which its patterns break as a reader expects.
LANGUAGE = "en_US"
LEAST = 3  # So many letters stand before a break and after it.


@lru_cache(2_000)
def breaks_of(word: str) -> tuple[int, ...]:
    """Give after how many letters a word may be broken with a hyphen, or without one behind a hyphen of its own; the last place first."""
    own = {at + 1 for at, letter in enumerate(word) if letter == "-"}
    places = {*own, *_patterns().positions(word)}
    return tuple(sorted((at for at in places if LEAST <= at <= len(word) - LEAST), reverse=True))


@lru_cache(1)
def _patterns() -> pyphen.Pyphen:
    return pyphen.Pyphen(lang=LANGUAGE, left=LEAST, right=LEAST)


def broken_at(word: str, at: int) -> tuple[str, str]:
    """Give the two parts of a word that is broken after so many letters."""
    first = word[:at]
    return (first if first.endswith("-") else f"{first}-"), word[at:]
