"""A table as spreadsheets export it as text: any of three signs between cells, in UTF-8 with or without its mark, UTF-16 or Windows-1252.

Decided: the sign between cells is the one that gives the most lines two cells with something in them; where two do, the tab before the
semicolon before the comma. Why: with decimal commas a comma stands in as many lines as the semicolon that parts the cells.
"""

import codecs
import csv
import io

from builder.read.notebook.table import NotebookError, Table, without_empty
from builder.read.text.tables import BETWEEN_CELLS

_OLD_WORKBOOK = b"\xd0\xcf\x11\xe0"  # The first bytes of a compound file, [MS-CFB] 2.2.
_UTF_16 = {codecs.BOM_UTF16_LE: "utf-16", codecs.BOM_UTF16_BE: "utf-16"}


def read_exported(data: bytes) -> Table:
    """Read the bytes of a table in text. Raises NotebookError."""
    if data.startswith(_OLD_WORKBOOK):
        raise NotebookError(["this is a workbook of an old kind (.xls): save it as .xlsx, or as CSV UTF-8"])
    text = _text_of(data)
    head, _, rest = text.partition("\n")
    told = head.strip().removeprefix("sep=") if head.strip().startswith("sep=") else ""
    if told or head.strip() == "sep=":
        return Table(_parted(f"\n{rest}", told or "\t"))
    return Table(
        max((_parted(text, sign) for sign in BETWEEN_CELLS), key=lambda lines: sum(sum(map(bool, cells)) > 1 for _, cells in lines))
    )


def _parted(text: str, sign: str) -> tuple[tuple[int, tuple[str, ...]], ...]:
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=sign)
    try:
        return without_empty([(reader.line_num, cells) for cells in reader])
    except csv.Error as error:
        raise NotebookError([f"line {reader.line_num}: this line cannot be read as cells ({error})"]) from None


def _text_of(data: bytes) -> str:
    for mark, encoding in _UTF_16.items():
        if data.startswith(mark):
            return _decoded(data, encoding)
    if b"\0" in data:
        even, odd = data[::2].count(0), data[1::2].count(0)
        return _decoded(data, "utf-16-le" if odd > even else "utf-16-be")
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError:
        return _decoded(data, "cp1252")


def _decoded(data: bytes, encoding: str) -> str:
    try:
        return data.decode(encoding)
    except UnicodeDecodeError:
        raise NotebookError(["this is no table in text: save it as CSV UTF-8 or as .xlsx"]) from None
