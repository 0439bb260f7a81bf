"""A watch over what the program does to the machine: files written, connections, other programs, and how long it takes."""

import os
import signal
import sys
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from functools import cache
from pathlib import Path
from typing import Any

_WRITES = os.O_WRONLY | os.O_RDWR | os.O_CREAT | os.O_TRUNC | os.O_APPEND
_CHANGES = {"os.mkdir", "os.rename", "os.remove", "os.rmdir", "os.symlink", "os.link", "os.chmod", "os.chown", "os.truncate", "os.utime"}
_REACHES = ("socket.", "subprocess.", "os.system", "os.exec", "os.posix_spawn", "os.fork", "urllib.", "ftplib.", "http.", "webbrowser.")
_watch: "Watch | None" = None


class TooSlowError(BaseException):
    """More processor time went by than one studio may take. No `except Exception` swallows it."""


class Watch:
    """What was seen: breaches in words. Writing is allowed in the given folders alone."""

    def __init__(self, allowed: Sequence[Path]) -> None:
        self.allowed = tuple(str(one) for one in allowed)
        self.breaches: list[str] = []

    def see(self, event: str, arguments: tuple[Any, ...]) -> None:
        """Judge one event of the interpreter."""
        if event == "open":
            path, mode, flags = arguments
            if (isinstance(flags, int) and flags & _WRITES) or (isinstance(mode, str) and set(mode) & set("wax+")):
                self._write(path, event)
        elif event in _CHANGES:
            # The last argument of most of them is the open folder that a relative name stands in, or -1.
            self._write(arguments[0], event, arguments[-1] if event in ("os.remove", "os.rmdir", "os.mkdir", "os.rename") else -1)
        elif event.startswith(_REACHES) and not _is_of_this_machine(event, arguments):
            self.breaches.append(f"{event} {arguments!r:.200}")

    def _write(self, path: Any, event: str, within: int = -1) -> None:
        if isinstance(path, int) or path is None:
            return
        folder = Path(f"/proc/self/fd/{within}").readlink() if within >= 0 else Path()
        where = os.path.realpath(folder / os.fsdecode(path))
        is_compiled = "__pycache__" in where or (sys.pycache_prefix is not None and where.startswith(sys.pycache_prefix))
        if where != os.devnull and not is_compiled and not where.startswith(self.allowed):
            self.breaches.append(f"{event} {where}")


def _is_of_this_machine(event: str, arguments: tuple[Any, ...]) -> bool:
    """Tell whether a file is asked for by its address, as fonts are: no connection is made for it."""
    return event == "urllib.Request" and str(arguments[0]).startswith("file:///")


def _hook(event: str, arguments: tuple[Any, ...]) -> None:
    if _watch is not None:
        _watch.see(event, arguments)


@cache
def _begin_to_hear() -> None:
    """Hear of events from now on: that cannot be ended, and everything that follows in the process takes longer for it."""
    sys.addaudithook(_hook)


@contextmanager
def watched(allowed: Sequence[Path], seconds: float) -> Iterator[Watch]:
    """Watch what is done within, for so many seconds of processor time. Raises TooSlowError."""
    global _watch

    def too_slow(*_: object) -> None:
        raise TooSlowError

    _begin_to_hear()
    before = signal.signal(signal.SIGPROF, too_slow)
    signal.setitimer(signal.ITIMER_PROF, seconds)
    _watch = Watch([Path(one).resolve() for one in allowed])
    try:
        yield _watch
    finally:
        _watch = None
        signal.setitimer(signal.ITIMER_PROF, 0)
        signal.signal(signal.SIGPROF, before)
