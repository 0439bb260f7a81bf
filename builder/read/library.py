"""The folders of stock, and of the studio's shelf beside it, become what recipes and lessons draw on.

The shelf has the same files as the stock. What it holds under a name takes the place of what the stock holds under that name.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, fields, replace
from functools import partial
from pathlib import Path, PurePosixPath
from types import MappingProxyType
from typing import Any, TypeVar

from builder.cache import find, keep, sum_of, sum_of_files, with_code
from builder.model.dose.limit import ColourRule, FieldRule, Limit
from builder.model.finding import Finding
from builder.model.label.label_sheet import LabelSheet
from builder.model.label.language import ENGLISH, OWN
from builder.model.library import ANY, Library, Rulebook, Unread
from builder.model.recipe.container import Container
from builder.model.recipe.essential_oil import Constituent
from builder.model.recipe.figure import Figure
from builder.model.recipe.ingredient import Ingredient
from builder.model.remembered import remembered
from builder.model.roster.allergy import AllergyWords
from builder.model.teaching.caution import CautionText
from builder.model.teaching.claim import ClaimRules
from builder.model.teaching.lesson import Block
from builder.read.dates.calling_codes import read_calling_codes
from builder.read.dose.essential_oils import read_constituents, with_constituents
from builder.read.dose.limits import read_colour_rules, read_field_rules, read_limits
from builder.read.label.allergens import read_allergens
from builder.read.label.countries import read_countries
from builder.read.label.label_names import read_label_names, with_english
from builder.read.label.label_rules import read_label_warnings, read_type_heights
from builder.read.label.label_sheets import read_label_sheets
from builder.read.label.languages import over, read_languages
from builder.read.label.regions import read_regions
from builder.read.recipe.constants import read_constants
from builder.read.recipe.containers import read_containers
from builder.read.recipe.ingredients import index_ingredients, read_ingredient
from builder.read.recipe.products import read_own_products, read_products, read_usual_ph, with_own
from builder.read.recipe.sources import read_sources
from builder.read.recipe.synonyms import read_synonyms
from builder.read.roster.allergy_words import read_allergy_words
from builder.read.teaching.cautions import read_caution
from builder.read.teaching.drawings import read_drawings
from builder.read.teaching.passages import read_passage
from builder.read.teaching.teaching import read_format_advice, read_supervision
from builder.read.teaching.unsafe_steps import read_claims, read_flame_words, read_lye_words, read_unsafe_steps, read_word_groups
from builder.read.text.text_files import TextFolder
from builder.read.yaml.fit import Known
from builder.read.yaml.placed_yaml import PlacedYaml, read_yaml_file
from builder.words.fold import fold

T = TypeVar("T")
_LIMITS = ("usage_limits", "scent_limits", "limits_by_people")
_SHELF = "shelf"
_KINDS = ("containers", "cautions", "ingredients", "label_sheets")


@dataclass(frozen=True)
class DrawnOn:
    """What the texts of a studio draw on: the library, the passages of lessons, and the names that a text may use."""

    library: Library
    passages: Mapping[str, tuple[Block, ...]]
    known: Known


@dataclass(frozen=True)
class _Shelf:
    """What one folder of shelves holds: those that ship, or the studio's own, which has the same files. `unread` is by kind."""

    containers: Mapping[str, Container]
    label_sheets: Mapping[str, LabelSheet]
    allergy_words: Mapping[str, AllergyWords]
    cautions: Mapping[str, CautionText]
    passages: Mapping[str, tuple[Block, ...]]
    cards: tuple[Ingredient, ...]
    limits: tuple[Limit, ...]
    constituents: tuple[Constituent, ...]
    colour_rules: tuple[ColourRule, ...]
    field_rules: tuple[FieldRule, ...]
    unread: Mapping[str, set[str]]


@dataclass(frozen=True)
class _Shipped:
    """All that ships, with what is wrong in it. `known` is what its texts may name."""

    known: Known
    rulebook: Rulebook
    shelf: _Shelf
    findings: tuple[Finding, ...]


def read_library(content: Path, studio: TextFolder) -> DrawnOn:
    """Read the stock, and the studio's shelf over it."""
    shipped = _shipped(content)
    studio.findings.extend(shipped.findings)
    return _with_shelf(shipped, studio) if studio.holds(_SHELF) else _without_shelf(shipped)


