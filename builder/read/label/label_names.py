"""The table of English names for labels in the United States.

Decided: names in the United States come from a table of Latin beginnings (`label_names_us.csv`), and what it lacks has the card's English
first. Why: it serves a studio's own cards too, and no Latin stands alone.
"""

from dataclasses import replace

from builder.model.label.region import EnglishNames, Region
from builder.model.place import Place
from builder.model.recipe.figure import Known as HowKnown
from builder.read.known import Known
from builder.read.text.tables import Row, rows_of
from builder.read.text.text_files import TextFolder
from builder.read.values.values import find_source, member_of, text_of, word_of
from builder.words.fold import fold

ENGLISH = "English and INCI"
_COLUMNS = ("inci", "english", "form", "source", "at", "known")


def read_label_names(folder: TextFolder, name: str, known: Known) -> EnglishNames:
    """Read the table; every row needs a source, and a row that cannot be read is a finding and is left out."""
    rows = tuple(rows_of(folder, name, _COLUMNS, lambda row, place: _row(row, place, known)))
    by_form = {form: {fold(inci): english for kind, inci, english in rows if kind == form} for form in ("plant", "whole")}
    return EnglishNames(by_form["plant"], by_form["whole"])


def with_english(regions: dict[str, Region], names: EnglishNames) -> dict[str, Region]:
    """Return the names to the regions that ask for English beside INCI."""
    return {key: replace(one, english=names) if one.says("names") == ENGLISH else one for key, one in regions.items()}


def _row(row: Row, _: Place, known: Known) -> tuple[str, str, str]:
    find_source(row["source"], known)
    member_of(HowKnown)(row["known"])
    text_of(row["at"])
    return word_of("plant", "whole")(row["form"]), text_of(row["inci"]), text_of(row["english"])
