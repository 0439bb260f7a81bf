"""Words in a row, as in a sentence."""

from collections.abc import Iterable


def listed(words: Iterable[str], last: str = "and") -> str:
    """Join words: `a, b and c`."""
    *first, end = tuple(words) or ("",)
    return f"{', '.join(first)} {last} {end}" if first else end


def listed_once(words: Iterable[str]) -> str:
    """Join words, what stands twice once."""
    return listed(dict.fromkeys(words))
