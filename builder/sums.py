"""What files come to: one sum of all their paths and bytes, which another has only where nothing in them differs.

Decided: bytes are summed, not times and sizes. Why: it takes a hundredth of a second, and a figure changed twice in one tick of a clock
must not be missed.

Decided: SHA-256. Why: processors have instructions for it, with which it takes half as long as any other of its strength in the standard
library. Of what we have written ourselves a CRC-32 of each file is enough, which takes a third of that: nobody forges it, and of a billion
changes by chance not one is missed.
"""

import os
import time
from collections.abc import Collection
from hashlib import sha256
from pathlib import Path
from typing import Protocol
from zlib import crc32

# What is younger than this (seconds) as a run begins may have been changed while it was loaded.
SETTLED = 10
_BEGUN = time.time()
# Windows changes the ends of lines where it is not told.
_AS_BYTES = getattr(os, "O_BINARY", 0)


class _Sum(Protocol):
    def update(self, data: bytes, /) -> None: ...


class _AddFile(Protocol):
    def __call__(self, made: _Sum, path: str, shown: str, /) -> None: ...


class UntoldError(Exception):
    """There is no sum."""


def sum_of_files(folder: Path) -> str | None:
    """Return the sum of all files of a folder, under which one process knows it: the code of a process does not change.

    None where it cannot be told: a file cannot be read or is no plain file (a link may lead anywhere).
    """
    made = sha256()
    try:
        add(made, str(folder), "", add_bytes)
    except (OSError, UntoldError):
        return None
    return made.hexdigest()


def add(made: _Sum, path: str, shown: str, add_file: _AddFile, left_out: Collection[str] = ()) -> None:
    """Add a file, or a folder in the order of names: each path, and of a file what `add_file` adds."""
    if os.path.isdir(path):  # noqa: PTH112  a Path for each of hundreds would take twice as long
        _add_folder(made, path, shown, add_file, left_out)
    else:
        add_file(made, path, shown)


def _add_folder(made: _Sum, path: str, shown: str, add_file: _AddFile, left_out: Collection[str]) -> None:
    with os.scandir(path) as found:
        entries = sorted((one for one in found if one.name != "__pycache__" and one.path not in left_out), key=lambda one: one.name)
    made.update(_named(shown, len(entries), "/"))
    for entry in entries:
        if entry.is_symlink() or not (entry.is_dir() or entry.is_file()):
            raise UntoldError
        if entry.is_dir():
            _add_folder(made, entry.path, f"{shown}/{entry.name}", add_file, left_out)
        else:
            add_file(made, entry.path, f"{shown}/{entry.name}")


def add_bytes(made: _Sum, path: str, shown: str, *, loaded: bool = False) -> None:
    """Add the length and the bytes of a file. Raises UntoldError where it is `loaded` code that has just changed."""
    data = _bytes_of(path, loaded=loaded)
    made.update(_named(shown, len(data)))
    made.update(data)


def add_check(made: _Sum, path: str, shown: str) -> None:
    """Add the length of a file and its CRC-32."""
    data = _bytes_of(path)
    made.update(_named(shown, len(data), f" {crc32(data)}"))


def _bytes_of(path: str, *, loaded: bool = False) -> bytes:
    # Hundreds of files: what `open` makes of each takes twice as long.
    number = os.open(path, os.O_RDONLY | _AS_BYTES)
    try:
        status = os.fstat(number)
        if loaded:
            _refuse_young(status)
        data = os.read(number, status.st_size + 1)
        if len(data) != status.st_size:  # it has just changed, or is more than is read at once
            data += b"".join(iter(lambda: os.read(number, len(data) + 1), b""))
    finally:
        os.close(number)
    return data


def add_times(made: _Sum, path: str, shown: str) -> None:
    """Add the length of a file, where it lies and when it was changed. Raises UntoldError where that was just now."""
    status = os.stat(path)  # noqa: PTH116
    _refuse_young(status)
    made.update(_named(shown, status.st_size, f" {status.st_ino} {status.st_mtime_ns} {status.st_ctime_ns}"))


def _refuse_young(status: os.stat_result) -> None:
    if max(status.st_mtime, status.st_ctime) > _BEGUN - SETTLED:
        raise UntoldError


def _named(shown: str, number: int, more: str = "") -> bytes:
    return f"{len(shown)} {number} {shown}{more}".encode("utf-8", "surrogateescape")