def _with_shelf(shipped: _Shipped, studio: TextFolder) -> DrawnOn:
    """Return the stock with a shelf over it: read once in a process for each state of its files, where that can be told."""
    files = sum_of_files(studio.root / _SHELF)
    if files is None:
        return _drawn_on(shipped, studio)
    try:
        drawn_on, found, met = _shelf_read(shipped, files, str(studio.root))
    except _ChangedError:
        return _drawn_on(shipped, studio)
    studio.findings.extend(found)
    studio.met.update(met)
    return drawn_on


class _ChangedError(Exception):
    """Files changed while they were read."""


@remembered(8)
def _shelf_read(shipped: _Shipped, files: str, root: str) -> tuple[DrawnOn, tuple[Finding, ...], Mapping[str, bool]]:
    folder = TextFolder(Path(root), [])
    drawn_on = _drawn_on(shipped, folder)
    if sum_of_files(folder.root / _SHELF) != files:
        raise _ChangedError
    return drawn_on, tuple(folder.findings), folder.met


@remembered(4)
def _without_shelf(shipped: _Shipped) -> DrawnOn:
    """Return the stock as it is."""
    return _drawn_on(shipped, TextFolder(Path("no shelf"), []))


def _drawn_on(shipped: _Shipped, studio: TextFolder) -> DrawnOn:
    unread: dict[str, set[str]] = {"sources": set()}
    sources = _one(studio, "shelf/sources.yaml", lambda placed: read_sources(placed, studio.findings), unread["sources"])
    kinds = _one(studio, "shelf/products.yaml", lambda placed: read_own_products(placed, shipped.known, studio.findings), set())
    languages = over(shipped.rulebook.languages, read_languages(studio, "shelf/languages"))
    known = replace(
        shipped.known,
        languages=tuple(name for name in languages if name != OWN),
        sources={**shipped.known.sources, **sources},
        products=with_own(dict(shipped.known.products), kinds),
        oils={fold(one.oil): one.oil for one in shipped.shelf.constituents},
        unread_sources=shipped.known.unread_sources | frozenset(unread["sources"]),
    )
    theirs = shipped.shelf
    own = _read_shelf(studio, "shelf/", known, shipped.rulebook.constants, theirs.cautions)
    cards = index_ingredients(theirs.cards, own.cards, studio.findings)
    library = Library(
        **fields_of(Rulebook, shipped.rulebook) | {"languages": languages},
        ingredients=with_constituents(cards, _together(theirs.constituents, own.constituents), shipped.rulebook.allergens),
        containers={**theirs.containers, **own.containers},
        products=known.products,
        sources=known.sources,
        cautions={**theirs.cautions, **own.cautions},
        limits=_together(own.limits, theirs.limits),
        colour_rules=_together(own.colour_rules, theirs.colour_rules),
        field_rules=_together(own.field_rules, theirs.field_rules),
        allergy_words=tuple({**theirs.allergy_words, **own.allergy_words}.values()),
        label_sheets={**theirs.label_sheets, **own.label_sheets},
        unread=Unread(**{kind: frozenset(theirs.unread[kind] | own.unread[kind]) for kind in _KINDS}),
    )
    return DrawnOn(library, {**theirs.passages, **own.passages}, known)


def fields_of(kind: type, value: object) -> dict[str, Any]:
    """Return the fields that a value has as one of a kind, by name, to make a larger value of."""
    return {field.name: getattr(value, field.name) for field in fields(kind)}


def _together(first: tuple[T, ...], then: tuple[T, ...]) -> tuple[T, ...]:
    """Return the rows of two tables. One without the other stays the same value, so that what is known of it is known of it here too."""
    return (*first, *then) if first and then else first or then


def _shipped(content: Path) -> _Shipped:
    """Return the stock that ships: read once in a process for each state of its files, and once for each version where that can be told."""
    files = sum_of_files(content)
    return _kept(files, str(content)) if files else _read_shipped(content)


@remembered(4)
def _kept(files: str, folder: str) -> _Shipped:
    content, key = Path(folder), with_code(files)
    found = find(key) if key else None
    if isinstance(found, _Shipped):
        return found
    read = _read_shipped(content)
    if key and sum_of(content) == key:  # it has not changed meanwhile
        keep(key, read)
    return read


