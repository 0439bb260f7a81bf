"""All documents of a run, and what they are composed from."""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import replace
from datetime import date
from functools import partial
from pathlib import Path

from builder.compose.assets import list_files
from builder.compose.document_kind import AnyKind, Readers
from builder.compose.document_table import documents_of
from builder.compose.edition import Edition
from builder.compose.machines.sharing import sharing_pictures
from builder.compose.machines.site_map import site_map
from builder.compose.seen_by_classes import seen_by_classes
from builder.compose.templates import Templates
from builder.model.document import CopiedFile, Document, Folder, Joined, Origin, Publication
from builder.model.finding import Finding
from builder.model.held_back import NOTHING_HELD, HeldBack
from builder.model.remembered import remembered
from builder.model.studio import Studio
from builder.model.supplies.shopping import Shopping
from builder.model.teaching.class_plan import ClassPlan
from builder.words.say import speaking, spoken


def compose_documents(edition: Edition, by_name: Edition) -> Publication:
    """Compose every document of a run; the arguments are what `editions` gives."""
    documents = tuple(
        document
        for number, kind, seen in _numbered_kinds(edition, by_name)
        for document in (_of_one_class(number, seen) if _is_known(kind, seen) else _all_of(kind, seen))
    )
    whole = site_map(edition, documents)
    documents = (*documents, whole) if whole else documents
    files = list_files(edition, documents)
    drawn = sharing_pictures(edition)
    _refuse_one_address_for_two([*documents, *files, *(CopiedFile(Folder.SITE, one.path, Origin.PICTURES, "") for one in drawn)])
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
    listed = frozenset(studio.rosters)
    edition = Edition(studio.without_names(), public, findings, Templates(layout_folders), today, with_pdf, held, shopping, listed)
    return edition, replace(edition, plans=plans)


def kinds_with_editions(edition: Edition, by_name: Edition) -> Iterator[tuple[AnyKind, Edition]]:
    """Return every kind of document with what it is composed from: names of people only where it is for staff who know them, and for
    each class what that class sees, where it is about one.
    """
    return ((kind, seen) for _, kind, seen in _numbered_kinds(edition, by_name))


def _numbered_kinds(edition: Edition, by_name: Edition) -> Iterator[tuple[int, AnyKind, Edition]]:
    of_classes = {id(one): seen_by_classes(one) for one in (edition, by_name)}
    for number, kind in enumerate(documents_of(edition.studio)):
        whole = by_name if kind.readers is Readers.STAFF_WITH_NAMES else edition
        yield from ((number, kind, seen) for seen in (of_classes[id(whole)] if kind.scope.of_one_class else (whole,)))


def _is_known(kind: AnyKind, seen: Edition) -> bool:
    """Tell whether documents of a kind are made of nothing but what a class sees; where another language is spoken, they are not."""
    return kind.scope.of_one_class and spoken() is seen.studio.speaks.messages


def _all_of(kind: AnyKind, edition: Edition) -> Iterator[Document]:
    return (document for subject in kind.scope.all(edition) if (document := kind.make(edition, subject)))


def _of_one_class(number: int, seen: Edition) -> Iterator[Document]:
    """Yield the documents of a kind about one class, by its number among the kinds."""
    for place, document in enumerate(_known(number, seen)):
        joined, cover = document.joined, partial(_cover, number, seen, place)
        yield replace(document, joined=replace(joined, cover=cover)) if joined else document


@remembered(4096)
def _known(number: int, seen: Edition) -> tuple[Document, ...]:
    """Compose them; of what joins others the cover is asked for once it is known what it is to say."""
    made = _all_of(documents_of(seen.studio)[number], seen)
    return tuple(replace(one, joined=Joined(one.joined.sheets, _unasked)) if one.joined else one for one in made)


@remembered(1024, tuple)
def _cover(number: int, seen: Edition, place: int, pages: tuple[int, ...], own: int) -> str:
    with speaking(seen.studio.speaks.messages):
        joined = [*_all_of(documents_of(seen.studio)[number], seen)][place].joined
        assert joined
        return joined.cover(pages, own)


def _unasked(pages: tuple[int, ...], own: int) -> str:
    raise AssertionError(f"a cover for {pages} and {own} pages is asked of what is only kept")


def _refuse_one_address_for_two(made: Sequence[Document | CopiedFile]) -> None:
    """See that nothing would be written over something else, also where capital letters do not tell files apart."""
    counts = Counter(f"{one.folder}/{one.path}".casefold() for one in made)
    twice = sorted(path for path, number in counts.items() if number > 1)
    if twice:
        raise ValueError(f"several documents would be written to one address: {', '.join(twice)}")
