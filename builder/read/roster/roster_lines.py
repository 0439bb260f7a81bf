"""The text of a roster becomes lines of cells, each with its place, and the first of them heads the columns.

Decided: a line of one cell above the line with a column `name` is a title, and is passed over.

Decided: a cell in quotes may run over lines, as an address does, unless a line that it would run over is a row by itself. Why: a quotation
mark that is not closed would make two people one, and lose what the second must not touch.
"""

import csv
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from builder.model.finding import Finding, stop
from builder.model.place import Name, Place
from builder.model.roster.roster import UnreadCell
from builder.read.notebook.table import Unclear
from builder.read.roster.exported import cells_of, says_nothing, sign_between
from builder.read.text.tables import BETWEEN_CELLS

_MOST_LINES_OF_A_CELL = 20
_Numbered = tuple[int, str]


@dataclass(frozen=True)
class Line:
    """One line of a roster: its cells from left to right."""

    place: Place
    cells: tuple[Name, ...]


def lines_of(text: str, file: str, findings: list[Finding], unclear: Sequence[Unclear] = ()) -> tuple[list[Line], int, str]:
    """Return the lines of a roster that can be read, the head first, how many rows it has with it, and the sign between cells.

    A cell of a workbook that is `unclear` is told from one that is empty.

    A row that cannot be read is a finding and is left out; so are columns in which nothing stands.
    """
    written = _from_the_head(list(enumerate(text.split("\n"), start=1)))
    sign = sign_between(written[0][1]) or "," if written else ","
    rows = list(_rows(written, sign))
    lines = [line for number, shown in rows if (line := _line(shown, sign, file, number, findings))]
    return _without_empty_columns([_with_unread(line, unclear) for line in lines]), len(rows), sign


def _with_unread(line: Line, unclear: Sequence[Unclear]) -> Line:
    problems = {one.column: one.text for one in unclear if one.line == line.place.line}
    cells = (UnreadCell("", cell.place, problems[at]) if at in problems else cell for at, cell in enumerate(line.cells))
    return replace(line, cells=tuple(cells)) if problems else line


def _from_the_head(written: Sequence[_Numbered]) -> Sequence[_Numbered]:
    """Leave out what stands above the head: lines in which nothing stands, and those of one cell above a column `name`."""
    begins = [at for at, (_, shown) in enumerate(written) if not says_nothing(shown)]
    for at in begins:
        if sign_between(written[at][1]):
            return written[at:]
        if any(sum(map(bool, map(str.strip, _cells_or_none(written[at][1], sign) or ()))) > 1 for sign in BETWEEN_CELLS):
            break
    return written[begins[0] :] if begins else []


def _rows(written: Sequence[_Numbered], sign: str) -> Iterator[_Numbered]:
    """Yield each row with the number of its first line; a quoted cell that runs over lines keeps them."""
    columns = len(_cells_or_none(written[0][1], sign) or ()) if written else 0
    at = 0
    while at < len(written):
        number, shown = written[at]
        taken = _lines_taken(written[at : at + _MOST_LINES_OF_A_CELL], sign, columns)
        if not says_nothing(shown):
            yield number, "\n".join(line for _, line in written[at : at + taken])
        at += taken


def _lines_taken(lines: Sequence[_Numbered], sign: str, columns: int) -> int:
    """Return how many lines make the first row: one, unless a quotation mark is closed further down."""
    if _cells_or_none(lines[0][1], sign) is not None:
        return 1
    for taken in range(2, len(lines) + 1):
        if len(_cells_or_none(lines[taken - 1][1], sign) or ()) == columns:
            return 1
        cells = _cells_or_none("\n".join(shown for _, shown in lines[:taken]), sign)
        if cells is not None:
            return taken if len(cells) == columns else 1
    return 1


def _cells_or_none(shown: str, sign: str) -> list[str] | None:
    try:
        return cells_of(shown, sign)
    except csv.Error:
        return None


def _without_empty_columns(lines: Sequence[Line]) -> list[Line]:
    """Take away the columns that have neither a name nor anything in them."""
    filled = {at for line in lines for at, cell in enumerate(line.cells) if cell.text or isinstance(cell, UnreadCell)}
    return [replace(line, cells=tuple(cell for at, cell in enumerate(line.cells) if at in filled)) for line in lines]


def _line(shown: str, sign: str, file: str, number: int, findings: list[Finding]) -> Line | None:
    first = shown.split("\n", 1)[0]
    whole = Place(file, number, 1, max(1, len(first.rstrip())))
    cells = _cells_or_none(shown, sign)
    if cells is None:
        wrong = "A quotation mark is not closed in its line, so nobody can tell where a cell ends."
        findings.append(stop("roster-row-wrong", whole, wrong, "Close it; a roster has one person a line."))
        return None
    found, after = [], 0
    for cell in cells:
        begin = max(shown.find(cell.strip(), after), after)
        line, column = number + shown.count("\n", 0, begin), begin - shown.rfind("\n", 0, begin)
        found.append(Name(" ".join(cell.split()), Place(file, line, column, max(1, len(cell.strip().split("\n")[0])))))
        after = begin + len(cell.strip())
    return Line(whole, tuple(found))
