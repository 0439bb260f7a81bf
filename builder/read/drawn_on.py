"""What the texts of a studio draw on, and what it was read from: the library that ships, and the studio's shelf over it."""

from collections.abc import Mapping
from dataclasses import dataclass, fields
from typing import Any

from builder.model.dose.limit import ColourRule, FieldRule, Limit
from builder.model.finding import Finding
from builder.model.label.label_sheet import LabelSheet
from builder.model.library import Library, Rulebook
from builder.model.recipe.container import Container
from builder.model.recipe.essential_oil import Constituent
from builder.model.recipe.ingredient import Ingredient
from builder.model.roster.allergy import AllergyWords
from builder.model.teaching.caution import CautionText
from builder.model.teaching.lesson import Block
from builder.read.known import NamesKnown


@dataclass(frozen=True)
class DrawnOn:
    """What the texts of a studio draw on: the library, the passages of lessons, and the names that a text may use.

    `written` are the texts of those passages that ship, by which another language says them; `cards_in_part` are the studio's own cards
    that can be read in part.
    """

    library: Library
    passages: Mapping[str, tuple[Block, ...]]
    written: Mapping[str, str]
    known: NamesKnown
    cards_in_part: tuple[Ingredient, ...] = ()


@dataclass(frozen=True)
class Shelf:
    """What one folder of shelves holds: those that ship, or the studio's own, which has the same files.

    `written` are the texts of its passages. `cards_in_part` are the cards that can be read in part. `unread` is by kind.
    """

    containers: Mapping[str, Container]
    label_sheets: Mapping[str, LabelSheet]
    allergy_words: Mapping[str, AllergyWords]
    cautions: Mapping[str, CautionText]
    passages: Mapping[str, tuple[Block, ...]]
    written: Mapping[str, str]
    cards: tuple[Ingredient, ...]
    cards_in_part: tuple[Ingredient, ...]
    limits: tuple[Limit, ...]
    constituents: tuple[Constituent, ...]
    colour_rules: tuple[ColourRule, ...]
    field_rules: tuple[FieldRule, ...]
    unread: Mapping[str, set[str]]


@dataclass(frozen=True)
class Shipped:
    """All that ships, with what is wrong in it. `known` is what its texts may name."""

    known: NamesKnown
    rulebook: Rulebook
    shelf: Shelf
    findings: tuple[Finding, ...]


def fields_of(kind: type, value: object) -> dict[str, Any]:
    """Return the fields that a value has as one of a kind, by name, to make a larger value of."""
    return {field.name: getattr(value, field.name) for field in fields(kind)}
