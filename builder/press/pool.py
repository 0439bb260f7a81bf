"""Many sheets at once: a process for each core where there are enough sheets to pay for starting them. The bytes are the same either way.

Forked processes pay from a few sheets on. Where processes are spawned (macOS, Windows) each imports everything anew: six take-home sheets
took 9.3 s in one process, 6.3 s in two forked ones and 14.8 s in two spawned ones on two busy cores. There are no more processes than half
the memory of the machine holds, where the system tells how much that is. A process ends by itself when the one that started it is gone.

Decided: each process has a pipe of its own, and nothing is shared: no queue, no lock, no thread of this process. Why: whenever the run is
stopped they are killed in the midst of what they do, and nothing is left that anybody waits for.

Decided: where processes are forked, a publication starts them before it reads anything. Why: a forked process holds all that the one held
that it came from, and that grows with the studio.
"""

import os
import sys
from collections.abc import Iterator, Sequence
from contextlib import ExitStack, contextmanager, suppress
from functools import cached_property
from multiprocessing import Pipe, get_all_start_methods
from multiprocessing.connection import Connection, wait
from pathlib import Path

from builder.model.document import Document
from builder.press.engine.sheets import Engine
from builder.press.folder import FolderError
from builder.press.kept import PressedSheet
from builder.press.pressing import NO_MORE, keep_pressing, of_this_run, process_of

START = "fork" if "fork" in get_all_start_methods() and os.uname().sysname == "Linux" else "spawn"
FEWEST_FOR_A_PROCESS = 2 if START == "fork" else 16
# Bytes that a process may come to need: those of the example need 140 MB.
MEMORY_OF_A_PROCESS = 200_000_000


class Presses:
    """What presses the sheets of one studio: processes that are started when there is first enough for them, and go with the `stack`."""

    def __init__(self, studio_folder: Path, layout_folders: tuple[Path, ...], stack: ExitStack) -> None:
        """Set up for a studio, whose pictures sheets may show, and for the folders that hold styles."""
        self._folders = studio_folder, layout_folders
        self._stack = stack
        self._started: list[Connection] = []

    def start_early(self) -> None:
        """Start them now where they are forked: they hold what this process holds now, and nothing that it reads later."""
        if START == "fork":
            self._start(sys.maxsize)

    def press(self, documents: Sequence[Document]) -> Iterator[tuple[Document, PressedSheet]]:
        """Make the PDF of each document, in any order, each as soon as it is done.

        Raises FolderError where a process ends before its sheet.
        """
        paying = len(documents) // FEWEST_FOR_A_PROCESS
        self._start(paying)
        if min(paying, len(self._started)) > 1:
            longest_first = sorted(documents, key=lambda document: (-len(document.html), document.path))
            yield from _shared_out(longest_first, self._started[:paying])
        else:
            for document in documents:
                yield document, self._engine.press(document)

    def _start(self, most: int) -> None:
        number = min(_cores(), _held_by_memory(), most)
        if number > 1 and not self._started:
            self._started = self._stack.enter_context(_started(number, *self._folders))

    @cached_property
    def _engine(self) -> Engine:
        return Engine(*self._folders)


@contextmanager
def presses(studio_folder: Path, layout_folders: tuple[Path, ...], *, early: bool = False) -> Iterator[Presses]:
    """Yield what presses the sheets of a studio, with `early` its processes too; in the end none of these is left, whatever they are at."""
    with ExitStack() as stack:
        made = Presses(studio_folder, layout_folders, stack)
        if early:
            made.start_early()
        yield made


@contextmanager
def _started(number: int, studio_folder: Path, layout_folders: tuple[Path, ...]) -> Iterator[list[Connection]]:
    """Start so many that press, and give our end of the pipe of each; in the end there is none of them left."""
    with ExitStack() as stack:
        yield [stack.enter_context(_one_started(studio_folder, layout_folders)) for _ in range(number)]


@contextmanager
def _one_started(studio_folder: Path, layout_folders: tuple[Path, ...]) -> Iterator[Connection]:
    """Start one that presses, and give our end of its pipe. Where all has gone well it ends by itself; else it is killed at once."""
    ours, theirs = Pipe()
    process = process_of(START, keep_pressing, START, theirs, studio_folder, layout_folders)
    with theirs:
        process.start()
    try:
        yield ours
        with suppress(ConnectionError):
            ours.send(NO_MORE)
    except BaseException:
        process.kill()
        raise
    finally:
        # The pipe ends when nobody is left at its other end.
        with suppress(EOFError, OSError):
            while True:
                ours.recv_bytes()
        process.join()
        ours.close()


def _shared_out(documents: Sequence[Document], presses: Sequence[Connection]) -> Iterator[tuple[Document, PressedSheet]]:
    left, idle, pressing = iter(documents), list(presses), dict[Connection, Document]()
    done: list[tuple[Document, PressedSheet]] = []
    try:
        while True:
            for press, document in zip(idle, left, strict=False):
                press.send((of_this_run(), document))
                pressing[press] = document
            yield from done
            if not pressing:
                return
            ready = wait(list(pressing))
            idle = [press for press in pressing if press in ready]
            done = [(pressing.pop(press), _sheet_of(press.recv())) for press in idle]
    except (EOFError, ConnectionError) as error:
        raise FolderError("A process that presses sheets has ended before its sheet was done.", ENDED) from error


def _sheet_of(answer: PressedSheet | Exception) -> PressedSheet:
    if isinstance(answer, Exception):
        raise answer
    return answer


ENDED = "Most often the machine had no memory left: close what else runs, and publish again."


def _cores() -> int:
    """Return how many cores this process may use."""
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1


def _held_by_memory() -> int:
    """Return how many processes half the memory holds, at least one; no bound where the system does not tell."""
    try:
        return max(1, os.sysconf("SC_PHYS_PAGES") * os.sysconf("SC_PAGE_SIZE") // 2 // MEMORY_OF_A_PROCESS)
    except (AttributeError, OSError, ValueError):
        return sys.maxsize
