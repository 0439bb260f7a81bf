"""Results on stdout: what was published, a batch as a table, an ingredient card."""

from collections.abc import Sequence
from pathlib import Path

from rich.table import Table
from rich.text import Text

from builder.compose.card_text import CardLine
from builder.compose.weigh_table import HEADINGS, WeighTable
from builder.model.document import Folder
from builder.pipeline import Outcome
from builder.terminal.consoles import open_console, say, styled
from builder.terminal.findings import tally

_FIGURES = ("share", "exact", "weigh")


def print_published(outcome: Outcome, output: Path) -> None:
    """Print what was written where, what was left out, and what was found."""
    console = open_console()
    pressed = outcome.pressed
    if pressed is None:
        say(console, "Nothing was written: a stop has to be mended first.")
    else:
        for folder, what in ((Folder.SITE, "to upload"), (Folder.PRINT, "for the studio only")):
            count = sum(where is folder for where, _ in pressed.written)
            say(console, f"Wrote {count} files to {output / folder.value}/ ({what}).")
        if pressed.kept:
            say(console, f"{pressed.kept} sheets are as they were, and were not pressed again.")
        if outcome.left_out:
            say(console, f"Left out, since a stop is about them: {', '.join(sorted(outcome.left_out))}.")
        if pressed.pdf_missing:
            say(console, pressed.pdf_missing)
        for warning in pressed.warnings:
            say(console, warning)
    say(console, tally(outcome.findings))


def print_table(table: WeighTable) -> None:
    """Print one batch."""
    console = open_console(width=140)
    title = styled(table.title, "bold")
    grid = Table(title=title, title_justify="left", box=None, pad_edge=False, padding=(0, 2, 0, 0))
    for heading in HEADINGS:
        grid.add_column(heading, justify="right" if heading in _FIGURES else "left", overflow="fold")
    for row in table.rows:
        grid.add_row(*(styled(cell, "") for cell in row))
    grid.add_section()
    grid.add_row(*(styled(cell, "bold") for cell in table.total))
    console.print(grid)
    for note in table.notes:
        console.print(styled(note, ""))
    console.print()


def print_card(lines: Sequence[CardLine]) -> None:
    """Print an ingredient card."""
    console = open_console(width=120)
    for line in lines:
        indented = Table.grid()
        indented.add_column(width=2 * line.indent)
        indented.add_column(overflow="fold")
        indented.add_row(Text(), styled(line.text, "bold" if line.strong else ""))
        console.print(indented)
