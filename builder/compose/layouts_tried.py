"""The studio's own templates are tried on what they are to show, so that whatever is wrong in one is found with its line, and before
anything is written.
"""

from collections.abc import Iterator

from builder.compose.document_kind import AnyKind, Readers
from builder.compose.document_table import DOCUMENTS, documents_of
from builder.compose.edition import Edition
from builder.compose.own_documents import faults_of
from builder.compose.templates import TemplateFault, TemplateFaultError
from builder.model.own_document import FaultyLayout, LayoutFault, OwnDocument
from builder.model.place import Place


def faulty_layouts(edition: Edition, by_name: Edition) -> tuple[FaultyLayout, ...]:
    """Find everything that is wrong with the studio's own documents and templates; `by_name` is the edition with the names of people."""
    described = tuple(faults_of(edition.studio, DOCUMENTS))
    templates = edition.templates
    broken = [fault for name in templates.own if (fault := templates.fault_in(name))]
    missing = tuple(_missing(edition, edition.studio.profile.documents))
    found = (*described, *(_faulty(fault) for fault in broken), *missing)
    if found:
        return found
    kinds = documents_of(edition.studio)
    tried = dict.fromkeys(fault for kind in kinds for fault in _tried(kind, edition, by_name))
    used = {name for kind in kinds if kind.template for name in templates.used_by(kind.template)}
    unused = (name for name in templates.own if name not in used and name not in templates.of_library)
    return (*tried, *(FaultyLayout(LayoutFault.NOT_USED, Place(f"layouts/{name}"), name) for name in unused))


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
        for subject in kind.scope.all(seen):
            kind.make(seen, subject)
    except TemplateFaultError as error:
        yield _faulty(error.fault)


def _faulty(fault: TemplateFault) -> FaultyLayout:
    kind = LayoutFault.NAME_UNKNOWN if fault.unknown else LayoutFault.TEMPLATE_MISSING if fault.missing else LayoutFault.TEMPLATE_BROKEN
    place = Place(f"layouts/{fault.template}", fault.line, *fault.columns)
    return FaultyLayout(kind, place, fault.unknown or fault.missing, fault.known, fault.said)
