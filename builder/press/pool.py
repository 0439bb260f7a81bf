"""Many sheets at once: a process for each core where there are enough sheets to pay for starting them. The bytes are the same either way.

Forked processes pay from a few sheets on. Where processes are spawned (macOS, Windows) each imports everything anew: six take-home sheets
took 9.3 s in one process, 6.3 s in two forked ones and 14.8 s in two spawned ones on two busy cores. There are no more processes than half
the memory of the machine holds, where the system tells how much that is. A process ends by itself when the one that started it is gone.

Decided: each process has a pipe of its own, and nothing is shared: no queue, no lock, no thread of this process. Why: whenever the run is
stopped they are killed in the midst of what they do, and nothing is left that anybody waits for.
"""

import gc
import os
import signal
import sys
import threading
import traceback
from collections.abc import Iterator, Sequence
from contextlib import contextmanager, suppress
from multiprocessing import Pipe, get_all_start_methods, get_context, parent_process
from multiprocessing.connection import Connection, wait
from pathlib import Path

from builder.model.document import Document
from builder.press.folder import FolderError
from builder.press.kept import PressedSheet
from builder.press.sheets import Engine

START = "fork" if "fork" in get_all_start_methods() and os.uname().sysname == "Linux" else "spawn"
FEWEST_FOR_A_PROCESS = 2 if START == "fork" else 16
# Bytes that a process may come to need: those of the example need 220 MB.
MEMORY_OF_A_PROCESS = 300_000_000


def press_sheets(
    documents: Sequence[Document], studio_folder: Path, layout_folders: tuple[Path, ...]
) -> Iterator[tuple[Document, PressedSheet]]:
    """Make the PDF of each document, in any order, each as soon as it is done. Raises FolderError where a process ends before its sheet."""
    processes = min(_cores(), _held_by_memory(), len(documents) // FEWEST_FOR_A_PROCESS)
    if processes > 1:
        longest_first = sorted(documents, key=lambda document: (-len(document.html), document.path))
        with _started(processes, studio_folder, layout_folders) as presses:
            yield from _shared_out(longest_first, presses)
    elif documents:
        engine = Engine(studio_folder, layout_folders)
        for document in documents:
            yield document, engine.press(document)


@contextmanager
def _started(number: int, studio_folder: Path, layout_folders: tuple[Path, ...]) -> Iterator[list[Connection]]:
    """Start processes that press, and give our end of the pipe of each; in the end they are killed, whatever they are at."""
    process_of = get_context("fork").Process if START == "fork" else get_context("spawn").Process
    processes, presses = [], []
    try:
        for _ in range(number):
            ours, theirs = Pipe()
            process = process_of(target=_press_what_comes, args=(theirs, studio_folder, layout_folders), daemon=True)
            process.start()
            processes.append(process)
            presses.append(ours)
            theirs.close()
        yield presses
    finally:
        for process in processes:
            process.kill()
        for process in processes:
            process.join()
        for press in presses:
            press.close()


def _shared_out(documents: Sequence[Document], presses: Sequence[Connection]) -> Iterator[tuple[Document, PressedSheet]]:
    left, idle, pressing = iter(documents), list(presses), dict[Connection, Document]()
    done: list[tuple[Document, PressedSheet]] = []
    try:
        while True:
            for press, document in zip(idle, left, strict=False):
                press.send(document)
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


def _press_what_comes(documents: Connection, studio_folder: Path, layout_folders: tuple[Path, ...]) -> None:
    """Answer each document with its sheet, or with the error that kept it from being made, for as long as somebody asks."""
    # The terminal tells every process of a stop; the one that started this one decides.
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    threading.Thread(target=_end_with_the_parent, daemon=True).start()
    # What is here stays to the end: the collector need not look at it again and again.
    gc.freeze()
    gc.set_threshold(50_000, 20, 20)
    engine = Engine(studio_folder, layout_folders)
    with suppress(EOFError, ConnectionError):
        while True:
            documents.send(_answer(engine, documents.recv()))


def _answer(engine: Engine, document: Document) -> PressedSheet | Exception:
    try:
        return engine.press(document)
    except Exception as error:
        error.add_note(f"{document.path}: {traceback.format_exc()}")
        return error


def _end_with_the_parent() -> None:
    parent = parent_process()
    if parent is not None:
        parent.join()
        os._exit(1)


def _cores() -> int:
    """Return how many cores this process may use."""
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1


def _held_by_memory() -> int:
    """Return how many processes half the memory holds, at least one; no bound where the system does not tell."""
    try:
        return max(1, os.sysconf("SC_PHYS_PAGES") * os.sysconf("SC_PAGE_SIZE") // 2 // MEMORY_OF_A_PROCESS)
    except (AttributeError, OSError, ValueError):
        return sys.maxsize
