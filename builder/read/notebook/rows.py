"""The lines below the heads of a table: a name and an amount each, what is unclear in them, and which of them are notes below the recipe.

Decided: notes are what follows an empty line below the last name that has a figure beside it. Why: an amount that cannot be read, as
"a pinch", is asked about; what somebody wrote for themselves is not.
"""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from builder.read.notebook.columns import Columns
from builder.read.notebook.table import Table


@dataclass(frozen=True)
class Row:
    """One line below the heads, with its number in the file, and what keeps it from being read."""

    line: int
    name: str
    amount: str
    is_number: bool
    unclear: tuple[str, ...]


def rows_of(table: Table, columns: Columns) -> tuple[list[Row], list[Row]]:
    """Return the lines of the recipe, and the notes below it."""
    rows = list(_all_rows(table, columns))
    last = max((at for at, row in enumerate(rows) if row.name and (row.unclear or re.search(r"\d", row.amount))), default=len(rows) - 1)
    gaps = (at for at in range(last + 1, len(rows)) if rows[at].line > rows[at - 1].line + 1)
    end = next(gaps, len(rows))
    return rows[:end], rows[end:]


def _all_rows(table: Table, columns: Columns) -> Iterator[Row]:
    read = (None, columns.names, columns.amounts)
    for number, cells in table.lines:
        if number > columns.head:
            unclear = tuple(one.text for one in table.unclear if one.line == number and one.column in read)
            is_number = (number, columns.amounts) in table.numbers
            yield Row(number, _cell(cells, columns.names), _cell(cells, columns.amounts), is_number, unclear)


def _cell(cells: Sequence[str], at: int) -> str:
    return cells[at] if at < len(cells) else ""
