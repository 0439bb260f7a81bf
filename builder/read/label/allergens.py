"""The table of fragrance allergens becomes allergens."""

from fractions import Fraction

from builder.model.label.labelling import Allergen
from builder.model.recipe.figure import Known as HowKnown
from builder.model.recipe.figure import Source
from builder.read.known import Known
from builder.read.makes import Makes
from builder.read.text.tables import Row, column, folded_in, looked_up, read_table, remark, share_in
from builder.read.text.text_error import TextError
from builder.read.text.text_files import TextFolder
from builder.read.values.values import find_source, member_of, parse_yes_or_no, text_of, word_of

_list = word_of("original_26", "extended_2023")


def _threshold(cell: str) -> Fraction:
    if not cell:
        wrong = "An allergen is named above a threshold, and one stands in an empty cell."
        raise TextError("limit-row-wrong", wrong, "Write both thresholds in percent.")
    return share_in(cell)


class AllergenRow(Row, Makes[Allergen]):
    """A fragrance allergen."""

    label_name: str = column(text_of)
    entry: str = column(text_of, "annex_iii_entry")
    is_original: bool = column(lambda cell: _list(cell) == "original_26", "list")
    names_covered: str = remark()
    cas: str = remark()
    leave_on: Fraction = column(_threshold, "leave_on_listed_above_pct")
    rinse_off: Fraction = column(_threshold, "rinse_off_listed_above_pct")
    other_limits: str = remark()
    status: str = remark()
    how_known: str = remark()
    counts: tuple[str, ...] = column(folded_in)
    oils: tuple[str, ...] = column(folded_in)
    is_active: bool = column(parse_yes_or_no, "active")
    source: Source = looked_up(find_source)
    known: HowKnown = column(member_of(HowKnown))


def read_allergens(folder: TextFolder, name: str, known: Known) -> tuple[Allergen, ...]:
    """Read the table."""
    return read_table(AllergenRow, folder, name, known)
