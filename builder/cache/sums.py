"""The sum under which something is kept: of the bytes that it was read from, of the code that reads, and of what the code runs on.

Decided: bytes are summed, not times and sizes. Why: it takes a hundredth of a second, and a figure changed twice in one tick of a clock
must not be missed.
"""

import os
import sys
import time
from collections.abc import Iterator
from functools import cache
from hashlib import blake2b
from pathlib import Path
from typing import Protocol

PACKAGE = Path(__file__).resolve().parents[1]
# All that takes part when content is read; a test holds that no other module of ours is loaded for it.
READS = ("cache", "model", "read", "rules", "words", "__init__.py", "pictures.py", "units.py")
# Code younger than this (seconds) when it was loaded may have been changed while it was.
SETTLED = 10
_BEGUN = time.time()


class _Sum(Protocol):
    def update(self, data: bytes, /) -> None: ...


def sum_of(folder: Path) -> str | None:
    """Give the sum of all files of a folder, and of the code that reads it; None where one of them cannot be told."""
    files = sum_of_files(folder)
    return with_code(files) if files else None


def sum_of_files(folder: Path) -> str | None:
    """Give the sum of all files of a folder, under which one process knows it: the code of a process does not change.

    None where it cannot be told: a file cannot be read or is no plain file (a link may lead anywhere).
    """
    made = blake2b(digest_size=32)
    try:
        _add(made, str(folder), "")
    except (OSError, _UntoldError):
        return None
    return made.hexdigest()


def with_code(files: str) -> str | None:
    """Give the sum under which every process knows what was read: that of files, and of the code. None where code has just changed."""
    try:
        return blake2b(_sum_of_code() + files.encode(), digest_size=32).hexdigest()
    except (OSError, _UntoldError):
        return None


class _UntoldError(Exception):
    """There is no sum."""


@cache
def _sum_of_code() -> bytes:
    """Sum the code as it was loaded, with the version of Python and the names of all packages, which hold their versions."""
    made = blake2b(digest_size=32)
    made.update(sys.version.encode())
    for name in sorted(name for folder in sys.path for name in _packages(folder)):
        made.update(name.encode("utf-8", "surrogateescape") + b"\0")
    for part in READS:
        _add(made, str(PACKAGE / part), part, changed_before=_BEGUN - SETTLED)
    return made.digest()


def _packages(folder: str) -> Iterator[str]:
    try:
        with os.scandir(folder or ".") as entries:
            yield from (entry.name for entry in entries if entry.name.endswith((".dist-info", ".egg-info")))
    except OSError:
        return  # no folder, such as an archive


def _add(made: _Sum, path: str, shown: str, changed_before: float | None = None) -> None:
    """Add a file, or a folder in the order of names: each path with its length and bytes."""
    if not os.path.isdir(path):  # noqa: PTH112  hundreds of them: a Path for each would take twice as long
        _add_file(made, path, shown, changed_before)
        return
    with os.scandir(path) as found:
        entries = sorted(found, key=lambda entry: entry.name)
    for entry in entries:
        if entry.name == "__pycache__":
            continue
        if entry.is_symlink() or not (entry.is_dir() or entry.is_file()):
            raise _UntoldError
        _add(made, entry.path, f"{shown}/{entry.name}", changed_before)


def _add_file(made: _Sum, path: str, shown: str, changed_before: float | None) -> None:
    with open(path, "rb", buffering=0) as file:  # noqa: PTH123
        if changed_before is not None and os.fstat(file.fileno()).st_ctime > changed_before:
            raise _UntoldError
        data = file.read()
    made.update(f"{len(shown)} {len(data)} {shown}".encode("utf-8", "surrogateescape"))
    made.update(data)
