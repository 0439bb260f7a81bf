"""All documents of a run, and what they are composed from."""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import replace
from datetime import date
from pathlib import Path

from builder.compose.assets import list_files
from builder.compose.document_kind import AnyKind, Readers
from builder.compose.document_table import documents_of
from builder.compose.edition import Edition
from builder.compose.machines.sharing import sharing_pictures
from builder.compose.machines.site_map import site_map
from builder.compose.templates import Templates
from builder.model.document import CopiedFile, Document, Folder, Publication
from builder.model.finding import Finding
from builder.model.held_back import NOTHING_HELD, HeldBack
from builder.model.studio import Studio
from builder.model.supplies.shopping import Shopping
from builder.model.teaching.class_plan import ClassPlan


def compose_documents(edition: Edition, by_name: Edition) -> Publication:
    """Compose every document of a run; the arguments are what `editions` gives."""
    made = (kind.make(seen, subject) for kind, seen in kinds_with_editions(edition, by_name) for subject in kind.scope.all(seen))
    documents = tuple(document for document in made if document is not None)
    whole = site_map(edition, documents)
    documents = (*documents, whole) if whole else documents
    files = list_files(edition, documents)
    drawn = sharing_pictures(edition)
    _refuse_one_address_for_two([*documents, *files, *(CopiedFile(Folder.SITE, one.path, "", "") for one in drawn)])
    return Publication(documents, files, drawn)


def editions(
    studio: Studio,
    plans: tuple[ClassPlan, ...],
    findings: Sequence[Finding],
    layout_folders: tuple[Path, ...],
    today: date,
    with_pdf: bool = True,
    shopping: Shopping | None = None,
    held: HeldBack = NOTHING_HELD,
) -> tuple[Edition, Edition]:
    """Return what documents are composed from, without the names of people and, for the sheets of the staff alone, with them.

    `plans` holds one class plan for each date of each class to publish, or one without a date. `findings` are those that were accepted
    and the cautions that stand. Of `layout_folders` the first that has a template counts. Without PDFs no page links to one.
    `shopping` is what to buy for all dates. `held` says which labels are not to be made.
    """
    public = tuple(plan.without_names() for plan in plans)
    edition = Edition(studio.without_names(), public, findings, Templates(layout_folders), today, with_pdf, held, shopping)
    return edition, replace(edition, plans=plans)


def kinds_with_editions(edition: Edition, by_name: Edition) -> Iterator[tuple[AnyKind, Edition]]:
    """Return every kind of document with what it is composed from: names of people only where it is for staff who know them."""
    return ((kind, by_name if kind.readers is Readers.STAFF_WITH_NAMES else edition) for kind in documents_of(edition.studio))


def _refuse_one_address_for_two(made: Sequence[Document | CopiedFile]) -> None:
    """See that nothing would be written over something else, also where capital letters do not tell files apart."""
    counts = Counter(f"{one.folder}/{one.path}".casefold() for one in made)
    twice = sorted(path for path, number in counts.items() if number > 1)
    if twice:
        raise ValueError(f"several documents would be written to one address: {', '.join(twice)}")