def _read_shipped(folder: Path) -> _Shipped:
    """Read the stock that ships."""
    findings: list[Finding] = []
    content = TextFolder(folder, findings, "content/")
    unread_sources: set[str] = set()
    sources = _one(content, "sources.yaml", lambda placed: read_sources(placed, findings), unread_sources)
    cited = Known(sources, {}, frozenset(unread_sources))
    regions = _one(content, "regions.yaml", lambda placed: read_regions(placed, cited, findings), set())
    cited = replace(cited, regions=tuple(regions))
    products = _one(content, "products.yaml", lambda placed: read_products(placed, cited, findings), set())
    languages = read_languages(content, "languages")
    usual_ph = _one(content, "usual_ph.yaml", lambda placed: read_usual_ph(placed, cited, findings), set())
    synonyms = read_synonyms(read_yaml_file(content, "synonyms.yaml") if content.has("synonyms.yaml") else None)
    known = replace(cited, products=products, languages=tuple(languages), usual_ph=usual_ph, kinds_meant=synonyms.kinds)
    regions = with_english(regions, read_label_names(content, "tables/label_names_us.csv", known))
    allergens = read_allergens(content, "tables/fragrance_allergens_eu.csv", known)
    known = replace(known, allergens=frozenset(name for one in allergens for name in one.counts))
    groups = _one(content, "tables/word_groups.yaml", read_word_groups, set())
    steps = _one(content, "tables/unsafe_steps.yaml", lambda placed: read_unsafe_steps(placed, groups, known, findings), set())
    lye_words = _one(content, "tables/lye_words.yaml", lambda placed: read_lye_words(placed, groups, known, findings), set())
    flame_words = _one(content, "tables/flame_words.yaml", lambda placed: read_flame_words(placed, groups, known, findings), set())
    claims = _one(content, "tables/claims.yaml", lambda placed: {"claims": read_claims(placed, groups, known, findings)}, set())
    constants = _one(content, "constants.yaml", lambda placed: read_constants(placed, known, findings), set())
    rulebook = Rulebook(
        constants=constants,
        supervision=_one(content, "supervision.yaml", lambda placed: read_supervision(placed, known, findings), set()),
        drawings=_one(content, "drawings.yaml", lambda placed: read_drawings(placed, content, known, findings), set()),
        format_advice=_one(content, "format_advice.yaml", lambda placed: read_format_advice(placed, known, findings), set()),
        regions=regions,
        allergens=allergens,
        languages={OWN: ENGLISH, **languages},
        calling_codes=read_calling_codes(content, "tables/calling_codes.csv", known),
        countries=read_countries(content, "tables/countries.csv", known),
        type_heights=read_type_heights(content, "tables/type_heights.csv", known),
        label_warnings=read_label_warnings(content, "tables/label_warnings.csv", known),
        unsafe_steps=tuple(steps.values()),
        lye_words=lye_words,
        flame_words=flame_words,
        claims=claims.get("claims", ClaimRules()),
        synonyms=synonyms,
    )
    return _Shipped(known, rulebook, _read_shelf(content, "", known, constants), tuple(findings))


def _read_shelf(
    folder: TextFolder, at: str, known: Known, constants: Mapping[str, Figure], shipped: Mapping[str, CautionText] = MappingProxyType({})
) -> _Shelf:
    """Read what both the stock and a studio's shelf may hold; `at` is where in the folder it lies, `shipped` the cautions that ship."""
    findings = folder.findings
    unread: dict[str, set[str]] = {kind: set() for kind in _KINDS}
    read_words = partial(read_allergy_words, known=known, findings=findings)
    constituents = read_constituents(folder, f"{at}tables/essential_oils.csv", known)
    known = replace(known, oils={**known.oils, **{fold(one.oil): one.oil for one in constituents}})
    read_card = partial(read_ingredient, known=known, constants=constants, findings=findings)
    containers = _one(folder, f"{at}containers.yaml", lambda placed: read_containers(placed, known, findings), unread["containers"])
    stocks = _one(folder, f"{at}label_sheets.yaml", lambda placed: read_label_sheets(placed, findings), unread["label_sheets"])
    words = _one(folder, f"{at}allergy_words.yaml", read_words, set())
    texts = _each(folder, f"{at}cautions", lambda placed: read_caution(placed, known, findings, shipped), unread["cautions"])
    return _Shelf(
        containers=containers,
        label_sheets=stocks,
        allergy_words=words,
        cautions={text.key: text for text in texts},
        passages=_passages(folder, f"{at}passages", known, findings),
        cards=tuple(_each(folder, f"{at}ingredients", read_card, unread["ingredients"])),
        limits=tuple(limit for name in _LIMITS for limit in read_limits(folder, f"{at}tables/{name}.csv", known)),
        constituents=constituents,
        colour_rules=tuple(read_colour_rules(folder, f"{at}tables/colour_additives_us.csv", known)),
        field_rules=read_field_rules(folder, f"{at}tables/colours_eu.csv", known),
        unread=unread,
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
    """Return the names under which others may speak of what a file holds: the file's own, and those that it states."""
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
