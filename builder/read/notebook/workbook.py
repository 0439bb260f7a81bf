"""A sheet of a workbook (.xlsx) becomes a table as its author sees it: what is hidden, merged, a date or without a result is told by cell.

Decided: a number is taken with 12 digits that count. Why: a spreadsheet keeps binary fractions, and 0.1 + 0.2 stands there as
0.30000000000000004; no scale shows 12 digits.

Decided: openpyxl works with defusedxml, which refuses entities, and a workbook that unpacks to far more than a table is not opened. Why:
the file may come from anybody.
"""

import io
import zipfile
from collections.abc import Iterator
from datetime import date, datetime, time, timedelta
from decimal import Context, Decimal
from re import IGNORECASE, compile
from typing import Any
from warnings import catch_warnings, simplefilter

import openpyxl

from builder.read.notebook.table import NotebookError, Table, Unclear, without_empty
from builder.units import MASS_UNIT_OF

_MOST_BYTES_UNPACKED = 30_000_000
_MOST_LINES, _MOST_CELLS = 2_000, 100
_TWELVE = Context(prec=12)
_UNIT = compile(rf'["\s]({"|".join(dict.fromkeys(MASS_UNIT_OF.values()))})"?\s*$', IGNORECASE)


def read_workbook(data: bytes, sheet: str | None, choose: str, *, has_dates: bool = False) -> Table:
    """Read the bytes of a workbook: the sheet of that name, or the only one with something in it. Raises NotebookError.

    `choose` says how one of several sheets is chosen. `has_dates`: dates are meant as such, and read as `2027-03-06 10:00`.
    """
    _refuse_what_swells(data)
    try:
        # With what formulas came to, and with the formulas: one that has no result stands in the first as an empty cell.
        with catch_warnings():
            simplefilter("ignore")  # what it does not take over from a workbook is nothing that we read
            results = openpyxl.load_workbook(io.BytesIO(data), data_only=True)
            written = openpyxl.load_workbook(io.BytesIO(data))
    except Exception as error:  # openpyxl raises whatever it meets in a file that is broken
        raise NotebookError([f"this workbook cannot be opened ({type(error).__name__}): save it anew as .xlsx, or as CSV UTF-8"]) from None
    name = _sheet_meant(results, sheet, choose)
    sheet_read, formulas = results[name], written[name]
    if sheet_read.max_row > _MOST_LINES or sheet_read.max_column > _MOST_CELLS:
        size = f"{sheet_read.max_row} lines and {sheet_read.max_column} columns"
        raise NotebookError([f"the sheet has {size}: copy the table into a sheet of its own"])
    rows = list(enumerate(sheet_read.iter_rows(), 1))
    return Table(
        without_empty((number, map(_text_of, cells)) for number, cells in rows),
        frozenset((number, at) for number, cells in rows for at, cell in enumerate(cells) if _is_number(cell.value)),
        frozenset(_hidden_columns(sheet_read)),
        tuple(_not_as_seen(sheet_read, formulas, has_dates)),
    )


def _refuse_what_swells(data: bytes) -> None:
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as packed:
            swollen = sum(one.file_size for one in packed.infolist()) > _MOST_BYTES_UNPACKED
    except zipfile.BadZipFile:
        raise NotebookError(["this is no workbook of the kind .xlsx: save it anew as .xlsx, or as CSV UTF-8"]) from None
    if swollen:
        raise NotebookError(["this workbook unpacks to far more than a table: copy the table into a workbook of its own"])


def _sheet_meant(book: Any, sheet: str | None, choose: str) -> str:
    sheets: dict[str, Any] = {one.title: one for one in book.worksheets}
    if sheet is not None:
        if sheet not in sheets:
            raise NotebookError([f'there is no sheet "{sheet}"; there are: {", ".join(sheets)}'])
        return sheet
    shown = {name: one for name, one in sheets.items() if one.sheet_state == "visible"}
    filled = [name for name, one in shown.items() if any(cell.value is not None for row in one.iter_rows() for cell in row)]
    if len(filled) != 1:
        several = f"several sheets have something in them ({', '.join(filled)}): {choose}"
        raise NotebookError([several if filled else "no sheet has anything in it"])
    return filled[0]


def _hidden_columns(sheet: Any) -> Iterator[int]:
    """Yield the columns that are hidden, from 0; those of a group stand beneath the first of them."""
    for dimension in sheet.column_dimensions.values():
        if dimension.hidden:
            yield from range((dimension.min or 1) - 1, min(dimension.max or 0, _MOST_CELLS))


def _not_as_seen(sheet: Any, written: Any, has_dates: bool) -> Iterator[Unclear]:
    for merged in sheet.merged_cells.ranges:
        if merged.max_row > merged.min_row:
            text = f"{merged.coord}: these cells are merged over several lines, and nobody can tell for which the text holds: part them"
            for line in range(merged.min_row, merged.max_row + 1):
                yield from (Unclear(line, column - 1, text) for column in range(merged.min_col, merged.max_col + 1))
    for number, row in enumerate(sheet.iter_rows(), 1):
        if sheet.row_dimensions[number].hidden and any(cell.value is not None for cell in row):
            yield Unclear(number, None, f"line {number}: this line is hidden: show it, or remove it")
        for at, cell in enumerate(row):
            if text := _not_as_shown(cell, written[cell.coordinate].value, has_dates):
                yield Unclear(number, at, f"{cell.coordinate}: {text}")


def _not_as_shown(cell: Any, source: object, has_dates: bool) -> str:
    if cell.value is None:
        is_formula = isinstance(source, str) and source.startswith("=")
        return "a formula whose result is not in the file: open it in your spreadsheet and save it" if is_formula else ""
    if not has_dates and isinstance(cell.value, date | time | timedelta):
        return "a date stands here, as spreadsheets make of amounts like 3/4: write it anew as a number"
    return f"{cell.value} is an error of the spreadsheet: correct it" if cell.data_type == "e" else ""


def _is_number(value: object) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool)


def _text_of(cell: Any) -> str:
    """Return a cell as it is shown: a percentage with its sign, and the unit that its format writes."""
    value = cell.value
    if value is None:
        return ""
    if isinstance(value, datetime):
        return f"{value:%Y-%m-%d}" if value.time() == time() else f"{value:%Y-%m-%d %H:%M}"
    if not _is_number(value):
        return str(value)
    shown = cell.number_format or ""
    number = _TWELVE.create_decimal(Decimal(repr(value))) * (100 if "%" in shown else 1)
    text = format(_TWELVE.create_decimal(number).normalize(_TWELVE), "f")
    unit = _UNIT.search(shown)
    return f"{text} %" if "%" in shown else f"{text} {unit[1]}" if unit else text
