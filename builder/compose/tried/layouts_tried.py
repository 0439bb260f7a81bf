"""The studio's own templates are tried on what they are to show, so that whatever is wrong in one is found with its line, and before
anything is written.
"""

import re
from collections.abc import Iterator, Mapping
from dataclasses import replace

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

_COMMENT = re.compile(r"/\*.*?\*/", re.DOTALL)
_BRACE = re.compile(r"[{}]")


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
    tried = dict.fromkeys(fault for kind in kinds for fault in _tried(kind, edition, by_name))
    tried |= dict.fromkeys(_hidden(edition, by_name))
    used = {name for kind in kinds if kind.template for name in templates.used_by(kind.template)}
    unused = (name for name in templates.own if name not in used and name not in templates.of_library)
    return (*tried, *(FaultyLayout(LayoutFault.NOT_USED, Place(f"layouts/{name}"), name) for name in unused))


def _broken_styles(templates: Templates) -> Iterator[FaultyLayout]:
    """Find the styles of the studio in which a brace has no other: browsers leave out what stands behind it without a word."""
    for name, text in templates.own_style_texts():
        open_at: list[int] = []
        for line, written in enumerate(_COMMENT.sub(lambda found: "\n" * found[0].count("\n"), text).split("\n"), 1):
            for brace in _BRACE.findall(written):
                if brace == "{":
                    open_at.append(line)
                elif open_at:
                    open_at.pop()
                else:
                    yield _style_fault(name, line, 'a "}" closes nothing')
        yield from (_style_fault(name, line, 'a "{" is never closed') for line in open_at[:1])


def _style_fault(name: str, line: int, said: str) -> FaultyLayout:
    return FaultyLayout(LayoutFault.TEMPLATE_BROKEN, Place(f"layouts/{name}", line, 1, 1), name, said=said)


def _hidden(edition: Edition, by_name: Edition) -> Iterator[FaultyLayout]:
    """Look at every document that has something of the studio's own in its look, if it says something of a danger; one fault for each kind.

    Of documents of one kind only those are looked at that say what none before them has said.
    """
    sentences = tuple(dict.fromkeys(" ".join(one.split()) for one in sentences_of(edition.studio)))
    sight = Sight(sentences, _least_pixels(edition))
    own_styles = dict(edition.templates.own_style_texts())
    for kind in documents_of(edition.studio):
        templates = [name for name in edition.templates.used_by(kind.template or "") if name in edition.templates.own]
        if not (own_styles or templates) or kind.template is None:
            continue
        seen, looked_at = by_name if kind.readers is Readers.STAFF_WITH_NAMES else edition, set[str]()
        try:
            for document in (made for subject in kind.scope.all(seen) if (made := kind.make(seen, subject))):
                said = set(said_in(sentences, document.html)) - looked_at
                looked_at |= said
                styles = _styles_of(document, edition, own_styles)
                told = sight.hidden(document.html, styles, next(iter(templates), ""), _media_of(document)) if said else None
                if told:
                    columns = (told.by.line, told.by.column, len(told.by.name)) if told.by.line else ()
                    place = Place(f"layouts/{told.by.own}", *columns)
                    yield FaultyLayout(LayoutFault.SAFETY_HIDDEN, place, told.said, (f"{told.by.name}: {told.by.value}",), kind.name)
                    break
        except TemplateFaultError:
            continue


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


def _tried(kind: AnyKind, edition: Edition, by_name: Edition) -> Iterator[FaultyLayout]:
    """Fill in a template for each of its subjects, if any of it is the studio's; the first fault of it is told."""
    if kind.template is None or not set(edition.templates.used_by(kind.template)) & set(edition.templates.own):
        return
    seen = by_name if kind.readers is Readers.STAFF_WITH_NAMES else edition
    try:
        made = [(subject, kind.make(seen, subject)) for subject in kind.scope.all(seen)]
    except TemplateFaultError as error:
        yield _faulty(error.fault)
        return
    if kind in DOCUMENTS:
        with_ours = replace(seen, templates=seen.templates.library)
        place = Place(f"layouts/{next(name for name in seen.templates.used_by(kind.template) if name in seen.templates.own)}")
        for subject, own in made:
            ours = kind.make(with_ours, subject)
            gone = dropped(seen.studio, ours.html, own.html) if ours and own else None
            if gone:
                yield FaultyLayout(LayoutFault.SAFETY_DROPPED, place, gone, said=kind.name)
                return


def _faulty(fault: TemplateFault) -> FaultyLayout:
    kind = LayoutFault.NAME_UNKNOWN if fault.unknown else LayoutFault.TEMPLATE_MISSING if fault.missing else LayoutFault.TEMPLATE_BROKEN
    place = Place(f"layouts/{fault.template}", fault.line, *fault.columns)
    return FaultyLayout(kind, place, fault.unknown or fault.missing, fault.known, fault.said)
