"""The folders of stock, and of the studio's shelf beside it, become what recipes and lessons draw on.

The shelf has the same files as the stock. What it holds under a name takes the place of what the stock holds under that name.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from functools import partial
from itertools import chain
from pathlib import PurePosixPath
from typing import TypeVar

from builder.model.allergy import AllergyWords
from builder.model.caution import CautionText
from builder.model.container import Container
from builder.model.figure import Figure, Source
from builder.model.finding import Finding
from builder.model.ingredient import Ingredient
from builder.model.label_stock import LabelStock
from builder.model.label_warning import WarningRule
from builder.model.labelling import Allergen, LabelRegion
from builder.model.language import Language
from builder.model.lesson import Block
from builder.model.limit import ColourRule, Limit
from builder.model.place import fold
from builder.model.studio import ANY, Unread
from builder.model.supervision import WatchRule
from builder.model.teaching import FormatAdvice
from builder.model.type_height import HeightRule
from builder.read.allergens import read_allergens
from builder.read.allergy_words import read_allergy_words
from builder.read.cautions import read_caution
from builder.read.constants import read_constants
from builder.read.containers import read_containers
from builder.read.fit import Known
from builder.read.ingredients import index_ingredients, read_ingredient
from builder.read.label_regions import read_label_regions
from builder.read.label_rules import read_label_warnings, read_type_heights
from builder.read.label_stocks import read_label_stocks
from builder.read.languages import read_language
from builder.read.limits import read_colour_rules, read_limits
from builder.read.passages import read_passage
from builder.read.placed_yaml import PlacedYaml, read_yaml_file
from builder.read.products import read_products
from builder.read.sources import read_sources
from builder.read.teaching import read_format_advice, read_supervision
from builder.read.text_files import TextFolder

T = TypeVar("T")


@dataclass(frozen=True)
class Stock:
    """Everything that recipes and lessons draw on, and what of it is there but cannot be read."""

    known: Known
    constants: Mapping[str, Figure]
    ingredients: Mapping[str, Ingredient]
    containers: Mapping[str, Container]
    cautions: Mapping[str, CautionText]
    passages: Mapping[str, tuple[Block, ...]]
    unread: Unread
    limits: tuple[Limit, ...]
    colour_rules: tuple[ColourRule, ...]
    supervision: Mapping[str, WatchRule]
    format_advice: Mapping[str, FormatAdvice]
    allergy_words: Mapping[str, AllergyWords]
    label_regions: Mapping[str, LabelRegion]
    allergens: tuple[Allergen, ...]
    label_stocks: Mapping[str, LabelStock]
    type_heights: tuple[HeightRule, ...]
    languages: Mapping[str, Language]
    label_warnings: tuple[WarningRule, ...]


def read_stock(content: TextFolder, studio: TextFolder) -> Stock:
    """Read the stock, and the studio's shelf over it."""
    findings = studio.findings
    shelves = ((content, ""), (studio, "shelf/"))
    unread: dict[str, set[str]] = {kind: set() for kind in ("sources", "containers", "cautions", "ingredients", "label stocks")}
    sources: dict[str, Source] = {}
    for folder, shelf in shelves:
        sources |= _one(folder, f"{shelf}sources.yaml", lambda placed: read_sources(placed, findings), unread["sources"])
    products = _one(content, "products.yaml", lambda placed: read_products(placed, findings), set())
    languages = {one.name: one for one in _each(content, "languages", lambda placed: read_language(placed, findings), set())}
    others = tuple(one.name for one in languages.values() if not one.is_own)
    known = Known(sources, products, frozenset(unread["sources"]), languages=others)
    regions = _one(content, "label_regions.yaml", lambda placed: read_label_regions(placed, known, findings), set())
    allergens = read_allergens(content, "tables/fragrance_allergens_eu.csv", known)
    known = replace(known, allergens=frozenset(name for one in allergens for name in one.counts))
    constants = _one(content, "constants.yaml", lambda placed: read_constants(placed, known, findings), set())
    supervision = _one(content, "supervision.yaml", lambda placed: read_supervision(placed, known, findings), set())
    advice = _one(content, "format_advice.yaml", lambda placed: read_format_advice(placed, known, findings), set())
    allergy_words: dict[str, AllergyWords] = {}
    containers: dict[str, Container] = {}
    label_stocks: dict[str, LabelStock] = {}
    cautions: dict[str, CautionText] = {}
    passages: dict[str, tuple[Block, ...]] = {}
    cards: list[list[Ingredient]] = []
    for folder, shelf in shelves:
        containers |= _one(folder, f"{shelf}containers.yaml", lambda placed: read_containers(placed, known, findings), unread["containers"])
        label_stocks |= _one(
            folder, f"{shelf}label_sheets.yaml", lambda placed: read_label_stocks(placed, findings), unread["label stocks"]
        )
        read_words = partial(read_allergy_words, known=known, findings=findings)
        allergy_words |= _one(folder, f"{shelf}allergy_words.yaml", read_words, set())
        texts = _each(folder, f"{shelf}cautions", lambda placed: read_caution(placed, known, findings), unread["cautions"])
        cautions |= {text.key: text for text in texts}
        passages |= _passages(folder, f"{shelf}passages", known, findings)
        read = partial(read_ingredient, known=known, constants=constants, findings=findings)
        cards.append(_each(folder, f"{shelf}ingredients", read, unread["ingredients"]))
    # Rows of the studio's own come first.
    limits = (read_limits(folder, f"{shelf}tables/usage_limits.csv", known) for folder, shelf in reversed(shelves))
    colours = (read_colour_rules(folder, f"{shelf}tables/colour_additives_us.csv", known) for folder, shelf in reversed(shelves))
    return Stock(
        known=known,
        constants=constants,
        ingredients=index_ingredients(cards[0], cards[1], findings),
        containers=containers,
        cautions=cautions,
        passages=passages,
        unread=Unread(
            cautions=frozenset(unread["cautions"]),
            ingredients=frozenset(unread["ingredients"]),
            containers=frozenset(unread["containers"]),
            label_stocks=frozenset(unread["label stocks"]),
        ),
        limits=tuple(chain.from_iterable(limits)),
        colour_rules=tuple(chain.from_iterable(colours)),
        supervision=supervision,
        format_advice=advice,
        allergy_words=allergy_words,
        label_regions=regions,
        allergens=allergens,
        label_stocks=label_stocks,
        languages=languages,
        type_heights=read_type_heights(content, "tables/type_heights.csv", known),
        label_warnings=read_label_warnings(content, "tables/label_warnings.csv", known),
    )


