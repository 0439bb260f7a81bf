"""Consoles that print a studio's text as it is written."""

import sys
import unicodedata

from rich.console import Console
from rich.text import Text

_TAB = 4


def open_console(*, error: bool = False, width: int | None = None) -> Console:
    """Open stdout or stderr. `width` holds where the output is not a terminal; without it no line is folded there."""
    stream = sys.stderr if error else sys.stdout
    return Console(stderr=error, markup=False, emoji=False, highlight=False, width=None if stream.isatty() else width)


def say(console: Console, *parts: str | Text) -> None:
    """Print a line that is never folded or cut: a program may read it."""
    console.print(Text.assemble(*(plain(part) if isinstance(part, str) else part for part in parts)), soft_wrap=True)


def styled(text: str, style: str) -> Text:
    """Return a text in a style."""
    return Text(plain(text), style)


def plain(text: str) -> str:
    """Return a text without signs that move the cursor, change its direction or ring the bell."""
    return "".join(_shown(sign) for sign in text)


def _shown(sign: str) -> str:
    if sign == "\t":
        return " " * _TAB
    if sign.isprintable() or sign == "\n":
        return sign
    return " " if unicodedata.category(sign) in ("Zs", "Zl", "Zp") else "\N{REPLACEMENT CHARACTER}"
