"""The tables of countries: how their numbers are dialled, and the names with which an address ends, each with its code by ISO 3166-1."""

import re
from collections.abc import Mapping

from builder.model.dates.calling_code import CallingCode
from builder.read.known import NamesKnown
from builder.read.makes import Makes
from builder.read.text.tables import CitedRow, cited, column, each, looked_up, rows_of
from builder.read.text.text_error import TextError, quoted
from builder.read.text.text_files import TextFolder
from builder.read.values.values import find_region
from builder.read.values.zones import parse_country
from builder.words.fold import fold


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


class CountryRow(CitedRow):
    """A country by its names."""

    country: str = column(parse_country)
    called: tuple[str, ...] = column(each(fold, is_needed=True))
    source, at, known = cited()


def read_countries(folder: TextFolder, name: str, known: NamesKnown) -> Mapping[str, str]:
    """Read the table of countries."""
    return {called: row.country for row, _ in rows_of(CountryRow, folder, name, known) for called in row.called}
