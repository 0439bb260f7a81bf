"""The library that a studio works from: what ships, with what the studio's own shelf adds to it or puts in its place."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from builder.model.dates.calling_code import CallingCode
from builder.model.dose.limit import ColourRule, FieldRule, Limit
from builder.model.drawing import Drawing, ToolDrawing
from builder.model.label.label_sheet import LabelSheet
from builder.model.label.label_warning import WarningRule
from builder.model.label.labelling import Allergen
from builder.model.label.language import Language
from builder.model.label.region import Region
from builder.model.label.type_height import HeightRule
from builder.model.recipe.container import Container
from builder.model.recipe.figure import Figure, Source
from builder.model.recipe.ingredient import Ingredient
from builder.model.recipe.product import Product
from builder.model.roster.allergy import AllergyWords
from builder.model.synonyms import NO_SYNONYMS, Synonyms
from builder.model.teaching.caution import CautionText
from builder.model.teaching.claim import ClaimRules
from builder.model.teaching.flame_words import FlameWords
from builder.model.teaching.lye_words import LyeWords
from builder.model.teaching.supervision import WatchRule
from builder.model.teaching.teaching import FormatAdvice
from builder.model.teaching.unsafe_step import UnsafeStep

ANY = "*"


@dataclass(frozen=True)
class Unread:
    """What is there but too wrong to be read, by the names under which others speak of it.

    `ingredients`, `containers`, `items` and `label_sheets` are folded names, the others keys; ANY among them says that not even the names
    can be read.
    """

    recipes: frozenset[str] = frozenset()
    classes: frozenset[str] = frozenset()
    pages: frozenset[str] = frozenset()
    cautions: frozenset[str] = frozenset()
    ingredients: frozenset[str] = frozenset()
    containers: frozenset[str] = frozenset()
    items: frozenset[str] = frozenset()
    label_sheets: frozenset[str] = frozenset()
    layouts: frozenset[str] = frozenset()


@dataclass(frozen=True, kw_only=True)
class Rulebook:
    """What ships and is the same for every studio, but for the numbers that a studio sets itself in `supervision`.

    `constants` are figures that belong to no ingredient, `regions` and `allergens` what lists of ingredients are made by, `languages` are
    keyed by their names. `unsafe_steps` are the dangers that words of a step can bring, `lye_words` the words for lye and raw soap in
    somebody's hands, `flame_words` those for fire in the room, `claims` those that make a medicine of a cosmetic. `format_advice` is the
    advice on formats. `synonyms` are what people mean by the words that they type, `drawings` those that
    lessons can call for, by folded names, `tool_drawings` the small ones of lists of tools. `countries` are the codes of countries by the
    names, folded, with which an address ends.
    """

    constants: Mapping[str, Figure] = field(default_factory=dict)
    supervision: Mapping[str, WatchRule] = field(default_factory=dict)
    format_advice: Mapping[str, FormatAdvice] = field(default_factory=dict)
    regions: Mapping[str, Region] = field(default_factory=dict)
    allergens: tuple[Allergen, ...] = ()
    languages: Mapping[str, Language] = field(default_factory=dict)
    type_heights: tuple[HeightRule, ...] = ()
    calling_codes: tuple[CallingCode, ...] = ()
    countries: Mapping[str, str] = field(default_factory=dict)
    label_warnings: tuple[WarningRule, ...] = ()
    unsafe_steps: tuple[UnsafeStep, ...] = ()
    lye_words: LyeWords = field(default_factory=dict)
    flame_words: FlameWords = field(default_factory=dict)
    claims: ClaimRules = field(default_factory=ClaimRules)
    synonyms: Synonyms = NO_SYNONYMS
    drawings: Mapping[str, Drawing] = field(default_factory=dict)
    tool_drawings: Mapping[str, ToolDrawing] = field(default_factory=dict)


@dataclass(frozen=True, kw_only=True)
class Library(Rulebook):
    """The rulebook, and the shelves: what a studio may add to. `unread` is what is there but cannot be read.

    `ingredients` and `containers` are keyed by every folded name they answer to, `label_sheets` by folded name. `limits` are the rows of
    the tables of usage limits, `colour_rules` those of the US colour additives, `field_rules` those of the colours of the EU; the
    studio's own come first. `allergy_words` say what people mean who write of their allergies.
    """

    ingredients: Mapping[str, Ingredient] = field(default_factory=dict)
    containers: Mapping[str, Container] = field(default_factory=dict)
    products: Mapping[str, Product] = field(default_factory=dict)
    sources: Mapping[str, Source] = field(default_factory=dict)
    cautions: Mapping[str, CautionText] = field(default_factory=dict)
    limits: tuple[Limit, ...] = ()
    colour_rules: tuple[ColourRule, ...] = ()
    field_rules: tuple[FieldRule, ...] = ()
    allergy_words: tuple[AllergyWords, ...] = ()
    label_sheets: Mapping[str, LabelSheet] = field(default_factory=dict)
    unread: Unread = field(default_factory=Unread)
