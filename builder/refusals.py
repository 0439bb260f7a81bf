"""Why a command was not carried out, in words for the person who typed it."""

import sys
from collections.abc import Iterable
from typing import NoReturn

from builder.words.nearest import Meanings, did_you_mean


class CommandError(Exception):
    """What is wrong with the command itself, in words for the person who typed it."""


class NotDoneError(Exception):
    """What on this machine keeps a right command from being done, in words for the person who typed it."""


def no_such(kind: str, name: str, names: Iterable[str], where: str = "there is", meanings: Meanings | None = None) -> NoReturn:
    """Refuse a name that nothing of a kind has, and tell the nearest names. Raises CommandError."""
    raise CommandError(f'{where} no {kind} "{name}".{did_you_mean(name, list(names), meanings)}')


def not_loaded(error: ImportError) -> str:
    """Return in words what this machine lacks for the program to run, and what to do."""
    if (error.name or "").partition(".")[0] in sys.stdlib_module_names:
        whole = "Python from python.org, or with all its packages from your system, has it: set up again with that one."
        return f"this Python was built without `{error.name}`, so that nothing was done. {whole}"
    what = f"`{error.name.partition('.')[0]}`" if error.name else "something that it needs"
    return f"{what} cannot be loaded ({error}), so that nothing was done. Set up again, as `content/reference/installing.md` tells."
