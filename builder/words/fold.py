"""The one form in which names are compared."""

from functools import lru_cache

from builder.words.spelling import british


def fold(text: str) -> str:
    """Return a text in small letters and British spelling, each run of spaces as one space, none at its ends."""
    return _folded_name(text) if len(text) <= _NAME else _folded(text)


def in_small_letters(text: str) -> str:
    """Return a text in small letters with single spaces, its spelling as it is: for looking in prose, where places count."""
    return " ".join(text.split()).casefold()


def _folded(text: str) -> str:
    return british(in_small_letters(text))


# Names are compared again and again; what is longer than this is a text.
_NAME = 80
_folded_name = lru_cache(maxsize=16_384)(_folded)