def _one(folder: TextFolder, name: str, read: Callable[[PlacedYaml], dict[str, T]], unread: set[str]) -> dict[str, T]:
    """Read a file of many things by their names, and note the names of those that cannot be made."""
    if not folder.has(name):
        return {}
    placed = read_yaml_file(folder, name)
    if placed is None:
        unread.add(ANY)
        return {}
    made = read(placed)
    unread |= {fold(key) for key in placed.places()} - {fold(key) for key in made}
    return made


def _each(folder: TextFolder, name: str, read: Callable[[PlacedYaml], T | None], unread: set[str]) -> list[T]:
    """Read the files of a folder, one thing a file, and note the names of those that cannot be made."""
    made = []
    for file in folder.files(name, ".yaml"):
        placed = read_yaml_file(folder, file)
        one = read(placed) if placed else None
        if one is None:
            unread |= _names_of(file, placed)
        else:
            made.append(one)
    return made


def _names_of(file: str, placed: PlacedYaml | None) -> set[str]:
    """Give the names under which others may speak of what a file holds: the file's own, and those that it states."""
    stem = PurePosixPath(file).stem
    data = placed.data if placed and isinstance(placed.data, dict) else {}
    others = data.get("also called", [])
    stated = (data.get("name"), *(others if isinstance(others, list) else ()))
    return {stem, stem.replace("-", " "), *(fold(name) for name in stated if isinstance(name, str))}


def _passages(folder: TextFolder, name: str, known: Known, findings: list[Finding]) -> dict[str, tuple[Block, ...]]:
    texts = ((file, folder.text(file)) for file in folder.files(name, ".md"))
    return {
        PurePosixPath(file).stem: read_passage(text, folder.shown_as + file, known, findings) for file, text in texts if text is not None
    }
