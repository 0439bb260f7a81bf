"""The nearest names to one that nothing answers to, as a question at the end of a remedy: near in meaning first, then near in spelling."""

import re
from collections.abc import Iterable, Mapping
from difflib import SequenceMatcher, get_close_matches
from functools import lru_cache

from builder.words.fold import fold
from builder.words.listed import listed

Meanings = Mapping[str, tuple[str, ...]]
_CLOSE = 0.6
_SLIP = 0.8  # how much alike a word and the one that is meant are, and the fewest letters in which a slip is looked for
_LETTERS = 5
_WORD = re.compile(r"[^\W_]+")


def nearest(wrong: str, names: Iterable[str], most: int = 3, meanings: Meanings | None = None) -> tuple[str, ...]:
    """Return up to `most` of the names that are close to the wrong one, the closest first.

    `meanings` are the names that are meant by a folded word. Where no name that is spelled alike ends in the same thing (`2 oz tin`), those
    that do come before it. So do names that hold all of its words but for a slip (`lavander oil`: lavender essential oil); those that hold
    all of its words (`shea`) come after, and where there is none at all, those that hold the longest of several.
    """
    key = fold(wrong)
    return _nearest(key, tuple(sorted(names)), most, tuple(fold(name) for name in (meanings or {}).get(key, ())))


@lru_cache(maxsize=1000)
def _nearest(key: str, names: tuple[str, ...], most: int, meant: tuple[str, ...]) -> tuple[str, ...]:
    by_key = {fold(name): name for name in names}
    spelled = get_close_matches(key, by_key, n=most, cutoff=_CLOSE)
    alike = _same_thing(key, by_key) if len(key.split()) > 1 and not any(_last(one) == _last(key) for one in spelled) else []
    found = dict.fromkeys((*meant, *_with_a_slip(key, by_key), *alike, *spelled, *_holding(key, by_key)))
    found = found or dict.fromkeys(_of_the_longest_word(key, by_key))
    return tuple(by_key[one] for one in found if one in by_key)[: max(most, len(meant))]


def _last(key: str) -> str:
    return (key.split() or [""])[-1].removesuffix("s")


def _same_thing(key: str, keys: Iterable[str]) -> list[str]:
    """Return the names that end in the same word, the most alike first."""
    return sorted((one for one in keys if _last(one) == _last(key)), key=lambda one: -SequenceMatcher(None, key, one).ratio())


def _of_the_longest_word(key: str, keys: Iterable[str]) -> list[str]:
    """Return the names that hold the longest of several words (`2 oz mould`), the shortest first."""
    longest = max(_WORD.findall(key), key=len, default="")
    return sorted((one for one in keys if longest in _WORD.findall(one)), key=lambda one: (len(one), one)) if len(key.split()) > 1 else []


def _with_a_slip(key: str, keys: Iterable[str]) -> list[str]:
    """Return the names each of which holds every word, of the longer ones one that is spelled much alike, most alike as a whole first."""
    words = _WORD.findall(key)
    if not any(len(word) >= _LETTERS for word in words):
        return []
    found = (one for one in keys if all(any(_is_meant(word, other) for other in _WORD.findall(one)) for word in words))
    return sorted(found, key=lambda one: (-SequenceMatcher(None, key, one).ratio(), one))


def _is_meant(word: str, other: str) -> bool:
    if word == other or min(len(word), len(other)) < _LETTERS:
        return word == other
    return SequenceMatcher(None, word, other).ratio() >= _SLIP


def _holding(key: str, keys: Iterable[str]) -> list[str]:
    words = {word.removesuffix("s") for word in key.split()}
    return sorted((one for one in keys if words and words <= {word.removesuffix("s") for word in one.split()}), key=len)


def did_you_mean(wrong: str, names: Iterable[str], meanings: Meanings | None = None) -> str:
    """Return ` Did you mean "a" or "b"?`, or nothing where no name is close."""
    close = [f'"{name}"' for name in nearest(wrong, names, meanings=meanings)]
    return f" Did you mean {listed(close, 'or')}?" if close else ""
