"""Pages of the reference, and a finding explained, on stdout."""

import re
from collections.abc import Iterator
from pathlib import Path
from textwrap import wrap

from builder.model.document import Folder
from builder.reference import Explanation, Page
from builder.terminal.consoles import open_console, say

_WIDEST = 100
_LINK = re.compile(r"\[([^\]]+)\]\([^)]*\)")
_RULE = re.compile(r"\|(?:\s*:?-+:?\s*\|)+\s*")
_ITEM = re.compile(r"(?:- |\d+\. |#)")


def print_page(page: Page) -> None:
    """Print a page of the reference."""
    console = open_console(width=_WIDEST)
    for line in plain_lines(page.text, min(console.width, _WIDEST)):
        say(console, line)


def print_explanation(explanation: Explanation) -> None:
    """Print what a finding means and how it is shown."""
    console = open_console(width=_WIDEST)
    told = f"{explanation.kind.means} {explanation.holds_back} {explanation.may_be_accepted}"
    lines = [explanation.kind.name, "", *wrap(told.replace("`", ""), min(console.width, _WIDEST))]
    for heading, text in (("For example:", explanation.shown), ("Sound is:", explanation.sound)):
        if text:
            lines += ["", heading, "", *(f"    {line}" for line in text.split("\n"))]
    for line in lines:
        say(console, line)


def print_written(pages: int, folder: Path) -> None:
    """Print where the pages were written."""
    say(open_console(), f"Wrote {pages} pages to {folder / Folder.SITE.value}/.")


def plain_lines(markdown: str, width: int) -> Iterator[str]:
    """Yield a text without its marks, its paragraphs and items wrapped; examples stay as they are."""
    waiting: list[str] = []
    rows: list[str] = []
    in_example = False
    for line in (*markdown.split("\n"), ""):
        is_row = not in_example and line.startswith("|")
        if rows and not is_row:
            yield from _table(rows, width)
            rows = []
        begins = is_row or in_example or not line.strip() or line.startswith(("    ", "```")) or _ITEM.match(line)
        if begins and waiting:
            yield from _wrapped(" ".join(waiting), width)
            waiting = []
        if is_row:
            rows.append(line)
        elif line.startswith("```"):
            in_example = not in_example
        elif in_example:
            yield f"    {line}"
        elif not line.strip() or line.startswith("    "):
            yield line
        else:
            waiting.append(line.strip())


def _table(rows: list[str], width: int) -> Iterator[str]:
    """Yield a table in columns, or where it is too wide each row as a paragraph."""
    cells = [[" ".join(_plain(cell).split()) for cell in row.strip().strip("|").split("|")] for row in rows if not _RULE.fullmatch(row)]
    widths = [max(len(row[column]) for row in cells if column < len(row)) for column in range(max(map(len, cells), default=0))]
    if sum(widths) + 2 * len(widths) <= width:
        yield from ("  ".join(cell.ljust(space) for cell, space in zip(row, widths, strict=False)).rstrip() for row in cells)
    else:
        for row in cells:
            yield from wrap(" | ".join(cell for cell in row if cell), width, subsequent_indent="  ", break_on_hyphens=False)


def _plain(text: str) -> str:
    return _LINK.sub(r"\1", text).replace("**", "")


def _wrapped(text: str, width: int) -> Iterator[str]:
    shown = _plain(text)
    if shown.startswith("#"):
        yield from wrap(shown.lstrip("# ").replace("`", "").upper(), width)
        return
    hanging = "  " if _ITEM.match(shown) else ""
    yield from wrap(shown, width, subsequent_indent=hanging, break_on_hyphens=False)
