"""Where a word may be broken at the end of a line, by the patterns of its own language.

Decided: pyphen. Why: it comes with the PDF engine, and holds the patterns that office programs break words by, for some fifty languages.

Decided: a word is broken by the patterns of its own language; of a language without patterns, and of a text in several, only behind its own
hyphens. Why: French broken as if it were English reads as a mistake. INCI names are English or Latin, which English patterns break as a
reader expects.

Decided: no break beside an apostrophe. Why: no language that labels carry has one there (usage of French and English, from memory).
"""

from functools import lru_cache

import pyphen

LEAST = 3  # So many letters stand before a break and after it.
_APOSTROPHES = "'\u2019"


@lru_cache(2_000)
def breaks_of(word: str, locale: str) -> tuple[int, ...]:
    """Return after how many letters a word may be broken with a hyphen, or without one behind a hyphen of its own; the last place first.

    `locale` is that of the language that it is in, such as `fr_CA`; empty where that is not known.
    """
    own = {at + 1 for at, letter in enumerate(word) if letter == "-"}
    patterns = _patterns(locale)
    places = {*own, *(patterns.positions(word) if patterns else ())}
    return tuple(sorted((at for at in places if _may_break(word, at)), reverse=True))


def has_patterns(locale: str) -> bool:
    """Tell whether words of a language can be broken."""
    return _patterns(locale) is not None


def _may_break(word: str, at: int) -> bool:
    return LEAST <= at <= len(word) - LEAST and word[at - 1] not in _APOSTROPHES and word[at] not in _APOSTROPHES


@lru_cache(8)
def _patterns(locale: str) -> pyphen.Pyphen | None:
    """Return the patterns of a locale, or of its language in another country; None where there are none."""
    known = pyphen.language_fallback(locale) if locale else None
    return pyphen.Pyphen(lang=known, left=LEAST, right=LEAST) if known else None


def broken_at(word: str, at: int) -> tuple[str, str]:
    """Return the two parts of a word that is broken after so many letters."""
    first = word[:at]
    return (first if first.endswith("-") else f"{first}-"), word[at:]
