"""Words in a row, as in a sentence."""

from collections.abc import Iterable, Sequence

from builder.words.say import message, say

# How the last of a row stands beside all before it, which commas part.
_LAST = {"and": message("{first} and {last}"), "or": message("{first} or {last}")}


def listed(words: Iterable[str], last: str = "and") -> str:
    """Join words: `a, b and c`."""
    *first, end = tuple(words) or ("",)
    return say(_LAST[last], first=", ".join(first), last=end) if first else end


def first_in_quotes(names: Sequence[str]) -> str:
    """Join the first few names of which one is wanted, in quotes: `"a" or "b"`."""
    return " or ".join(f'"{name}"' for name in names[:3])


def listed_once(words: Iterable[str]) -> str:
    """Join words, what stands twice once."""
    return listed(dict.fromkeys(words))
