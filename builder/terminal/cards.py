"""What is known of an ingredient, line by line."""

from collections.abc import Sequence

from rich.table import Table
from rich.text import Text

from builder.compose.recipe.card_text import CardLine
from builder.terminal.consoles import open_console, styled


def print_card(lines: Sequence[CardLine]) -> None:
    """Print an ingredient card."""
    console = open_console(width=120)
    for line in lines:
        indented = Table.grid()
        indented.add_column(width=2 * line.indent)
        indented.add_column(overflow="fold")
        indented.add_row(Text(), styled(line.text, "bold" if line.strong else ""))
        console.print(indented)
