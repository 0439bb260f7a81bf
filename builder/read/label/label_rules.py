"""The tables of type heights and of label warnings become rules."""

from fractions import Fraction

from builder.model.hazard import Hazard
from builder.model.label.label_warning import Because, WarningRule
from builder.model.label.type_height import HeightBy, HeightRule, Statement
from builder.model.label.typeface import MeasuredOn
from builder.model.recipe.figure import Known as HowKnown
from builder.model.recipe.figure import Source
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.recipe.quantity import Length
from builder.read.known import Known
from builder.read.makes import Makes, becomes
from builder.read.text.placed_data import PlacedData
from builder.read.text.tables import Row, column, each, folded_in, looked_up, or_none, products_in, read_table, remark, words_in
from builder.read.text.text_files import TextFolder
from builder.read.values.amounts import parse_length
from builder.read.values.numbers import parse_number
from builder.read.values.values import find_region, find_source, member_of, parse_yes_or_no, text_of
from builder.units import millimetres_in

_SQUARES = {"sq in": "in", "cm2": "cm"}


class HeightRow(Row, Makes[HeightRule]):
    """A height of type."""

    region: str = looked_up(find_region)
    statement: Statement = column(member_of(Statement))
    by: HeightBy | None = column(or_none(member_of(HeightBy)))
    over: Fraction | None = column(or_none(parse_number))
    up_to: Fraction | None = column(or_none(parse_number))
    unit: str = column(str)
    height: Length = column(parse_length)
    measured_on: MeasuredOn = column(member_of(MeasuredOn))
    source: Source = looked_up(find_source)
    at: str = column(text_of)
    known: HowKnown = column(member_of(HowKnown))
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


class WarningRow(Row, Makes[WarningRule]):
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
    source: Source = looked_up(find_source)
    at: str = column(text_of)
    known: HowKnown = column(member_of(HowKnown))
    note: str = remark()


def read_type_heights(folder: TextFolder, name: str, known: Known) -> tuple[HeightRule, ...]:
    """Read the table of type heights."""
    return read_table(HeightRow, folder, name, known)


def read_label_warnings(folder: TextFolder, name: str, known: Known) -> tuple[WarningRule, ...]:
    """Read the table of label warnings."""
    return read_table(WarningRow, folder, name, known)
