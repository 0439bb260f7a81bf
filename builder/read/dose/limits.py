"""The tables of usage limits and of colour additives become limits and colour rules."""

import re
from fractions import Fraction
from math import ceil

from builder.model.dose.limit import ColourRule, Field, FieldRule, Limit, LimitRole, LimitWeight, PercentOf
from builder.model.hazard import Hazard
from builder.model.label.region import ANY_REGIONS
from builder.model.recipe.body_part import BodyPart
from builder.model.recipe.figure import Known, Source
from builder.model.recipe.ingredient import blend_of
from builder.model.recipe.product import Contact
from builder.read.known import NamesKnown
from builder.read.makes import Makes, becomes
from builder.read.text.placed_data import PlacedData
from builder.read.text.tables import CitedRow, Row, cited, column, each, looked_up, or_none, products_in, remark, share_in
from builder.read.values.numbers import parse_number, parse_positive
from builder.read.values.values import find_source, member_of, parse_yes_or_no, text_of, word_of
from builder.words.fold import fold

_ALL = "all"  # In place of all kinds of contact.
_CHILDREN = re.compile(r"children (?:under (?P<below>\d{1,2})(?P<months> months)?|\d{1,2} to (?P<last>\d{1,2}))")


def _blend(name: str) -> str:
    return blend_of(tuple(fold(part) for part in name.split(" + ")))


def _find_region(name: str, known: NamesKnown) -> str:
    return word_of(*known.regions, ANY_REGIONS)(name)


def _role(text: str) -> LimitRole:
    return next((one for one in LimitRole if one == fold(text_of(text))), LimitRole.OTHER)


def _contact(text: str) -> tuple[Contact, ...]:
    return tuple(Contact) if fold(text) == _ALL else each(member_of(Contact), is_needed=True)(text)


class LimitRow(CitedRow, Makes[Limit]):
    """A usage limit."""

    ingredient: str = column(text_of)
    inci: str = remark()
    names: tuple[str, ...] = column(each(_blend), "inci_names")
    role: LimitRole = column(_role)
    most: Fraction | None = column(or_none(share_in), "most_percent")
    percent_of: PercentOf = column(member_of(PercentOf))
    counted_as: str = column(str)
    factor: Fraction | None = column(or_none(parse_positive), "counted_as_factor")
    product_type: str = column(text_of)
    contact: tuple[Contact, ...] = column(_contact)
    products: tuple[str, ...] = looked_up(products_in)
    narrower: str = column(str)
    hazard: Hazard | None = column(or_none(member_of(Hazard)))
    lowest_ph: Fraction | None = column(or_none(parse_number), "ph_low")
    ph_high, basis = remark(), remark()
    region: str = looked_up(_find_region)
    weight: LimitWeight = column(member_of(LimitWeight))
    source, at, known = cited()
    note: str = column(str)
    since: int | None = column(or_none(lambda cell: int(parse_positive(cell))), is_needed=False)

    @becomes("below_age")
    def _below_age(self, _: PlacedData) -> int | None:
        """Return the age in whole years below which people are meant; None where a row is narrower in another way, or not at all."""
        match = _CHILDREN.fullmatch(self.narrower)
        if not match:
            return None
        if match["last"]:
            return int(match["last"]) + 1
        return ceil(int(match["below"]) / 12) if match["months"] else int(match["below"])

    @becomes("parts_of_body")
    def _parts_of_body(self, _: PlacedData) -> tuple[BodyPart, ...]:
        """Return the parts of the body that a row is meant for; none where it is narrower in another way, or not at all."""
        words = tuple(word.strip() for word in self.narrower.split(";"))
        parts = tuple(part for word in words for part in BodyPart if part == word)
        return parts if len(parts) == len(words) else ()


class ColourRow(Row, Makes[ColourRule]):
    """A colour additive of the list of US law."""

    name: str = column(text_of, "colour_additive")
    section: str = column(text_of, "cfr_section")
    certified: bool = column(lambda cell: cell == "yes", "certification_required")
    for_eyes: bool = column(lambda cell: cell != "no", "eye_area")
    lips_and_general_use, external_use, limits = remark(), remark(), remark()
    label_name: str = column(str, "us_label_name")
    eu_ci_number_memory: str = remark()
    is_listed: bool = column(parse_yes_or_no, "listed")
    contact: tuple[str, ...] = column(each(member_of(Contact)))
    products: tuple[str, ...] = looked_up(products_in)
    narrower: str = column(str)
    most: Fraction | None = column(or_none(share_in), "most_percent")
    most_on_lips: Fraction | None = column(or_none(share_in), "most_percent_on_lips")
    source: Source = looked_up(find_source)
    known: Known = column(member_of(Known))
    how_known: str = column(str)


class FieldRow(CitedRow, Makes[FieldRule]):
    """A colourant of the list of EU law."""

    entry: str = remark()
    names: tuple[str, ...] = column(each(fold, is_needed=True))
    common_name: str = column(str)
    allowed_for: Field = column(member_of(Field), "field")
    most: Fraction | None = column(or_none(share_in), "most_percent")
    most_on_lips: Fraction | None = column(or_none(share_in), "most_percent_on_lips")
    other_limits: str = remark()
    in_uk: bool = column(parse_yes_or_no, "uk")
    source, at, known = cited()
