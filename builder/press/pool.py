"""Many sheets at once: two processes from four documents on, one below. The bytes are the same either way."""

import gc
import os
import sys
from collections.abc import Iterator, Sequence
from concurrent.futures import Future, ProcessPoolExecutor, as_completed
from multiprocessing import get_context
from pathlib import Path

from builder.model.document import Document
from builder.press.sheets import Engine, PressedSheet

FEWEST_FOR_A_POOL = 4
MOST_PROCESSES = 2

# The engine of this process, where it is one of a pool.
_engine: Engine | None = None


def press_sheets(
    documents: Sequence[Document], studio_folder: Path, layout_folders: tuple[Path, ...]
) -> Iterator[tuple[Document, PressedSheet]]:
    """Make the PDF of each document, in any order, each as soon as it is done."""
    processes = min(MOST_PROCESSES, _cores())
    if len(documents) < FEWEST_FOR_A_POOL or processes < 2 or sys.platform != "linux":
        engine = Engine(studio_folder, layout_folders)
        for document in documents:
            yield document, engine.press(document)
        return
    longest_first = sorted(documents, key=lambda document: (-len(document.html), document.path))
    with ProcessPoolExecutor(processes, get_context("fork"), _start, (studio_folder, layout_folders)) as pool:
        pending: dict[Future[PressedSheet], Document] = {pool.submit(_press, document): document for document in longest_first}
        for done in as_completed(pending):
            yield pending[done], done.result()


def _start(studio_folder: Path, layout_folders: tuple[Path, ...]) -> None:
    global _engine
    # What is here stays to the end: the collector need not look at it again and again.
    gc.freeze()
    gc.set_threshold(50_000, 20, 20)
    _engine = Engine(studio_folder, layout_folders)


def _press(document: Document) -> PressedSheet:
    assert _engine is not None
    return _engine.press(document)


def _cores() -> int:
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1
