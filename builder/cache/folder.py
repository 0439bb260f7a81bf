"""The program's folder in the user's cache: where each system has it, the user's own, and closed to everybody else.

As the XDG Base Directory Specification 0.8 says: `XDG_CACHE_HOME`, else `.cache` in the home folder; a path that is not absolute is passed
over. On macOS `Library/Caches`, as Apple's File System Programming Guide says.
"""

import os
import stat
import sys
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

NAME = "stillroom"


def cache_folder() -> Path | None:
    """Return the path, whether or not it is there; None where there is no home."""
    stated = Path(os.environ.get("XDG_CACHE_HOME", ""))
    if stated.is_absolute():
        return stated / NAME
    try:
        home = Path.home()
    except RuntimeError:
        return None
    usual = home / "Library" / "Caches" if sys.platform == "darwin" else home / ".cache"
    return usual / NAME if home.is_absolute() else None


@contextmanager
def open_folder(make: bool) -> Iterator[int | None]:
    """Open the folder, and make it first if it may be made; None where it is not there or is not ours alone."""
    number = None
    with suppress(OSError, ValueError):
        number = _open(make)
    try:
        yield number
    finally:
        if number is not None:
            os.close(number)


def only_ours(found: os.stat_result) -> bool:
    """Tell whether a file or folder is the user's, and nobody else may write to it or look into it."""
    return found.st_uid == os.geteuid() and not found.st_mode & (stat.S_IRWXG | stat.S_IRWXO)


def _open(make: bool) -> int | None:
    path = cache_folder() if hasattr(os, "geteuid") else None
    if path is None:
        return None
    if make and not path.is_dir() and _may_be_made(path):
        path.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
        with suppress(FileExistsError):
            path.mkdir(mode=0o700)
    number = os.open(path, os.O_RDONLY | os.O_DIRECTORY | os.O_NOFOLLOW)
    if only_ours(os.fstat(number)):
        return number
    os.close(number)
    return None


def _may_be_made(path: Path) -> bool:
    """Tell whether a folder may be made there: not by root in somebody's home, who could not use it afterwards."""
    above = next(one for one in path.parents if one.exists())
    return os.geteuid() != 0 or above.stat().st_uid == 0
