"""A batch as a table for the terminal: share, exact amount, and what each scale weighs."""

from rich.table import Table

from builder.compose.recipe.weigh_table import HEADINGS, WeighTable
from builder.terminal.consoles import open_console, styled

_FIGURES = ("share", "exact", "weigh")


def print_table(table: WeighTable) -> None:
    """Print one batch."""
    console = open_console(width=160)
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
