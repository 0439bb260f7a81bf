"""Many sheets at once: a process for each core where there are enough sheets to pay for starting them. The bytes are the same either way.

Forked processes pay from a few sheets on. Where processes are spawned (macOS, Windows) each imports everything anew: six take-home sheets
took 9.3 s in one process, 6.3 s in two forked ones and 14.8 s in two spawned ones on two busy cores. There are no more processes than half
the memory of the machine holds, where the system tells how much that is. A process ends by itself when the one that started it is gone, and
is ended when the run is stopped.
"""

import atexit
import gc
import os
import signal
import sys
import threading
from collections.abc import Iterator, Sequence
from concurrent.futures import Future, ProcessPoolExecutor, as_completed
from multiprocessing import active_children, get_all_start_methods, get_context, parent_process
from pathlib import Path

from builder.model.document import Document
from builder.press.kept import PressedSheet
from builder.press.sheets import Engine

START = "fork" if "fork" in get_all_start_methods() and os.uname().sysname == "Linux" else "spawn"
FEWEST_FOR_A_PROCESS = 2 if START == "fork" else 16
# Bytes that a process may come to need: those of the example need 220 MB.
MEMORY_OF_A_PROCESS = 300_000_000

# The engine of this process, where it is one of a pool.
_engine: Engine | None = None


def press_sheets(
    documents: Sequence[Document], studio_folder: Path, layout_folders: tuple[Path, ...]
) -> Iterator[tuple[Document, PressedSheet]]:
    """Make the PDF of each document, in any order, each as soon as it is done."""
    processes = min(_cores(), _held_by_memory(), len(documents) // FEWEST_FOR_A_PROCESS)
    pool = _pool(processes, studio_folder, layout_folders) if processes > 1 else None
    if pool is None:
        engine = Engine(studio_folder, layout_folders)
        for document in documents:
            yield document, engine.press(document)
        return
    longest_first = sorted(documents, key=lambda document: (-len(document.html), document.path))
    try:
        pending: dict[Future[PressedSheet], Document] = {pool.submit(_press, document): document for document in longest_first}
        for done in as_completed(pending):
            yield pending[done], done.result()
    except BaseException:
        # Whoever stops the run does not wait for the sheets that are in the press.
        pool.shutdown(wait=False, cancel_futures=True)
        for child in active_children():
            child.kill()
        raise
    pool.shutdown()


def _pool(processes: int, studio_folder: Path, layout_folders: tuple[Path, ...]) -> ProcessPoolExecutor | None:
    """Return the processes; None where the system has nothing by which they could wait for each other, as in a bare container."""
    try:
        return ProcessPoolExecutor(processes, get_context(START), _start, (studio_folder, layout_folders))
    except (OSError, ImportError, NotImplementedError):
        return None


def _start(studio_folder: Path, layout_folders: tuple[Path, ...]) -> None:
    global _engine
    # The terminal tells every process of a stop; the one that started this one decides.
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    threading.Thread(target=_end_with_the_parent, daemon=True).start()
    # What is here stays to the end: the collector need not look at it again and again.
    gc.freeze()
    gc.set_threshold(50_000, 20, 20)
    _engine = Engine(studio_folder, layout_folders)
    atexit.register(_put_away)


def _put_away() -> None:
    """Let go of the engine while what it needs for that is still there."""
    global _engine
    _engine = None
    gc.collect()


def _end_with_the_parent() -> None:
    parent = parent_process()
    if parent is not None:
        parent.join()
        os._exit(1)


def _press(document: Document) -> PressedSheet:
    assert _engine is not None
    return _engine.press(document)


def _cores() -> int:
    """Return how many cores this process may use."""
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1


def _held_by_memory() -> int:
    """Return how many processes half the memory holds, at least one; no bound where the system does not tell."""
    try:
        return max(1, os.sysconf("SC_PHYS_PAGES") * os.sysconf("SC_PAGE_SIZE") // 2 // MEMORY_OF_A_PROCESS)
    except (AttributeError, OSError, ValueError):
        return sys.maxsize
