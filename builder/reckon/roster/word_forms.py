"""Texts as words that can be compared: small letters, no signs, one form for singular and plural."""

import re
from collections.abc import Iterator

Words = tuple[str, ...]
_SHORTEST = 4
_KEEPS_ITS_S = ("ss", "us", "is")
_WITH_ES = ("sses", "xes", "ches", "shes")


def words_of(text: str) -> Words:
    """Return the words of a text in the form in which they are compared; a sign alone is a word too."""
    found = re.findall(r"[^\W_]+", re.sub(r"['\u2019]s\b", "", text.casefold()))
    return tuple(_singular(word) for word in found) or tuple(text.split())


def _singular(word: str) -> str:
    if len(word) < _SHORTEST or word.endswith(_KEEPS_ITS_S):
        return word
    if word.endswith("ies"):
        return f"{word[:-3]}y"
    if word.endswith(_WITH_ES):
        return word[:-2]
    return word.removesuffix("s")


def runs_of(words: Words) -> Iterator[tuple[int, Words]]:
    """Yield every run of neighbouring words with where it begins, the longest first."""
    for length in range(len(words), 0, -1):
        for begin in range(len(words) - length + 1):
            yield begin, words[begin : begin + length]


def holds(words: Words, run: Words) -> bool:
    """Tell whether some words stand one after the other in others."""
    return any(words[begin : begin + len(run)] == run for begin in range(len(words)))
