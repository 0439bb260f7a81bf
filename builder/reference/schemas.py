"""The shapes of a studio's files as JSON Schemas (draft 2020-12), with which a text editor completes, explains and underlines.

What a key means is the sentence beneath its field, what may stand there is what its field reads, and names are those of the library and of
the studio's own shelf. A schema never refuses what the program reads: words of closed lists are met in capitals and small letters alike,
and names are offered, not asked for, since a file may name what is written a minute later.

Decided: schemas lie in a hidden folder of the studio. Why: nothing there is read or published, and any editor finds it by a relative path.
"""

import json
import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from inspect import isclass
from pathlib import PurePosixPath
from types import UnionType
from typing import Any, Union, get_args, get_origin

from pydantic import BeforeValidator
from pydantic.fields import FieldInfo

from builder.model.library import Library
from builder.model.recipe.ingredient import CountsAs
from builder.model.recipe.quantity import Amount, Count, Density, Duration, Length, Mass, Share, Temperature, Volume
from builder.model.studio import Studio
from builder.read.shapes.fields import parser_of
from builder.read.shapes.shape import Shape
from builder.read.values import values
from builder.reference.descriptions import about_field, about_shape
from builder.reference.files import BY_NAME, LISTED, STUDIO_FILES, StudioFile
from builder.reference.value_words import value_words
from builder.words.spelling import american
from builder.words.within import within

FOLDER = ".schemas"
_HEAD = "# yaml-language-server: $schema="
_DRAFT = "https://json-schema.org/draft/2020-12/schema"
Schema = dict[str, Any]
_SCALAR: Schema = {"type": ["string", "number"]}
_MOST = 200
# What has a unit is a text in which a figure stands; a number alone lacks its unit, and no unit is guessed.
_WITH_UNITS = (Mass, Volume, Temperature, Duration, Share, Length, Density, Count)
_FIGURE = "[0-9\u00bc-\u00be\u2150-\u215e]"


@dataclass(frozen=True)
class Names:
    """The names that files may use, each list with what is said of its members where anything is."""

    lists: Mapping[str, Mapping[str, str]] = field(default_factory=dict)

    def of(self, what: str) -> Mapping[str, str]:
        """Return the names of one kind."""
        return self.lists.get(what, {})


def names_in(library: Library, recipes: Iterable[str] = (), findings: Mapping[str, str] | None = None) -> Names:
    """Collect the names that a library and a studio hold."""
    cards = {card.name: card.about for card in library.ingredients.values()}
    return Names(
        {
            "kinds": dict.fromkeys(library.products, ""),
            "kinds meant": dict.fromkeys(library.synonyms.kinds, ""),
            "regions": dict.fromkeys(library.regions, ""),
            "containers": {one.name: "" for one in library.containers.values()},
            "ingredients": {within(name): about for name, about in sorted(cards.items())},
            "alkalis": {within(card.name): card.about for card in library.ingredients.values() if card.counts_as is CountsAs.ALKALI},
            "sheets": dict.fromkeys(library.label_sheets, ""),
            "sources": {key: source.title for key, source in library.sources.items()},
            "recipes": dict.fromkeys(recipes, ""),
            "findings": findings or {},
        }
    )


# Under which keys a name of a list stands: as the value, or as the keys within.
_NAMED = {
    "container": "containers", "ingredient": "ingredients", "from": "ingredients", "not for colour": "ingredients", "sheet": "sheets",
    "alkali": "alkalis",
}  # fmt: skip
_KEYED = {"ingredients": "ingredients", "makes": "recipes", "accepts": "findings", "later": "ingredients", "alkali": "alkalis"}


def editor_files(studio: Studio) -> dict[str, str]:
    """Return every schema of a studio by its file name."""
    from builder.finding_kinds import finding_kinds

    acceptable = {kind.name: kind.means for kind in finding_kinds().values() if kind.acceptable or kind.cautions}
    names = names_in(studio, studio.recipes, acceptable)
    return {
        f"{FOLDER}/{PurePosixPath(file.key).stem}.json": json.dumps(schema_of(file, names), ensure_ascii=False) + "\n"
        for file in STUDIO_FILES
        if file.path.endswith(".yaml")
    }


def head_of(name: str) -> str:
    """Return the line that leads an editor from a file of a studio to its schema; empty for a file that has none."""
    file = next((file for file in STUDIO_FILES if file.path.endswith(".yaml") and file.is_at(name)), None)
    up = "../" * name.count("/")
    return f"{_HEAD}{up}{FOLDER}/{PurePosixPath(file.key).stem}.json\n" if file else ""


def marked(files: Mapping[str, str]) -> dict[str, str]:
    """Return files with that line at their heads, where they have none."""
    return {name: text if _HEAD in text else head_of(name) + text for name, text in files.items()}


def schema_of(file: StudioFile, names: Names) -> Schema:
    """Make the schema of one file."""
    defs: dict[str, Schema] = {}
    refs = [_shape(shape, names, defs) for shape in file.shapes]
    one = refs[0] if len(refs) == 1 else {"anyOf": refs}
    whole: Schema = {LISTED: {"type": "array", "items": one}, BY_NAME: {"type": "object", "additionalProperties": one}}.get(
        file.arranged, one
    )
    return {"$schema": _DRAFT, "title": file.path, "description": file.about, **whole, "$defs": dict(sorted(defs.items()))}


