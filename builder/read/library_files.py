"""The files of the library, and of the studio's shelf beside it, are read.

The shelf has the same files as the library. What it holds under a name takes the place of what the library holds under that name.
"""

from collections.abc import Callable, Mapping
from dataclasses import replace
from functools import partial
from pathlib import Path, PurePosixPath
from types import MappingProxyType
from typing import TypeVar, TypeVarTuple, Unpack

from builder.model.finding import Finding
from builder.model.label.language import ENGLISH, OWN
from builder.model.library import ANY, Library, Rulebook, Unread
from builder.model.recipe.figure import Figure
from builder.model.teaching.caution import CautionText
from builder.model.teaching.claim import ClaimRules
from builder.read.dates.countries import CallingCodeRow, read_countries
from builder.read.dose.essential_oils import ConstituentRow, with_constituents
from builder.read.dose.limits import ColourRow, FieldRow, LimitRow
from builder.read.drawn_on import DrawnOn, Shelf, Shipped, fields_of
from builder.read.known import NOTHING_KNOWN, NamesKnown
from builder.read.label.label_rules import AllergenRow, HeightRow, WarningRow, read_label_names, with_english
from builder.read.label.languages import over, read_languages
from builder.read.makes import Makes
from builder.read.recipe.ingredients import index_ingredients, indexed_in_part, read_ingredient
from builder.read.recipe.products import read_own_products, read_usual_ph, with_own
from builder.read.recipe.synonyms import read_synonyms
from builder.read.shapes.figure import FigureShape
from builder.read.shapes.labels import LabelSheetShape
from builder.read.shapes.library import ContainerShape, ProductShape, RegionShape, SourceShape
from builder.read.shapes.prose_tables import AllergyWordsShape
from builder.read.shapes.teaching import WatchRuleShape
from builder.read.teaching.cautions import read_caution
from builder.read.teaching.drawings import read_drawings, read_tool_drawings
from builder.read.teaching.passages import read_passage
from builder.read.teaching.teaching import read_format_advice
from builder.read.teaching.unsafe_steps import read_claims, read_flame_words, read_lye_words, read_unsafe_steps, read_word_groups
from builder.read.text.placed_data import PlacedData
from builder.read.text.tables import read_table
from builder.read.text.text_files import TextFolder
from builder.read.yaml.fit import each_made
from builder.read.yaml.placed_yaml import read_yaml_file
from builder.words.fold import fold

T = TypeVar("T")
Ts = TypeVarTuple("Ts")
_LIMITS = ("usage_limits", "scent_limits", "limits_by_people")
_KINDS = ("containers", "cautions", "ingredients", "label_sheets")


def read_shipped(folder: Path) -> Shipped:
    """Read the library that ships."""
    findings: list[Finding] = []
    content = TextFolder(folder, findings, "content/")
    unread_sources: set[str] = set()
    sources = _made(content, "sources.yaml", SourceShape, unread=unread_sources)
    cited = NamesKnown(sources, {}, frozenset(unread_sources))
    regions = _made(content, "regions.yaml", RegionShape, cited)
    cited = replace(cited, regions=tuple(regions))
    products = _made(content, "products.yaml", ProductShape, cited)
    languages = read_languages(content, "languages")
    usual_ph = _one(content, "usual_ph.yaml", read_usual_ph, cited)
    synonyms = read_synonyms(read_yaml_file(content, "synonyms.yaml") if content.has("synonyms.yaml") else None)
    known = replace(cited, products=products, languages=tuple(languages), usual_ph=usual_ph, kinds_meant=synonyms.kinds)
    regions = with_english(regions, read_label_names(content, "tables/label_names_us.csv", known))
    allergens = read_table(AllergenRow, content, "tables/fragrance_allergens_eu.csv", known)
    known = replace(known, allergens=frozenset(name for one in allergens for name in one.counts))
    groups = _one(content, "tables/word_groups.yaml", lambda placed, _: read_word_groups(placed))
    steps = _one(content, "tables/unsafe_steps.yaml", read_unsafe_steps, groups, known)
    lye_words = _one(content, "tables/lye_words.yaml", read_lye_words, groups, known)
    flame_words = _one(content, "tables/flame_words.yaml", read_flame_words, groups, known)
    claims = _one(content, "tables/claims.yaml", lambda placed, found: {"claims": read_claims(placed, groups, known, found)})
    constants = _made(content, "constants.yaml", FigureShape, known)
    rulebook = Rulebook(
        constants=constants,
        supervision=_made(content, "supervision.yaml", WatchRuleShape, known),
        drawings=_one(content, "drawings.yaml", read_drawings, content, known),
        tool_drawings=_one(content, "tools.yaml", read_tool_drawings, content, known),
        format_advice=_one(content, "format_advice.yaml", read_format_advice, known),
        regions=regions,
        allergens=allergens,
        languages={OWN: ENGLISH, **languages},
        calling_codes=read_table(CallingCodeRow, content, "tables/calling_codes.csv", known),
        countries=read_countries(content, "tables/countries.csv", known),
        type_heights=read_table(HeightRow, content, "tables/type_heights.csv", known),
        label_warnings=read_table(WarningRow, content, "tables/label_warnings.csv", known),
        unsafe_steps=tuple(steps.values()),
        lye_words=lye_words,
        flame_words=flame_words,
        claims=claims.get("claims", ClaimRules()),
        synonyms=synonyms,
    )
    return Shipped(known, rulebook, _read_shelf(content, "", known, constants), tuple(findings))


