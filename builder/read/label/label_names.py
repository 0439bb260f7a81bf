"""The table of English names for labels in the United States.

Decided: names in the United States come from a table of Latin beginnings (`label_names_us.csv`), and what it lacks has the card's English
first. Why: it serves a studio's own cards too, and no Latin stands alone.
"""

from dataclasses import replace

from builder.model.label.region import EnglishNames, Region
from builder.model.recipe.figure import Known as HowKnown
from builder.model.recipe.figure import Source
from builder.read.known import Known
from builder.read.text.tables import Row, column, looked_up, rows_of
from builder.read.text.text_files import TextFolder
from builder.read.values.values import find_source, member_of, text_of, word_of
from builder.words.fold import fold

ENGLISH = "English and INCI"


class LabelNameRow(Row):
    """The English of an INCI name."""

    inci: str = column(lambda cell: fold(text_of(cell)))
    english: str = column(text_of)
    form: str = column(word_of("plant", "whole"))
    source: Source = looked_up(find_source)
    at: str = column(text_of)
    known: HowKnown = column(member_of(HowKnown))


def read_label_names(folder: TextFolder, name: str, known: Known) -> EnglishNames:
    """Read the table; every row needs a source."""
    rows = [row for row, _ in rows_of(LabelNameRow, folder, name, known)]
    plants, whole = ({row.inci: row.english for row in rows if row.form == form} for form in ("plant", "whole"))
    return EnglishNames(plants, whole)


def with_english(regions: dict[str, Region], names: EnglishNames) -> dict[str, Region]:
    """Return the names to the regions that ask for English beside INCI."""
    return {key: replace(one, english=names) if one.says("names") == ENGLISH else one for key, one in regions.items()}
