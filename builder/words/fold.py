"""The one form in which names are compared."""

from functools import lru_cache


def fold(text: str) -> str:
    """Give a text in small letters, each run of spaces as one space, none at its ends."""
    return _folded_name(text) if len(text) <= _NAME else _folded(text)


def _folded(text: str) -> str:
    return " ".join(text.split()).casefold()


# Names are compared again and again; what is longer than this is a text.
_NAME = 80
_folded_name = lru_cache(maxsize=16_384)(_folded)
