"""The tables of type heights and of label warnings become rules."""

from fractions import Fraction

from builder.model.hazard import Hazard
from builder.model.label.label_warning import Because, WarningRule
from builder.model.label.type_height import HeightBy, HeightRule, Statement
from builder.model.label.typeface import MeasuredOn
from builder.model.place import Place
from builder.model.recipe.figure import Known as HowKnown
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.read.known import Known
from builder.read.text.tables import Row, products_in, rows_of, words_in
from builder.read.text.text_files import TextFolder
from builder.read.values.amounts import parse_length
from builder.read.values.numbers import parse_number
from builder.read.values.values import find_region, find_source, member_of, parse_yes_or_no, text_of
from builder.units import millimetres_in
from builder.words.fold import fold

_HEIGHT_COLUMNS = ("region", "statement", "by", "over", "up_to", "unit", "height", "measured_on", "source", "at", "known", "note")
_WARNING_COLUMNS = (
    "regions", "products", "contact", "ingredient_kinds", "inci_names", "hazards", "made_with_lye", "wording", "unless_said", "because",
    "source", "at", "known", "note",
)  # fmt: skip
_SQUARES = {"sq in": "in", "cm2": "cm"}


def read_type_heights(folder: TextFolder, name: str, known: Known) -> tuple[HeightRule, ...]:
    """Read the table of type heights."""
    return tuple(rows_of(folder, name, _HEIGHT_COLUMNS, lambda row, place: _height(row, place, known)))


def read_label_warnings(folder: TextFolder, name: str, known: Known) -> tuple[WarningRule, ...]:
    """Read the table of label warnings."""
    return tuple(rows_of(folder, name, _WARNING_COLUMNS, lambda row, place: _warning(row, place, known)))


def _height(row: Row, place: Place, known: Known) -> HeightRule:
    return HeightRule(
        region=find_region(row["region"], known),
        statement=member_of(Statement)(row["statement"]),
        by=member_of(HeightBy)(row["by"]) if row["by"] else None,
        over=_end(row["over"], row["unit"]),
        up_to=_end(row["up_to"], row["unit"]),
        height=parse_length(row["height"]),
        measured_on=member_of(MeasuredOn)(row["measured_on"]),
        source=find_source(row["source"], known),
        at=text_of(row["at"]),
        known=member_of(HowKnown)(row["known"]),
        place=place,
    )


def _end(cell: str, unit: str) -> Fraction | None:
    """Return an end in mm2, or in grams or millilitres."""
    if not cell:
        return None
    edge = _SQUARES.get(unit)
    return parse_number(cell) * (millimetres_in(edge) ** 2 if edge else 1)


def _warning(row: Row, place: Place, known: Known) -> WarningRule:
    return WarningRule(
        regions=words_in(row["regions"]),
        products=products_in(row["products"], known),
        contact=words_in(row["contact"]),
        kinds=tuple(member_of(IngredientKind)(word) for word in words_in(row["ingredient_kinds"])),
        names=tuple(fold(name) for name in words_in(row["inci_names"])),
        hazards=tuple(member_of(Hazard)(word) for word in words_in(row["hazards"])),
        made_with_lye=parse_yes_or_no(row["made_with_lye"]),
        wording=text_of(row["wording"]),
        unless_said=tuple(fold(word) for word in words_in(row["unless_said"])),
        because=member_of(Because)(row["because"]),
        source=find_source(row["source"], known),
        at=text_of(row["at"]),
        known=member_of(HowKnown)(row["known"]),
        place=place,
    )