def _shape(shape: type[Shape], names: Names, defs: dict[str, Schema]) -> Schema:
    key = shape.__name__.removesuffix("Shape")
    if key not in defs:
        defs[key] = {}
        fields = {str(one.alias): _described(shape, name, one, names, defs) for name, one in shape.model_fields.items()}
        needed = [key for key, one in zip(fields, shape.model_fields.values(), strict=True) if one.is_required() and american(key) == key]
        fields |= {
            american(key): {**told, "description": f"{key}: {told['description']}"} for key, told in fields.items() if american(key) != key
        }
        defs[key] = {"type": "object", "description": about_shape(shape), "properties": fields, "additionalProperties": False}
        defs[key] |= {"required": needed} if needed else {}
    return {"$ref": f"#/$defs/{key}"}


def _described(shape: type[Shape], name: str, one: FieldInfo, names: Names, defs: dict[str, Schema]) -> Schema:
    key = str(one.alias)
    example = f"\n\nExample: {key}: {one.examples[0]}" if one.examples else ""
    words = value_words(one)[:_MOST]
    told = f"{about_field(shape, name)}\n\n{_begun(words)}{', needed' if one.is_required() else ''}.{example}"
    value = _value(key, one.annotation, tuple(one.metadata), names, defs)
    if _FIGURE in value.get("pattern", ""):
        # A word of this schema's own for editors that show it in place of the pattern; others pass it over.
        unit = ", with its unit" if value["type"] == "string" else ""
        shown = f', as in "{key}: {one.examples[0]}"' if one.examples else ""
        needed = f"Here stands {words}{unit}{shown}."
        value = {**value, "errorMessage": needed, "patternErrorMessage": needed}
    return {"description": told, **value}


def _begun(words: str) -> str:
    return words[:1].upper() + words[1:]


def _value(key: str, annotation: Any, metadata: tuple[Any, ...], names: Names, defs: dict[str, Schema]) -> Schema:
    if hasattr(annotation, "__metadata__"):
        inner, *more = get_args(annotation)
        return _value(key, inner, (*more, *metadata), names, defs)
    written = _typed(key, annotation, metadata, names, defs)
    is_short = any(isinstance(one, BeforeValidator) for one in metadata)
    return {"anyOf": [_named(key, names), written]} if is_short and written.get("type") != ["string", "number"] else written


def _typed(key: str, annotation: Any, metadata: tuple[Any, ...], names: Names, defs: dict[str, Schema]) -> Schema:
    arguments = [one for one in get_args(annotation) if one is not type(None)]
    origin = get_origin(annotation)
    parser = next((parser for one in metadata if (parser := parser_of(one))), None)
    if parser:
        return _read_by(parser, key, annotation, names)
    if origin in (Union, UnionType):
        # What a validator makes of a short form stands beside the long form, whichever of them is meant.
        return _value(key, arguments[0], metadata, names, defs) if len(arguments) == 1 else _SCALAR
    if origin in (tuple, frozenset):
        return {"type": "array", "items": _value(key, arguments[0], (), names, defs)}
    if origin is dict:
        inner = _value("", arguments[1], (), names, defs)
        offered = names.of(_KEYED.get(key, ""))
        return {
            "type": "object",
            "additionalProperties": inner,
            **(
                {"properties": {name: inner | ({"description": about} if about else {}) for name, about in offered.items()}}
                if offered
                else {}
            ),
        }
    if isclass(annotation) and issubclass(annotation, Shape):
        return _shape(annotation, names, defs)
    return _SCALAR


def _read_by(parser: Any, key: str, annotation: Any, names: Names) -> Schema:
    words = tuple(getattr(parser, "words", ()))
    if words:
        return _one_of(words)
    if parser is values.parse_yes_or_no:
        return _one_of(("yes", "no"))
    if parser is values.find_product:
        return _one_of(tuple(names.of("kinds")), tuple(names.of("kinds meant")))
    if parser is values.find_region:
        return _one_of(tuple(names.of("regions")))
    if parser is values.find_source:
        return _offered(names.of("sources"))
    if annotation is int:
        return {"type": ["integer", "string"], "pattern": _FIGURE}
    if annotation in _WITH_UNITS:
        return {"type": "string", "pattern": _FIGURE}
    if annotation is Fraction:
        return _SCALAR | {"pattern": _FIGURE}
    if annotation is Amount:
        needed = "Here stands an amount, as in 65 %, 12 g, 2 parts or rest."
        return {"type": "string", "pattern": f"{_FIGURE}|^\\s*[Rr][Ee][Ss][Tt]\\s*$", "errorMessage": needed, "patternErrorMessage": needed}
    return _named(key, names)


def _named(key: str, names: Names) -> Schema:
    return _offered(names.of(_NAMED.get(key, "")))


def _offered(names: Mapping[str, str]) -> Schema:
    """Offer names, and take any other text."""
    return {"anyOf": [{"enum": list(names)}, _SCALAR]} if names else _SCALAR


def _one_of(words: tuple[str, ...], others: tuple[str, ...] = ()) -> Schema:
    """Take one word of a closed list, or another word for it, in either spelling and in any letters; offer the list as it stands here."""
    if all(re.fullmatch("[0-9]+", word) for word in words):
        return {"enum": [*words, *(int(word) for word in words)]}
    known = dict.fromkeys(form for word in (*words, *others) for form in (word, american(word)))
    pattern = f"^\\s*({'|'.join(_any_case(word) for word in known)})\\s*$"
    return {"anyOf": [{"enum": list(words)}, {"type": "string", "pattern": pattern}]}


def _any_case(word: str) -> str:
    return "".join(_letters(word))


def _letters(word: str) -> Iterator[str]:
    for sign in word:
        if sign.isalpha():
            yield f"[{sign.lower()}{sign.upper()}]"
        else:
            yield r"\s+" if sign == " " else re.escape(sign)
