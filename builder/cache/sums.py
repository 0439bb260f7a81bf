"""The sum under which something is kept: of the bytes that it was read from, of the code that reads, and of what the code runs on.

Decided: bytes are summed, not times and sizes. Why: it takes a hundredth of a second, and a figure changed twice in one tick of a clock
must not be missed.

Decided: for a run our own code and what ships are known by their times, where these lie ten seconds back. Why: no change is missed so,
and to open 1,500 files takes twice as long as to ask for their times.

Decided: SHA-256. Why: processors have instructions for it, with which it takes half as long as any other sum of the standard library.
"""

import os
import sys
import time
from collections.abc import Collection, Iterator, Sequence
from functools import cache, partial
from hashlib import sha256
from pathlib import Path
from typing import Protocol

PACKAGE = Path(__file__).resolve().parents[1]
# All that takes part when content is read; a test holds that no other module of ours is loaded for it.
READS = ("cache", "model", "read", "rules", "words", "__init__.py", "pictures", "units.py")
# What is younger than this (seconds) as a run begins may have been changed while it was loaded.
SETTLED = 10
_BEGUN = time.time()
# Windows changes the ends of lines where it is not told.
_AS_BYTES = getattr(os, "O_BINARY", 0)
# How the sums of runs begin.
OF_RUNS = "run-"
# How those of what runs have worked out begin.
OF_RESULTS = "results-"
# Where systems have the libraries that set text: a folder changes when a library in it does.
SYSTEM = ("/lib", "/usr/lib", *map(str, Path("/usr/lib").glob("*-linux-gnu*")), "/usr/local/lib", "/opt/homebrew/lib")


class _Sum(Protocol):
    def update(self, data: bytes, /) -> None: ...


class _AddFile(Protocol):
    def __call__(self, made: _Sum, path: str, shown: str, /) -> None: ...


def sum_of(folder: Path) -> str | None:
    """Return the sum of all files of a folder, and of the code that reads it; None where one of them cannot be told."""
    files = sum_of_files(folder)
    return with_code(files) if files else None


def sum_of_files(folder: Path) -> str | None:
    """Return the sum of all files of a folder, under which one process knows it: the code of a process does not change.

    None where it cannot be told: a file cannot be read or is no plain file (a link may lead anywhere).
    """
    made = sha256()
    try:
        _add(made, str(folder), "", _add_bytes)
    except (OSError, _UntoldError):
        return None
    return made.hexdigest()


def with_code(files: str) -> str | None:
    """Return the sum under which every process knows what was read: that of files, and of the code. None where code has just changed."""
    try:
        return sha256(_sum_of_code() + files.encode()).hexdigest()
    except (OSError, _UntoldError):
        return None


class _UntoldError(Exception):
    """There is no sum."""


@cache
def _sum_of_what_ships(folders: tuple[Path, ...]) -> bytes:
    """Sum all of our code as it was loaded, and these folders, which are installed with it."""
    made = sha256()
    for folder in (PACKAGE, *folders):
        _add(made, str(folder), "", _add_times)
    return made.digest()


@cache
def _sum_of_python() -> bytes:
    """Sum the version of Python and the names of all packages, which hold their versions."""
    made = sha256(sys.version.encode())
    for name in sorted(name for folder in sys.path for name in _packages(folder)):
        made.update(name.encode("utf-8", "surrogateescape") + b"\0")
    return made.digest()


@cache
def _sum_of_code() -> bytes:
    """Sum the code that reads as it was loaded, and what it runs on."""
    made = sha256(_sum_of_python())
    for part in READS:
        _add(made, str(PACKAGE / part), part, partial(_add_bytes, loaded=True))
    return made.digest()


def _packages(folder: str) -> Iterator[str]:
    try:
        with os.scandir(folder or ".") as entries:
            yield from (entry.name for entry in entries if entry.name.endswith((".dist-info", ".egg-info")))
    except OSError:
        return  # no folder, such as an archive


def sum_of_run(
    words: Sequence[str], folders: Sequence[Path] = (), without: Collection[Path] = (), ships: tuple[Path, ...] = (), kind: str = OF_RUNS
) -> str | None:
    """Return the sum of all that a run depends on, under which its result is known.

    That is what was asked for, in `words`; every file of some folders, but for those `without`; all code, the folders that ship with it,
    Python and its packages; and when the system's own libraries were last changed. None where one of them cannot be told.
    """
    made = sha256()
    left_out = frozenset(os.path.realpath(path) for path in without)
    try:
        made.update(_sum_of_python())
        made.update(_sum_of_what_ships(ships))
        for text in (*words, *map(_changed, SYSTEM)):
            made.update(f"{len(text)} {text}".encode("utf-8", "surrogateescape"))
        for folder in folders:
            _add(made, os.path.realpath(folder), "", _add_bytes, left_out)
    except (OSError, _UntoldError):
        return None
    return f"{kind}{made.hexdigest()}"


def _changed(path: str) -> str:
    try:
        return f"{path} {os.stat(path).st_mtime_ns}"  # noqa: PTH116
    except OSError:
        return path


def _add(made: _Sum, path: str, shown: str, add_file: _AddFile, left_out: Collection[str] = ()) -> None:
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
            raise _UntoldError
        if entry.is_dir():
            _add_folder(made, entry.path, f"{shown}/{entry.name}", add_file, left_out)
        else:
            add_file(made, entry.path, f"{shown}/{entry.name}")


def _add_bytes(made: _Sum, path: str, shown: str, *, loaded: bool = False) -> None:
    """Add the length and the bytes of a file. Raises _UntoldError where it is `loaded` code that has just changed."""
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
    made.update(_named(shown, len(data)))
    made.update(data)


def _add_times(made: _Sum, path: str, shown: str) -> None:
    """Add the length of a file, where it lies and when it was changed. Raises _UntoldError where that was just now."""
    status = os.stat(path)  # noqa: PTH116
    _refuse_young(status)
    made.update(_named(shown, status.st_size, f" {status.st_ino} {status.st_mtime_ns} {status.st_ctime_ns}"))


def _refuse_young(status: os.stat_result) -> None:
    if max(status.st_mtime, status.st_ctime) > _BEGUN - SETTLED:
        raise _UntoldError


def _named(shown: str, number: int, more: str = "") -> bytes:
    return f"{len(shown)} {number} {shown}{more}".encode("utf-8", "surrogateescape")
