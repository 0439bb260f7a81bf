"""The nearest names to one that nothing answers to, as a question at the end of a remedy."""

from collections.abc import Iterable
from difflib import get_close_matches

from builder.words.fold import fold
from builder.words.listed import listed


def nearest(wrong: str, names: Iterable[str], most: int = 3) -> tuple[str, ...]:
    """Give up to `most` of the names that are close to the wrong one, the closest first."""
    by_key = {fold(name): name for name in sorted(names)}
    return tuple(by_key[key] for key in get_close_matches(fold(wrong), by_key, n=most, cutoff=0.6))


def did_you_mean(wrong: str, names: Iterable[str]) -> str:
    """Give ` Did you mean "a" or "b"?`, or nothing where no name is close."""
    close = [f'"{name}"' for name in nearest(wrong, names)]
    return f" Did you mean {listed(close, 'or')}?" if close else ""
