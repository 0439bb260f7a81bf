"""Lists and explanations on stdout, in lines that fit a terminal of 80 columns."""

from collections.abc import Iterable
from textwrap import wrap

from rich.table import Table

from builder.reference.lists import Listing
from builder.terminal.consoles import open_console, say, styled

_NARROW = 80


def print_list(listing: Listing) -> None:
    """Print a table; what is long is folded inside its column."""
    console = open_console(width=_NARROW)
    grid = Table(box=None, pad_edge=False, padding=(0, 2, 0, 0), header_style="bold")
    for number, heading in enumerate(listing.headings):
        grid.add_column(
            styled(heading, ""), overflow="fold", ratio=None, max_width=42 if number == 0 and len(listing.headings) > 1 else None
        )
    for row in listing.rows:
        grid.add_row(*(styled(cell, "") for cell in row))
    console.print(grid)


def print_told(heading: str, lines: Iterable[str]) -> None:
    """Print what something means."""
    console = open_console(width=_NARROW)
    say(console, heading)
    say(console)
    for line in lines:
        hanging = "  " if line.startswith(("- ", "  ")) else ""
        for piece in wrap(line, min(console.width, _NARROW), subsequent_indent=hanging, break_on_hyphens=False) or [""]:
            say(console, piece)
