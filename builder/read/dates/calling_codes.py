"""The table of calling codes becomes rows."""

import re

from builder.model.dates.calling_code import CallingCode
from builder.read.makes import Makes
from builder.read.text.tables import CitedRow, cited, column, looked_up
from builder.read.text.text_error import TextError, quoted
from builder.read.values.values import find_region
from builder.read.values.zones import parse_country


def _figures(cell: str) -> str:
    if not re.fullmatch("[0-9]+", cell):
        raise TextError("limit-row-wrong", f"{quoted(cell)} is not figures alone.", "Write figures alone.")
    return cell


class CallingCodeRow(CitedRow, Makes[CallingCode]):
    """How the numbers of a country are dialled."""

    country: str = column(parse_country)
    region: str = looked_up(lambda cell, known: find_region(cell, known) if cell else "")
    code: str = column(_figures)
    trunk: str = column(lambda cell: _figures(cell) if cell else "")
    abroad: str = column(_figures)
    shortest: int = column(lambda cell: int(_figures(cell)))
    longest: int = column(lambda cell: int(_figures(cell)))
    source, at, known = cited()
