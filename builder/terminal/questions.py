"""Questions to who sits at the terminal: one line each, what holds without an answer in brackets, and asked again until it can be read."""

from collections.abc import Callable, Iterable
from typing import TypeVar

from builder.refusals import CommandError
from builder.terminal.consoles import open_console, say

T = TypeVar("T")


def show(lines: Iterable[str]) -> None:
    """Show lines that a question is about."""
    console = open_console(error=True)
    for line in lines:
        say(console, line)


def ask(question: str, read: Callable[[str], T], usual: str = "") -> T:
    """Ask until `read` makes something of the answer; it raises ValueError with what is wrong and what to write. Empty means the usual."""
    console = open_console(error=True)
    while True:
        say(console, f"{question}{f' [{usual}]' if usual else ''}")
        try:
            answer = input("> ").strip() or usual
        except EOFError:
            raise CommandError("the answers ended before the questions; nothing was written") from None
        try:
            return read(answer)
        except ValueError as error:
            say(console, f"  {error}")
