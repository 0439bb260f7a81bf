"""Values by their sums, as files of the user's cache folder. What is broken, foreign or of another sum is not found; nothing is raised.

A file is the sum of its bytes under the name that it bears, then the value. It is written under another name and put in place whole, so
that of two that write at once each finds a whole one.
"""

import hmac
import os
import pickle
import stat
from collections.abc import Callable
from contextlib import suppress
from secrets import token_hex

from builder.cache.folder import only_ours, open_folder
from builder.cache.sums import OF_RESULTS, OF_RUNS
from builder.cache.uncollected import uncollected

# So many files of each kind are left when one more has been written: a few versions, side by side. What a studio comes to may be large.
MOST = {OF_RUNS: 16, OF_RESULTS: 8, "": 16}
_SUM = 32


def _dumps(value: object) -> bytes:
    return pickle.dumps(value, protocol=5)


def find(key: str, loads: Callable[[memoryview], object] = pickle.loads) -> object | None:
    """Return the value kept under a sum; None where there is none that can be trusted."""
    with open_folder(make=False) as folder:
        data = _read(folder, key) if folder is not None else None
    if data is None or not hmac.compare_digest(data[:_SUM], _sum(key, data[_SUM:])):
        return None
    with suppress(Exception), uncollected():
        return loads(memoryview(data)[_SUM:])
    return None


def keep(key: str, value: object, dumps: Callable[[object], bytes] = _dumps) -> None:
    """Keep a value under a sum, where there is a folder for it."""
    with open_folder(make=True) as folder:
        if folder is None:
            return
        written = f"{token_hex(16)}.new"
        try:
            data = dumps(value)
            _write(folder, written, _sum(key, data), data)
            os.rename(written, key, src_dir_fd=folder, dst_dir_fd=folder)
            _tidy(folder)
        except Exception:  # of any kind: what was to be kept is in hand
            with suppress(OSError):
                os.unlink(written, dir_fd=folder)


def _read(folder: int, key: str) -> bytes | None:
    try:
        number = os.open(key, os.O_RDONLY | os.O_NOFOLLOW | os.O_NONBLOCK, dir_fd=folder)
    except OSError:
        return None
    with suppress(OSError), os.fdopen(number, "rb") as file:
        found = os.fstat(number)
        return file.read() if stat.S_ISREG(found.st_mode) and only_ours(found) else None
    return None


def _write(folder: int, name: str, *data: bytes) -> None:
    number = os.open(name, os.O_WRONLY | os.O_CREAT | os.O_EXCL | os.O_NOFOLLOW, 0o600, dir_fd=folder)
    with os.fdopen(number, "wb") as file:
        file.writelines(data)


def _tidy(folder: int) -> None:
    """Remove all but the newest files, those too that a broken run has left; the many of runs do not push out what took longer to make."""
    names = os.listdir(folder)
    newest = sorted(names, key=lambda name: os.stat(name, dir_fd=folder, follow_symlinks=False).st_mtime_ns, reverse=True)
    left = dict(MOST)
    for name in newest:
        kind = next(kind for kind in MOST if name.startswith(kind))
        left[kind] -= 1
        if left[kind] < 0:
            os.unlink(name, dir_fd=folder)


def _sum(key: str, data: bytes) -> bytes:
    return hmac.digest(key.encode(), data, "sha256")
