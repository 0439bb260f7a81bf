"""The tables about labels: heights of type, warnings, fragrance allergens, English names.

Decided: names in the United States come from a table of Latin beginnings (`label_names_us.csv`), and what it lacks has the card's English
first. Why: it serves a studio's own cards too, and no Latin stands alone.
"""

from dataclasses import replace
from fractions import Fraction

from builder.model.hazard import Hazard
from builder.model.label.label_warning import Because, WarningRule
from builder.model.label.labelling import Allergen
from builder.model.label.region import EnglishNames, Region
from builder.model.label.type_height import HeightBy, HeightRule, LabelStatement
from builder.model.label.typeface import MeasuredOn
from builder.model.recipe.figure import Known, Source
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.recipe.quantity import Length
from builder.read.known import NamesKnown
from builder.read.makes import Makes, becomes
from builder.read.text.placed_data import PlacedData
from builder.read.text.tables import (
    CitedRow,
    Row,
    cited,
    column,
    each,
    folded_in,
    looked_up,
    or_none,
    products_in,
    remark,
    rows_of,
    share_in,
    words_in,
)
from builder.read.text.text_error import TextError
from builder.read.text.text_files import TextFolder
from builder.read.values.amounts import parse_length
from builder.read.values.numbers import parse_number
from builder.read.values.values import find_region, find_source, member_of, parse_yes_or_no, text_of, word_of
from builder.units import millimetres_in
from builder.words.fold import fold

_SQUARES = {"sq in": "in", "cm2": "cm"}


class HeightRow(CitedRow, Makes[HeightRule]):
    """A height of type."""

    region: str = looked_up(find_region)
    statement: LabelStatement = column(member_of(LabelStatement))
    by: HeightBy | None = column(or_none(member_of(HeightBy)))
    over: Fraction | None = column(or_none(parse_number))
    up_to: Fraction | None = column(or_none(parse_number))
    unit: str = column(str)
    height: Length = column(parse_length)
    measured_on: MeasuredOn = column(member_of(MeasuredOn))
    source, at, known = cited()
    note: str = remark()

    @becomes("over")
    def _over(self, _: PlacedData) -> Fraction | None:
        return self._end(self.over)

    @becomes("up_to")
    def _up_to(self, _: PlacedData) -> Fraction | None:
        return self._end(self.up_to)

    def _end(self, number: Fraction | None) -> Fraction | None:
        """Return an end in mm2, or in grams or millilitres."""
        edge = _SQUARES.get(self.unit)
        return number * millimetres_in(edge) ** 2 if number is not None and edge else number


class WarningRow(CitedRow, Makes[WarningRule]):
    """A warning of a label."""

    regions: tuple[str, ...] = column(words_in)
    products: tuple[str, ...] = looked_up(products_in)
    contact: tuple[str, ...] = column(words_in)
    kinds: tuple[IngredientKind, ...] = column(each(member_of(IngredientKind)), "ingredient_kinds")
    names: tuple[str, ...] = column(folded_in, "inci_names")
    hazards: tuple[Hazard, ...] = column(each(member_of(Hazard)))
    made_with_lye: bool = column(parse_yes_or_no)
    wording: str = column(text_of)
    unless_said: tuple[str, ...] = column(folded_in)
    because: Because = column(member_of(Because))
    source, at, known = cited()
    note: str = remark()


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
    names_covered, cas = remark(), remark()
    leave_on: Fraction = column(_threshold, "leave_on_listed_above_pct")
    rinse_off: Fraction = column(_threshold, "rinse_off_listed_above_pct")
    other_limits, status, how_known = remark(), remark(), remark()
    counts: tuple[str, ...] = column(folded_in)
    oils: tuple[str, ...] = column(folded_in)
    is_active: bool = column(parse_yes_or_no, "active")
    source: Source = looked_up(find_source)
    known: Known = column(member_of(Known))


ENGLISH = "English and INCI"


class LabelNameRow(CitedRow):
    """The English of an INCI name."""

    inci: str = column(lambda cell: fold(text_of(cell)))
    english: str = column(text_of)
    form: str = column(word_of("plant", "whole"))
    source, at, known = cited()


def read_label_names(folder: TextFolder, name: str, known: NamesKnown) -> EnglishNames:
    """Read the table; every row needs a source."""
    rows = [row for row, _ in rows_of(LabelNameRow, folder, name, known)]
    plants, whole = ({row.inci: row.english for row in rows if row.form == form} for form in ("plant", "whole"))
    return EnglishNames(plants, whole)


def with_english(regions: dict[str, Region], names: EnglishNames) -> dict[str, Region]:
    """Return the names to the regions that ask for English beside INCI."""
    return {key: replace(one, english=names) if one.says("names") == ENGLISH else one for key, one in regions.items()}
