"""Why a command was not carried out, in words for the person who typed it."""

from collections.abc import Iterable
from typing import NoReturn

from builder.words.nearest import Meanings, did_you_mean


class CommandError(Exception):
    """What is wrong with the command itself, in words for the person who typed it."""


class NotDoneError(Exception):
    """What on this machine keeps a right command from being done, in words for the person who typed it."""


def no_such(kind: str, name: str, names: Iterable[str], where: str = "there is", meanings: Meanings | None = None) -> NoReturn:
    """Return in words that nothing of a kind has a name, and which names are near."""
    raise CommandError(f'{where} no {kind} "{name}".{did_you_mean(name, list(names), meanings)}')
