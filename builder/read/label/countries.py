"""The table of countries becomes their names, folded, each with the code of its country by ISO 3166-1."""

from collections.abc import Mapping

from builder.model.place import Place
from builder.model.recipe.figure import Known as HowKnown
from builder.read.known import Known
from builder.read.text.tables import Row, rows_of
from builder.read.text.text_files import TextFolder
from builder.read.values.values import find_source, member_of, text_of
from builder.read.values.zones import parse_country
from builder.words.fold import fold

_COLUMNS = ("country", "called", "source", "at", "known")


def read_countries(folder: TextFolder, name: str, known: Known) -> Mapping[str, str]:
    """Read the table of countries."""
    rows = rows_of(folder, name, _COLUMNS, lambda row, place: _names(row, place, known))
    return {called: country for names, country in rows for called in names}


def _names(row: Row, _: Place, known: Known) -> tuple[list[str], str]:
    find_source(row["source"], known)
    member_of(HowKnown)(row["known"])
    text_of(row["at"])
    return [fold(text_of(called)) for called in row["called"].split(";")], parse_country(row["country"])
