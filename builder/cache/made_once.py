"""What code and packages alone decide is made once for each version."""

from collections.abc import Callable
from pathlib import Path
from typing import TypeVar

from builder.cache.compiled import find, keep
from builder.cache.sums import with_code
from builder.sums import sum_of_files

T = TypeVar("T")


def made_once(kind: type[T], code: Path, make: Callable[[], T]) -> T:
    """Return a value of a kind that `make` makes, or made before. `code` is the file or folder of all code that decides what it is."""
    files = sum_of_files(code)
    key = with_code(f"{make.__module__}.{make.__qualname__} {files}") if files else None
    found = find(key) if key else None
    if isinstance(found, kind):
        return found
    made = make()
    if key:
        keep(key, made)
    return made
