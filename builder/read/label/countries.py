"""The table of countries becomes their names, folded, each with the code of its country by ISO 3166-1."""

from collections.abc import Mapping

from builder.model.recipe.figure import Known as HowKnown
from builder.model.recipe.figure import Source
from builder.read.known import Known
from builder.read.text.tables import Row, column, each, looked_up, rows_of
from builder.read.text.text_files import TextFolder
from builder.read.values.values import find_source, member_of, text_of
from builder.read.values.zones import parse_country
from builder.words.fold import fold


class CountryRow(Row):
    """A country by its names."""

    country: str = column(parse_country)
    called: tuple[str, ...] = column(each(fold, is_needed=True))
    source: Source = looked_up(find_source)
    at: str = column(text_of)
    known: HowKnown = column(member_of(HowKnown))


def read_countries(folder: TextFolder, name: str, known: Known) -> Mapping[str, str]:
    """Read the table of countries."""
    return {called: row.country for row, _ in rows_of(CountryRow, folder, name, known) for called in row.called}
