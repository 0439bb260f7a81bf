"""An end to work that comes to none: after so much processor time an error is raised in the midst of it.

Decided: processor time, looked at from a thread beside the work. Why: a machine that has other things to do is slow and nobody's fault;
and signals reach the first thread alone, and not on every system.
"""

import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from ctypes import c_ulong, py_object, pythonapi

LOOKS_EACH = 0.2  # Seconds.


class TooLongError(BaseException):
    """It has taken more processor time than it may. No `except Exception` in what works swallows it."""


@contextmanager
def at_most(seconds: float) -> Iterator[None]:
    """Raise TooLongError in this thread, wherever it is at, once what is done within has taken so many seconds of processor time."""
    working, done, end = threading.get_ident(), threading.Event(), time.process_time() + seconds

    def look() -> None:
        while not done.wait(LOOKS_EACH):
            if time.process_time() > end:
                pythonapi.PyThreadState_SetAsyncExc(c_ulong(working), py_object(TooLongError))
                return

    looking = threading.Thread(target=look, daemon=True)
    looking.start()
    try:
        yield
    finally:
        done.set()
        looking.join()
