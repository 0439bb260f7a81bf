"""Tables as spreadsheets write them, made here: one recipe in every encoding and with every sign between cells, and workbooks."""

import io
import re
import zipfile
from collections.abc import Callable, Iterable, Sequence
from typing import Any

import openpyxl

# 500 g of olive oil, 300 g of coconut oil, 200 g of shea butter.
ROWS: Sequence[Sequence[str]] = (
    ("Crème bar", "", ""),
    ("Ingredient", "Weight (g)", "%"),
    ("Olive oil", "500.5", "50"),
    ("Coconut oil", "299.5", "30"),
    ("Shea butter", "200", "20"),
    ("Sodium hydroxide", "135.5", ""),
    ("Water", "300", ""),
)
ENCODINGS: dict[str, Callable[[str], bytes]] = {
    "UTF-8": lambda text: text.encode(),
    "UTF-8 with its mark": lambda text: text.encode("utf-8-sig"),
    "UTF-16 with its mark": lambda text: text.encode("utf-16"),
    "UTF-16 LE": lambda text: text.encode("utf-16-le"),
    "UTF-16 BE": lambda text: text.encode("utf-16-be"),
    "Windows-1252": lambda text: text.encode("cp1252"),
}


def parted(sign: str, mark: str, rows: Iterable[Sequence[str]] = ROWS, ends: str = "\r\n") -> str:
    """Write rows as text, a cell in quotation marks where it holds the sign."""
    lines = []
    for row in rows:
        cells = [re.sub(r"(?<=\d)\.(?=\d)", mark, cell) for cell in row]
        lines.append(sign.join(f'"{cell}"' if sign in cell else cell for cell in cells))
    return ends.join([*lines, ""])


def workbook(fill: Callable[[Any], None]) -> bytes:
    """Make a workbook with one sheet that a function fills."""
    book = openpyxl.Workbook()
    fill(book.active)
    written = io.BytesIO()
    book.save(written)
    return written.getvalue()


def soap_sheet(sheet: Any) -> None:
    """Fill a sheet with the recipe, its percentages as fractions in percent."""
    for row in ROWS:
        sheet.append([float(cell) if re.fullmatch(r"[\d.]+", cell) else cell or None for cell in row])
    for line in range(3, 6):
        cell = sheet.cell(line, 3)
        cell.value, cell.number_format = cell.value / 100, "0%"


def with_part(data: bytes, name: str, change: Callable[[bytes], bytes]) -> bytes:
    """Change one part of a workbook."""
    written = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(data)) as old, zipfile.ZipFile(written, "w", zipfile.ZIP_DEFLATED) as new:
        for one in old.namelist():
            new.writestr(one, change(old.read(one)) if one == name else old.read(one))
    return written.getvalue()
