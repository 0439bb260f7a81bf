"""What ships and takes long to read or to measure, made once for all processes of a run: the others find it in the cache of the run."""

import fcntl
import os
from collections.abc import Callable
from pathlib import Path

from builder.fonts.typefaces import letters_of_fonts, typefaces_of_labels
from tests.studios import sound_studio
from tests.whole_run import SHARED

MAKES: tuple[Callable[[], object], ...] = (sound_studio, typefaces_of_labels, letters_of_fonts)


def make_ready(process: int) -> None:
    """Make all of it in the process of this number: each process begins with something else, and waits for what another is making."""
    first = process % len(MAKES)
    for make in (*MAKES[first:], *MAKES[:first]):
        with Path(os.environ[SHARED], f"{make.__name__}.lock").open("w") as lock:
            fcntl.flock(lock, fcntl.LOCK_EX)
            make()
