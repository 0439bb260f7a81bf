"""The lines of a notebook: what stands in them under which heading, the superfat that it tells, and sums that are compared and left out."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from fractions import Fraction
from pathlib import Path

from builder.read.notebook.amounts import PERCENT, NotebookAmount, decimal_mark, read_amount
from builder.read.notebook.columns import Columns, columns_of
from builder.read.notebook.exported import read_exported
from builder.read.notebook.rows import Row, rows_of
from builder.read.notebook.table import NotebookError, Table
from builder.words.fold import fold
from builder.words.plain_number import plain_number

WORKBOOKS = (".xlsx", ".xlsm")
_MOST_BYTES = 5_000_000
_SUMS = ("total", "sum", "subtotal", "sub total", "grand total", "batch size", "batch weight")
_SUPERFATS = ("superfat", "super fat", "superfatting", "lye discount")


@dataclass(frozen=True)
class Entry:
    """One line of a notebook: whose amount it is, as the notebook calls it, and the heading that it stands under."""

    line: int
    name: str
    amount: NotebookAmount
    heading: str


@dataclass(frozen=True)
class Notebook:
    """What a table says: its lines, the superfat that it tells, its headings by line, and what in it was not read."""

    entries: tuple[Entry, ...]
    superfat: Fraction | None
    headings: tuple[tuple[int, str], ...]
    not_read: tuple[str, ...]

    @property
    def in_percent(self) -> bool:
        """Tell whether its amounts are percentages."""
        return any(entry.amount.unit == PERCENT for entry in self.entries)


@dataclass
class _Reading:
    mark: str
    unit: str
    head: str
    entries: list[Entry] = field(default_factory=list)
    headings: list[tuple[int, str]] = field(default_factory=list)
    superfat: Fraction | None = None
    problems: list[str] = field(default_factory=list)
    not_read: list[str] = field(default_factory=list)


def read_notebook(path: Path, sheet: str | None, column: str | None) -> Notebook:
    """Read a recipe from a file. Raises NotebookError with everything that keeps it from being read."""
    table = _table(path, sheet)
    columns = columns_of(table, column)
    rows, notes = rows_of(table, columns)
    try:
        mark = decimal_mark(row.amount for row in rows if row.name and not row.is_number)
    except ValueError as error:
        raise NotebookError([str(error)]) from None
    reading = _Reading(mark, columns.unit, columns.head_of_amounts)
    for row in rows:
        _take(reading, row)
    kinds = {entry.amount.unit for entry in reading.entries}
    if len(kinds) > 1:
        reading.problems.append("some amounts are weights and some are percentages: write all of them in one way")
    if kinds == {PERCENT} and max(entry.amount.value for entry in reading.entries) < 1 and _total(reading.entries) > Fraction(9, 10):
        reading.problems.append("the percentages come to 1 %, as shares of one do: show the column as percent in your spreadsheet")
    if not reading.entries and not reading.problems:
        reading.problems.append("below the heads of the columns stands no ingredient with an amount")
    if reading.problems:
        raise NotebookError(dict.fromkeys(reading.problems))
    reading.not_read += [f'"{" ".join(filter(None, (row.name, row.amount)))}"' for row in notes if row.name or row.amount]
    return Notebook(tuple(reading.entries), reading.superfat, tuple(reading.headings), tuple(_not_read(table, columns, reading)))


def _table(path: Path, sheet: str | None) -> Table:
    try:
        if path.stat().st_size > _MOST_BYTES:
            raise NotebookError(["this file is far larger than a recipe"])
        data = path.read_bytes()
    except OSError as error:
        raise NotebookError([f"this file cannot be opened: {error.strerror}"]) from None
    if path.suffix.casefold() in WORKBOOKS or data.startswith(b"PK"):
        # Loaded where somebody has a workbook: it takes longer than to weigh a recipe.
        from builder.read.notebook.workbook import read_workbook

        return read_workbook(data, sheet, "say which with --sheet")
    return read_exported(data)


def _take(reading: _Reading, row: Row) -> None:
    name, cell = row.name, row.amount
    if row.unclear:
        reading.problems += row.unclear
    elif cell and fold(cell) == reading.head:
        # The head stands once more over a part of its own.
        reading.headings.append((row.line, name))
    elif cell:
        _take_amount(reading, row)
    elif name:
        reading.headings.append((row.line, name))


def _take_amount(reading: _Reading, row: Row) -> None:
    name = row.name
    try:
        amount = read_amount(row.amount, PERCENT if fold(name) in _SUPERFATS else reading.unit, "." if row.is_number else reading.mark)
    except ValueError as error:
        of = name or "an ingredient without a name"
        reading.problems.append(f'line {row.line}: the amount "{row.amount}" of {of} cannot be read: {error}')
        return
    if fold(name) in _SUPERFATS:
        reading.superfat = amount.value
    elif not name or fold(name).startswith(_SUMS):
        reading.problems += _sum_is_wrong(reading, row.line, amount)
    elif not amount.value:
        reading.not_read.append(f"{name} (nothing of it)")
    else:
        reading.entries.append(Entry(row.line, name, amount, reading.headings[-1][1] if reading.headings else ""))


def _sum_is_wrong(reading: _Reading, number: int, told: NotebookAmount) -> Iterator[str]:
    """Compare a sum with all lines above it, and with those of its heading alone."""
    alike = [entry for entry in reading.entries if entry.amount.unit == told.unit]
    heading = reading.headings[-1][1] if reading.headings else ""
    for entries in (alike, [entry for entry in alike if entry.heading == heading]):
        # Each amount is rounded, by half of its last figure at the most, and so is their sum.
        off = (sum((entry.amount.step for entry in entries), Fraction(0)) + told.step) / 2
        if abs(_total(entries) - told.value) <= off:
            return
    unit = "%" if told.unit == PERCENT else "g"
    come = plain_number(_total(alike), 6)
    yield f"line {number}: a sum of {told.text} stands here, and the lines above come to {come} {unit}: correct what is wrong, or remove it"


def _total(entries: Iterable[Entry]) -> Fraction:
    return sum((entry.amount.value for entry in entries), Fraction(0))


def _not_read(table: Table, columns: Columns, reading: _Reading) -> Iterator[str]:
    yield from (f'"{" ".join(filter(None, cells))}"' for number, cells in table.lines if number < columns.head)
    yield from columns.not_read
    used = {entry.heading for entry in reading.entries}
    yield from (f'"{heading}"' for _, heading in reading.headings if heading not in used)
    yield from reading.not_read