def _read_shelf(
    folder: TextFolder,
    at: str,
    known: NamesKnown,
    constants: Mapping[str, Figure],
    shipped: Mapping[str, CautionText] = MappingProxyType({}),
) -> Shelf:
    """Read what both the library and a studio's shelf may hold; `at` is where in the folder it lies, `shipped` the cautions that ship."""
    findings = folder.findings
    unread: dict[str, set[str]] = {kind: set() for kind in _KINDS}
    constituents = read_table(ConstituentRow, folder, f"{at}tables/essential_oils.csv", known)
    known = replace(known, oils={**known.oils, **{fold(one.oil): one.oil for one in constituents}})
    read_card = partial(read_ingredient, known=known, constants=constants, findings=findings)
    containers = _made(folder, f"{at}containers.yaml", ContainerShape, known, unread["containers"])
    sheets = _made(folder, f"{at}label_sheets.yaml", LabelSheetShape, unread=unread["label_sheets"])
    words = _made(folder, f"{at}allergy_words.yaml", AllergyWordsShape, known)
    texts, _ = _each(folder, f"{at}cautions", lambda placed: read_caution(placed, known, findings, shipped), unread["cautions"])
    cards, cards_in_part = _each(folder, f"{at}ingredients", read_card, unread["ingredients"])
    written = _texts(folder, f"{at}passages")
    return Shelf(
        containers={fold(name): container for name, container in containers.items()},
        label_sheets={fold(name): sheet for name, sheet in sheets.items()},
        allergy_words=words,
        cautions={text.key: text for text in texts},
        passages={PurePosixPath(file).stem: read_passage(text, file, known, findings) for file, text in written.items()},
        written={PurePosixPath(file).stem: text for file, text in written.items()},
        cards=cards,
        cards_in_part=cards_in_part,
        limits=tuple(limit for name in _LIMITS for limit in read_table(LimitRow, folder, f"{at}tables/{name}.csv", known)),
        constituents=constituents,
        colour_rules=read_table(ColourRow, folder, f"{at}tables/colour_additives_us.csv", known),
        field_rules=read_table(FieldRow, folder, f"{at}tables/colours_eu.csv", known),
        unread=unread,
    )


def _made(
    folder: TextFolder, name: str, shape: type[Makes[T]], known: NamesKnown = NOTHING_KNOWN, unread: set[str] | None = None
) -> dict[str, T]:
    """Read a file of many things by their names, which a shape makes."""
    return _one(folder, name, lambda placed, findings: each_made(shape, placed, findings, known), unread=unread)


def _one(
    folder: TextFolder,
    name: str,
    read: Callable[[PlacedData, Unpack[Ts], list[Finding]], dict[str, T]],
    *known: *Ts,
    unread: set[str] | None = None,
) -> dict[str, T]:
    """Read a file of many things by their names with what its reader has to know; the names of those that cannot be made go to `unread`."""
    if not folder.has(name):
        return {}
    placed = read_yaml_file(folder, name)
    made = {} if placed is None else read(placed, *known, folder.findings)
    if unread is not None:
        unread |= {ANY} if placed is None else {fold(key) for key in placed.places()} - {fold(key) for key in made}
    return made


def _each(
    folder: TextFolder, name: str, read: Callable[[PlacedData], tuple[T | None, bool]], unread: set[str]
) -> tuple[tuple[T, ...], tuple[T, ...]]:
    """Read the files of a folder, one thing a file, and beside them those that can be read in part; note the names of what is not whole."""
    whole: list[T] = []
    in_part: list[T] = []
    for file in folder.files(name, ".yaml"):
        placed = read_yaml_file(folder, file)
        one, is_whole = read(placed) if placed else (None, False)
        if one is not None:
            (whole if is_whole else in_part).append(one)
        if one is None or not is_whole:
            unread |= _names_of(file, placed)
    return tuple(whole), tuple(in_part)


def _names_of(file: str, placed: PlacedData | None) -> set[str]:
    """Return the names under which others may speak of what a file holds: the file's own, and those that it states."""
    stem = PurePosixPath(file).stem
    data = placed.data if placed and isinstance(placed.data, dict) else {}
    others = data.get("also called", [])
    stated = (data.get("name"), *(others if isinstance(others, list) else ()))
    return {stem, stem.replace("-", " "), *(fold(name) for name in stated if isinstance(name, str))}


def _texts(folder: TextFolder, name: str) -> dict[str, str]:
    """Return the texts of a folder that can be read, by the names under which their files are shown."""
    texts = ((folder.shown_as + file, folder.text(file)) for file in folder.files(name, ".md"))
    return {file: text for file, text in texts if text is not None}


def drawn_on(shipped: Shipped, studio: TextFolder) -> DrawnOn:
    """Return what a studio draws on: what ships, with its shelf over it."""
    unread: dict[str, set[str]] = {"sources": set()}
    sources = _made(studio, "shelf/sources.yaml", SourceShape, unread=unread["sources"])
    kinds = _one(studio, "shelf/products.yaml", read_own_products, shipped.known)
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
    written = {key: text for key, text in theirs.written.items() if key not in own.passages}
    cards_in_part = indexed_in_part(theirs.cards, own.cards, own.cards_in_part, studio.findings)
    return DrawnOn(library, {**theirs.passages, **own.passages}, written, known, cards_in_part)


def _together(first: tuple[T, ...], then: tuple[T, ...]) -> tuple[T, ...]:
    """Return the rows of two tables. One without the other stays the same value, so that what is known of it is known of it here too."""
    return (*first, *then) if first and then else first or then
