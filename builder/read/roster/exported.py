"""A table as spreadsheets export it becomes cells: commas, semicolons or tabs between them, and empty cells at the end.

Decided: what parts the cells is told by the line of column names alone: the sign with which it has a column `name`. Why: a text about an
allergy has commas and semicolons of its own.
"""

import csv

from builder.words.fold import fold

_SIGNS = (",", ";", "\t")


def sign_between(head: str) -> str:
    """Return the sign that stands between the cells of a table, by its first line; a comma where no sign makes a column `name`."""
    return next((sign for sign in _SIGNS if "name" in (fold(cell) for cell in cells_of(head, sign))), ",")


def cells_of(line: str, sign: str) -> list[str]:
    """Return the cells of a line. Raises csv.Error where a quotation mark is not closed."""
    return next(csv.reader([line], strict=True, delimiter=sign))


def says_nothing(line: str) -> bool:
    """Tell whether a line holds nothing but signs between empty cells, as below the last row, or the sign itself, as `sep=;` above."""
    return not line.strip(" \t,;\r") or line.strip() in ("sep=,", "sep=;", "sep=")
