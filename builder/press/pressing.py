"""What goes on in a process that presses: it answers documents with their sheets, as long as somebody asks.

Decided: who presses is changed after so many sheets, by a process beside it that never presses and so stays as small as it began. Why: the
PDF library loses 0.2 MB with each sheet, 0.4 MB with a long one, which nothing gives back but the end of a process.
"""

import gc
import os
import signal
import sys
import tempfile
import threading
import traceback
from collections.abc import Callable
from contextlib import suppress
from multiprocessing import get_context, parent_process
from multiprocessing.connection import Connection, wait
from multiprocessing.process import BaseProcess
from pathlib import Path

from builder.fonts.files import OF_A_RUN
from builder.model.document import Document
from builder.press.engine.sheets import Engine
from builder.press.kept import PressedSheet

# What is lost with so many, or with so many letters, is less than a tenth of the 110 MB that a process takes: the longest sheets of a large
# studio, which come first, would otherwise all fall to one. A change takes 0.2 s, a fiftieth of what they take.
SHEETS_OF_ONE, LETTERS_OF_ONE = 25, 250_000
# What is sent after the last document, and how a process ends that has been sent it.
NO_MORE = 2


def process_of(start: str, target: Callable[..., None], *args: object, daemon: bool = False) -> BaseProcess:
    """Return a process that is yet to be started, by forking or by spawning."""
    context = get_context("fork") if start == "fork" else get_context("spawn")
    return context.Process(target=target, args=args, daemon=daemon)


def of_this_run() -> dict[str, str]:
    """Return where this run has its fonts and what it puts aside, which a process that was started before it does not know."""
    return {name: os.environ[name] for name in OF_A_RUN if name in os.environ}


def keep_pressing(start: str, documents: Connection, studio_folder: Path, layout_folders: tuple[Path, ...]) -> None:
    """Start a process that presses what comes, and another once it has pressed its share, until there are no more or one has failed."""
    # The terminal tells every process of a stop; the one that started this one decides.
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    # What is here stays to the end: the collector need not look at it again and again.
    gc.freeze()
    parent = parent_process()
    assert parent is not None
    while parent.sentinel not in wait([documents, parent.sentinel]):
        process = process_of(start, _press_a_share, documents, studio_folder, layout_folders, daemon=True)
        process.start()
        if parent.sentinel in wait([process.sentinel, parent.sentinel]):
            return
        process.join()
        if process.exitcode:
            return


def _press_a_share(documents: Connection, studio_folder: Path, layout_folders: tuple[Path, ...]) -> None:
    """Answer so many documents, each with its sheet or with the error that kept it from being made."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    threading.Thread(target=_end_with_the_parent, daemon=True).start()
    gc.set_threshold(50_000, 20, 20)
    engine, pressed, letters = None, 0, 0
    with suppress(EOFError, ConnectionError):
        while pressed < SHEETS_OF_ONE and letters < LETTERS_OF_ONE:
            asked = documents.recv()
            if asked == NO_MORE:
                break
            of_the_run, document = asked
            pressed, letters = pressed + 1, letters + len(document.html)
            engine = engine or _engine(of_the_run, studio_folder, layout_folders)
            documents.send(_answer(engine, document))
            # Left to itself the collector lets some 10 MB of each sheet lie for long.
            gc.collect()
        else:
            return
    sys.exit(NO_MORE)


def _engine(of_the_run: dict[str, str], studio_folder: Path, layout_folders: tuple[Path, ...]) -> Engine:
    os.environ.update(of_the_run)
    tempfile.tempdir = of_the_run.get("TMPDIR")
    engine = Engine(studio_folder, layout_folders)
    gc.freeze()
    return engine


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
