"""The table of calling codes becomes rows."""

import re

from builder.model.dates.calling_code import CallingCode
from builder.model.place import Place
from builder.model.recipe.figure import Known as HowKnown
from builder.read.known import Known
from builder.read.text.tables import Row, rows_of
from builder.read.text.text_error import TextError, quoted
from builder.read.text.text_files import TextFolder
from builder.read.values.values import find_region, find_source, member_of, text_of
from builder.read.values.zones import parse_country

_COLUMNS = ("country", "region", "code", "trunk", "abroad", "shortest", "longest", "source", "at", "known")


def read_calling_codes(folder: TextFolder, name: str, known: Known) -> tuple[CallingCode, ...]:
    """Read the table of calling codes."""
    return tuple(rows_of(folder, name, _COLUMNS, lambda row, place: _code(row, place, known)))


def _code(row: Row, place: Place, known: Known) -> CallingCode:
    return CallingCode(
        country=parse_country(row["country"]),
        region=find_region(row["region"], known) if row["region"] else "",
        code=_figures(row["code"]),
        trunk=_figures(row["trunk"]) if row["trunk"] else "",
        abroad=_figures(row["abroad"]),
        shortest=int(_figures(row["shortest"])),
        longest=int(_figures(row["longest"])),
        source=find_source(row["source"], known),
        at=text_of(row["at"]),
        known=member_of(HowKnown)(row["known"]),
        place=place,
    )


def _figures(cell: str) -> str:
    if not re.fullmatch("[0-9]+", cell):
        raise TextError("limit-row-wrong", f"{quoted(cell)} is not figures alone.", "Write figures alone.")
    return cell
