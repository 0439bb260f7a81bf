"""The studio's own templates are tried on what they are to show, so that whatever is wrong in one is found with its line, and before
anything is written.
"""

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from typing import Any

from builder.compose.document_kind import AnyKind, Readers
from builder.compose.document_table import DOCUMENTS, documents_of
from builder.compose.edition import Edition
from builder.compose.frames import SCREEN_STYLES
from builder.compose.own_documents import faults_of
from builder.compose.templates import OWN_SCREEN, TemplateFault, TemplateFaultError, Templates
from builder.compose.tried.safety_said import dropped, said_in, sentences_of
from builder.compose.tried.safety_seen import Sight
from builder.compose.tried.style_rules import Medium, Style
from builder.model.document import Document
from builder.model.label.typeface import MeasuredOn
from builder.model.own_document import FaultyLayout, LayoutFault, OwnDocument
from builder.model.place import Place

# Comments and strings.
_NO_RULE = re.compile(r"""/\*.*?\*/|"(?:\\.|[^"\\\n])*"|'(?:\\.|[^'\\\n])*'""", re.DOTALL)
_BRACKET = re.compile(r"[(\[{}\])]")
_DEEPEST = 30


def faulty_layouts(edition: Edition, by_name: Edition) -> tuple[FaultyLayout, ...]:
    """Find everything that is wrong with the studio's own documents and templates; `by_name` is the edition with the names of people."""
    described = tuple(faults_of(edition.studio, DOCUMENTS))
    templates = edition.templates
    broken = [fault for name in templates.own if (fault := templates.fault_in(name))]
    missing = tuple(_missing(edition, edition.studio.profile.documents))
    styles = tuple(_broken_styles(templates))
    found = (*described, *(_faulty(fault) for fault in broken), *styles, *missing)
    if found:
        return found
    kinds = documents_of(edition.studio)
    tried = dict.fromkeys(_tried(kinds, edition, by_name))
    used = {name for kind in kinds if kind.template for name in templates.used_by(kind.template)}
    unused = (name for name in templates.own if name not in used and name not in templates.of_library)
    return (*tried, *(FaultyLayout(LayoutFault.NOT_USED, Place(f"layouts/{name}"), name) for name in unused))


def _tried(kinds: Iterable[AnyKind], edition: Edition, by_name: Edition) -> Iterator[FaultyLayout]:
    """Make every document that has something of the studio's own in its look, and look at it; the first fault of a kind is told.

    A template that came to no end is not filled in again, for other documents: each time takes as long.
    """
    sentences = tuple(dict.fromkeys(" ".join(one.split()) for one in sentences_of(edition.studio)))
    sight = Sight(sentences, _least_pixels(edition))
    own_styles = dict(edition.templates.own_style_texts())
    for kind in kinds:
        templates = [name for name in edition.templates.used_by(kind.template or "") if name in edition.templates.own]
        if kind.template is None or not (own_styles or templates):
            continue
        seen = by_name if kind.readers is Readers.STAFF_WITH_NAMES else edition
        try:
            made = [(subject, document) for subject in kind.scope.all(seen) if (document := kind.make(seen, subject))]
        except TemplateFaultError as error:
            yield _faulty(error.fault)
            if error.fault.endless:
                return
            continue
        if templates and kind in DOCUMENTS:
            yield from _dropped(kind, made, seen, templates[0])
        yield from _hidden(kind, (document for _, document in made), edition, sight, own_styles, next(iter(templates), ""))


def _dropped(kind: AnyKind, made: Iterable[tuple[Any, Document]], edition: Edition, template: str) -> Iterator[FaultyLayout]:
    """Compare what each document says of dangers with what it says by our own templates."""
    with_ours = replace(edition, templates=edition.templates.library)
    for subject, own in made:
        ours = kind.make(with_ours, subject)
        gone = dropped(edition.studio, ours.html, own.html) if ours else None
        if gone:
            yield FaultyLayout(LayoutFault.SAFETY_DROPPED, Place(f"layouts/{template}"), gone, said=kind.name)
            return


