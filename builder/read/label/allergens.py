"""The table of fragrance allergens becomes allergens."""

from builder.model.label.labelling import Allergen
from builder.model.place import Place
from builder.model.recipe.figure import Known as HowKnown
from builder.read.known import Known
from builder.read.text.tables import Row, rows_of, share_in, words_in
from builder.read.text.text_error import TextError
from builder.read.text.text_files import TextFolder
from builder.read.values.values import find_source, member_of, parse_yes_or_no, text_of, word_of
from builder.words.fold import fold

_COLUMNS = (
    "label_name", "annex_iii_entry", "list", "names_covered", "cas", "leave_on_listed_above_pct", "rinse_off_listed_above_pct",
    "other_limits", "status", "how_known", "counts", "oils", "active", "source", "known",
)  # fmt: skip
_list = word_of("original_26", "extended_2023")


def read_allergens(folder: TextFolder, name: str, known: Known) -> tuple[Allergen, ...]:
    """Read the table; a row that cannot be read is a finding and is left out."""
    return tuple(rows_of(folder, name, _COLUMNS, lambda row, place: _allergen(row, place, known)))


def _allergen(row: Row, _: Place, known: Known) -> Allergen:
    leave_on, rinse_off = share_in(row["leave_on_listed_above_pct"]), share_in(row["rinse_off_listed_above_pct"])
    if leave_on is None or rinse_off is None:
        wrong = "An allergen is named above a threshold, and one stands in an empty cell."
        raise TextError("limit-row-wrong", wrong, "Write both thresholds in percent.")
    return Allergen(
        label_name=text_of(row["label_name"]),
        counts=tuple(fold(name) for name in words_in(row["counts"])),
        oils=tuple(fold(name) for name in words_in(row["oils"])),
        leave_on=leave_on,
        rinse_off=rinse_off,
        is_original=_list(row["list"]) == "original_26",
        is_active=parse_yes_or_no(row["active"]),
        entry=text_of(row["annex_iii_entry"]),
        source=find_source(row["source"], known),
        known=member_of(HowKnown)(row["known"]),
    )
