"""The tables of usage limits and of colour additives become limits and colour rules."""

import re
from math import ceil

from builder.model.dose.limit import ColourRule, Field, FieldRule, Limit, LimitRole, LimitWeight, PercentOf
from builder.model.hazard import Hazard
from builder.model.label.region import ANY_REGIONS
from builder.model.place import Place
from builder.model.recipe.body_part import BodyPart
from builder.model.recipe.figure import Known as HowKnown
from builder.model.recipe.ingredient import blend_of
from builder.model.recipe.product import Contact
from builder.read.known import Known
from builder.read.text.tables import Row, products_in, rows_of, share_in, words_in
from builder.read.text.text_files import TextFolder
from builder.read.values.numbers import parse_number, parse_positive
from builder.read.values.values import find_source, member_of, parse_yes_or_no, text_of, word_of
from builder.words.fold import fold

_LIMIT_COLUMNS = (
    "ingredient", "inci", "inci_names", "role", "most_percent", "percent_of", "counted_as", "counted_as_factor", "product_type", "contact",
    "products", "narrower", "hazard", "ph_low", "ph_high", "basis", "region", "weight", "source", "at", "known", "note",
)  # fmt: skip
# What a studio's own table may do without.
_LAST_LIMIT_COLUMNS = ("since",)
_COLOUR_COLUMNS = (
    "colour_additive", "cfr_section", "certification_required", "eye_area", "lips_and_general_use", "external_use", "limits",
    "us_label_name", "eu_ci_number_memory", "listed", "contact", "products", "narrower", "most_percent", "most_percent_on_lips", "source",
    "known", "how_known",
)  # fmt: skip
_FIELD_COLUMNS = (
    "entry", "names", "common_name", "field", "most_percent", "most_percent_on_lips", "other_limits", "uk", "source", "at", "known",
)  # fmt: skip
_ALL = "all"  # In place of all kinds of contact.
_CHILDREN = re.compile(r"children (?:under (?P<below>\d{1,2})(?P<months> months)?|\d{1,2} to (?P<last>\d{1,2}))")


def read_limits(folder: TextFolder, name: str, known: Known) -> tuple[Limit, ...]:
    """Read a table of limits; a row that cannot be read is a finding and is left out."""
    return tuple(rows_of(folder, name, _LIMIT_COLUMNS, lambda row, place: _limit(row, place, known), _LAST_LIMIT_COLUMNS))


def read_colour_rules(folder: TextFolder, name: str, known: Known) -> tuple[ColourRule, ...]:
    """Read a table of colour additives; a row that cannot be read is a finding and is left out."""
    return tuple(rows_of(folder, name, _COLOUR_COLUMNS, lambda row, place: _colour_rule(row, place, known)))


def read_field_rules(folder: TextFolder, name: str, known: Known) -> tuple[FieldRule, ...]:
    """Read a table of the colourants of EU law; a row that cannot be read is a finding and is left out."""
    return tuple(rows_of(folder, name, _FIELD_COLUMNS, lambda row, place: _field_rule(row, place, known)))


def _field_rule(row: Row, place: Place, known: Known) -> FieldRule:
    return FieldRule(
        names=tuple(fold(name) for name in words_in(text_of(row["names"]))),
        common_name=row["common_name"],
        allowed_for=member_of(Field)(row["field"]),
        in_uk=parse_yes_or_no(row["uk"]),
        most=share_in(row["most_percent"]),
        most_on_lips=share_in(row["most_percent_on_lips"]),
        source=find_source(row["source"], known),
        known=member_of(HowKnown)(row["known"]),
        at=text_of(row["at"]),
        place=place,
    )


def _limit(row: Row, place: Place, known: Known) -> Limit:
    return Limit(
        ingredient=text_of(row["ingredient"]),
        names=tuple(blend_of(tuple(fold(part) for part in name.split(" + "))) for name in words_in(row["inci_names"])),
        role=next((one for one in LimitRole if one == fold(text_of(row["role"]))), LimitRole.OTHER),
        most=share_in(row["most_percent"]),
        percent_of=member_of(PercentOf)(row["percent_of"]),
        counted_as=row["counted_as"],
        factor=parse_positive(row["counted_as_factor"]) if row["counted_as_factor"] else None,
        product_type=text_of(row["product_type"]),
        contact=_contact(text_of(row["contact"])),
        products=products_in(row["products"], known),
        narrower=row["narrower"],
        hazard=member_of(Hazard)(row["hazard"]) if row["hazard"] else None,
        region=word_of(*known.regions, ANY_REGIONS)(row["region"]),
        weight=member_of(LimitWeight)(row["weight"]),
        source=find_source(row["source"], known),
        at=text_of(row["at"]),
        known=member_of(HowKnown)(row["known"]),
        note=row["note"],
        since=int(parse_positive(row["since"])) if row.get("since") else None,
        lowest_ph=parse_number(row["ph_low"]) if row["ph_low"] else None,
        place=place,
        below_age=_below_age(row["narrower"]),
        parts_of_body=_parts_of_body(row["narrower"]),
    )


def _contact(text: str) -> tuple[Contact, ...]:
    return tuple(Contact) if fold(text) == _ALL else tuple(map(member_of(Contact), words_in(text)))


def _below_age(narrower: str) -> int | None:
    """Return the age in years below which people are meant, in whole years; None where a row is narrower in another way, or not at all."""
    match = _CHILDREN.fullmatch(narrower)
    if not match:
        return None
    if match["last"]:
        return int(match["last"]) + 1
    return ceil(int(match["below"]) / 12) if match["months"] else int(match["below"])


def _parts_of_body(narrower: str) -> tuple[BodyPart, ...]:
    """Return the parts of the body that a row is meant for; none where it is narrower in another way, or not at all."""
    words = tuple(word.strip() for word in narrower.split(";"))
    parts = tuple(part for word in words for part in BodyPart if part == word)
    return parts if len(parts) == len(words) else ()


def _colour_rule(row: Row, place: Place, known: Known) -> ColourRule:
    return ColourRule(
        name=text_of(row["colour_additive"]),
        label_name=row["us_label_name"],
        section=text_of(row["cfr_section"]),
        is_listed=parse_yes_or_no(row["listed"]),
        contact=tuple(member_of(Contact)(word) for word in words_in(row["contact"])),
        products=products_in(row["products"], known),
        narrower=row["narrower"],
        most=share_in(row["most_percent"]),
        most_on_lips=share_in(row["most_percent_on_lips"]),
        source=find_source(row["source"], known),
        known=member_of(HowKnown)(row["known"]),
        how_known=row["how_known"],
        certified=row["certification_required"] == "yes",
        for_eyes=row["eye_area"] != "no",
        place=place,
    )
