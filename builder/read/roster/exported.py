"""A table as spreadsheets export it becomes cells: commas, semicolons or tabs between them, and empty cells at the end.

Decided: what parts the cells is told by the line of column names alone: the sign with which it has a column `name`. Why: a text about an
allergy has commas and semicolons of its own.
"""

import csv

from builder.model.roster.roster import About
from builder.read.text.tables import BETWEEN_CELLS
from builder.words.fold import fold


def sign_between(head: str) -> str | None:
    """Return the sign that stands between the cells of a table, by the line of its columns; None where no sign makes a column `name`."""
    try:
        return next((sign for sign in BETWEEN_CELLS if About.NAME in (fold(cell) for cell in cells_of(head, sign))), None)
    except csv.Error:
        return None


def cells_of(row: str, sign: str) -> list[str]:
    """Return the cells of a row, which may run over lines. Raises csv.Error where a quotation mark is not closed."""
    return next(csv.reader([row], strict=True, delimiter=sign))


def says_nothing(line: str) -> bool:
    """Tell whether a line holds nothing but signs between empty cells, as below the last row, or the sign itself, as `sep=;` above."""
    return not line.strip(" \t,;\r") or line.strip() in ("sep=,", "sep=;", "sep=")
