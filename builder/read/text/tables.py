"""Tables become rows. A table is CSV: remarks that begin with #, a line of column names, one row a line."""

import csv
from collections.abc import Callable, Iterator
from fractions import Fraction
from typing import TypeVar

from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.place import Place
from builder.read.known import Known
from builder.read.text.text_error import TextError, quoted
from builder.read.text.text_files import TextFolder
from builder.read.values.numbers import parse_number
from builder.read.values.values import find_product

FINDS = (FindingKind("limit-row-wrong", STOP, "A row of a table cannot be read, so that its limit would not hold."),)

# What may stand between the cells of a table that a program exports, the one that tells most first.
BETWEEN_CELLS = ("\t", ";", ",")
T = TypeVar("T")
Row = dict[str, str]


def rows_of(
    folder: TextFolder, name: str, columns: tuple[str, ...], make: Callable[[Row, Place], T], last: tuple[str, ...] = ()
) -> Iterator[T]:
    """Read a table row by row; a row that cannot be read is a finding and is left out. `last` are columns that may be missing."""
    text = folder.text(name) if folder.has(name) else None
    lines = enumerate((text or "").split("\n"), start=1)
    table = [(Place(folder.shown_as + name, number, 1), line) for number, line in lines if line.strip() and not line.startswith("#")]
    for at, (place, line) in enumerate(table):
        try:
            cells = _cells(line)
            if at == 0 and cells == [*columns, *last]:
                columns = (*columns, *last)
            if at == 0 and cells != list(columns):
                raise _wrong("These are not the columns of this table.", f"Write {','.join(columns)}.")
            if len(cells) != len(columns):
                raise _wrong(f"This row has {len(cells)} cells and the table {len(columns)} columns.", "Put a text with a comma in quotes.")
            if at > 0:
                yield make(dict(zip(columns, cells, strict=True)), place)
        except TextError as error:
            folder.findings.append(_finding(place, error))
            if at == 0:
                return


def _finding(place: Place, error: TextError) -> Finding:
    return stop("limit-row-wrong", place, f"This row of a table of limits cannot be read. {error.wrong}", error.remedy)


def _cells(line: str) -> list[str]:
    try:
        return [cell.strip() for cell in next(csv.reader([line], strict=True))]
    except csv.Error:
        raise _wrong("A quotation mark is not closed in its line.", "Close it; a table has one row a line.") from None


def _wrong(wrong: str, remedy: str) -> TextError:
    return TextError("limit-row-wrong", wrong, remedy)


def words_in(cell: str) -> tuple[str, ...]:
    """Return the words of a cell, which are separated by semicolons."""
    return tuple(word.strip() for word in cell.split(";") if word.strip())


def products_in(cell: str, known: Known) -> tuple[str, ...]:
    """Return the kinds of product that a cell names."""
    return tuple(find_product(word, known).name for word in words_in(cell))


def share_in(cell: str) -> Fraction | None:
    """Return a percentage as a share of one; None for an empty cell."""
    if not cell:
        return None
    percent = parse_number(cell)
    if not 0 <= percent <= 100:
        raise _wrong(f"{quoted(cell)} is no percentage.", "Write a number from 0 to 100, or leave the cell empty.")
    return percent / 100