def _broken_styles(templates: Templates) -> Iterator[FaultyLayout]:
    """Find the styles of the studio in which a brace has no other: browsers leave out what stands behind it without a word.

    Of one in which more stands within one another than anybody writes, it cannot be told what it hides.
    """
    for name, text in templates.own_style_texts():
        open_at: list[int] = []
        brackets, deepest = 0, (0, 0)
        for line, written in enumerate(_NO_RULE.sub(lambda found: "\n" * found[0].count("\n"), text).split("\n"), 1):
            for bracket in _BRACKET.findall(written):
                brackets = max(brackets + (1 if bracket in "([{" else -1), 0)
                deepest = max(deepest, (brackets, -line))
                if bracket == "{":
                    open_at.append(line)
                elif bracket == "}" and open_at:
                    open_at.pop()
                elif bracket == "}":
                    yield _style_fault(name, line, 'a "}" closes nothing')
        yield from (_style_fault(name, line, 'a "{" is never closed') for line in open_at[:1])
        if deepest[0] > _DEEPEST:
            yield _style_fault(name, -deepest[1], f"more than {_DEEPEST} brackets are open here at once")


def _style_fault(name: str, line: int, said: str) -> FaultyLayout:
    return FaultyLayout(LayoutFault.TEMPLATE_BROKEN, Place(f"layouts/{name}", line, 1, 1), name, said=said)


def _hidden(
    kind: AnyKind, made: Iterable[Document], edition: Edition, sight: Sight, own: Mapping[str, str], template: str
) -> Iterator[FaultyLayout]:
    """Look at what documents of one kind say of dangers, if it can be read; at those alone that say what none before them has said."""
    looked_at = set[str]()
    for document in made:
        said = set(said_in(sight.sentences, document.html)) - looked_at
        looked_at |= said
        told = sight.hidden(document.html, _styles_of(document, edition, own), template, _media_of(document)) if said else None
        if told:
            columns = (told.by.line, told.by.column, len(told.by.name)) if told.by.line else ()
            place = Place(f"layouts/{told.by.own}", *columns)
            yield FaultyLayout(LayoutFault.SAFETY_HIDDEN, place, told.said, (f"{told.by.name}: {told.by.value}",), kind.name)
            return


def _least_pixels(edition: Edition) -> float:
    """Return the least size of type of a caution, in CSS pixels of which 96 are an inch."""
    height, face = edition.studio.constants.get("least height of a caution on pages and sheets"), edition.studio.typefaces.get("regular")
    return face.size_for("text", float(height.typical), MeasuredOn.LETTERS) / 72 * 96 if height and face else 0.0


def _media_of(document: Document) -> tuple[Medium, ...]:
    return (Medium.PAPER,) if document.path.endswith(".pdf") else tuple(Medium)


def _styles_of(document: Document, edition: Edition, own: Mapping[str, str]) -> tuple[Style, ...]:
    """Return the styles of a sheet or of a page, in order; the studio's own page style stands in the page, after all others."""
    names = document.styles if document.path.endswith(".pdf") else (*SCREEN_STYLES, OWN_SCREEN)
    files = [f"styles/{name}" for name in names]
    return tuple(
        Style(own[file], file) if file in own else Style(edition.templates.source(file)) for file in files if _is_there(file, edition, own)
    )


def _is_there(file: str, edition: Edition, own: Mapping[str, str]) -> bool:
    return file in own or file in edition.templates.of_library


def _missing(edition: Edition, documents: tuple[OwnDocument, ...]) -> Iterator[FaultyLayout]:
    for own in documents:
        if not edition.templates.has(own.template.text):
            yield FaultyLayout(LayoutFault.TEMPLATE_MISSING, own.template.place, own.template.text, edition.templates.own)


def _faulty(fault: TemplateFault) -> FaultyLayout:
    kind = LayoutFault.NAME_UNKNOWN if fault.unknown else LayoutFault.TEMPLATE_MISSING if fault.missing else LayoutFault.TEMPLATE_BROKEN
    place = Place(f"layouts/{fault.template}", fault.line, *fault.columns)
    return FaultyLayout(kind, place, fault.unknown or fault.missing, fault.known, fault.said)
