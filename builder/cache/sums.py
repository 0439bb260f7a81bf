"""The sum under which something is kept: of the bytes that it was read from, of the code that reads, and of what the code runs on.

Decided: for a run our own code and what ships are known by their times, where these lie ten seconds back. Why: no change is missed so,
and to open 1,500 files takes twice as long as to ask for their times.
"""

import os
import sys
from collections.abc import Collection, Iterator, Sequence
from functools import cache, partial
from hashlib import sha256
from pathlib import Path

from builder.sums import UntoldError, add, add_bytes, add_check, add_times, sum_of_files

PACKAGE = Path(__file__).resolve().parents[1]
# All that takes part when content is read; a test holds that no other module of ours is loaded for it.
READS = ("cache", "model", "read", "rules", "words", "__init__.py", "pictures", "sums.py", "units.py")
# How the sums of runs begin.
OF_RUNS = "run-"
# How those of what runs have worked out begin.
OF_RESULTS = "results-"
# Where systems have the libraries that set text: a folder changes when a library in it does.
SYSTEM = ("/lib", "/usr/lib", *map(str, Path("/usr/lib").glob("*-linux-gnu*")), "/usr/local/lib", "/opt/homebrew/lib")


def sum_of(folder: Path) -> str | None:
    """Return the sum of all files of a folder, and of the code that reads it; None where one of them cannot be told."""
    files = sum_of_files(folder)
    return with_code(files) if files else None


def with_code(files: str) -> str | None:
    """Return the sum under which every process knows what was read: that of files, and of the code. None where code has just changed."""
    try:
        return sha256(_sum_of_code() + files.encode()).hexdigest()
    except (OSError, UntoldError):
        return None


@cache
def _sum_of_what_ships(folders: tuple[Path, ...]) -> bytes:
    """Sum all of our code as it was loaded, and these folders, which are installed with it."""
    made = sha256()
    for folder in (PACKAGE, *folders):
        add(made, str(folder), "", add_times)
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
        add(made, str(PACKAGE / part), part, partial(add_bytes, loaded=True))
    return made.digest()


def _packages(folder: str) -> Iterator[str]:
    try:
        with os.scandir(folder or ".") as entries:
            yield from (entry.name for entry in entries if entry.name.endswith((".dist-info", ".egg-info")))
    except OSError:
        return  # no folder, such as an archive


def sum_of_run(
    words: Sequence[str],
    folders: Sequence[Path] = (),
    without: Collection[Path] = (),
    written: Sequence[Path] = (),
    ships: tuple[Path, ...] = (),
    kind: str = OF_RUNS,
) -> str | None:
    """Return the sum of all that a run depends on, under which its result is known.

    That is what was asked for, in `words`; every file of some folders, but for those `without`, and of folders that were `written` by
    a run before; all code, the folders that ship with it, Python and its packages; and when the system's own libraries were last changed.
    None where one of them cannot be told.
    """
    made = sha256()
    left_out = frozenset(os.path.realpath(path) for path in without)
    try:
        made.update(_sum_of_python())
        made.update(_sum_of_what_ships(ships))
        for text in (*words, *map(_changed, SYSTEM)):
            made.update(f"{len(text)} {text}".encode("utf-8", "surrogateescape"))
        for folder in folders:
            add(made, os.path.realpath(folder), "", add_bytes, left_out)
        for folder in written:
            add(made, os.path.realpath(folder), "", add_check, left_out)
    except (OSError, UntoldError):
        return None
    return f"{kind}{made.hexdigest()}"


def _changed(path: str) -> str:
    try:
        return f"{path} {os.stat(path).st_mtime_ns}"  # noqa: PTH116
    except OSError:
        return path
