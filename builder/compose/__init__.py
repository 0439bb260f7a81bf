"""Studio, class sheets and findings to documents, already in words: what each one shows, where it goes, what is copied beside it."""

from collections import Counter
from collections.abc import Sequence
from datetime import date
from pathlib import Path

from builder.compose.assets import list_files
from builder.compose.documents.bench_cards import compose_bench_cards
from builder.compose.documents.catalogue import compose_catalogue
from builder.compose.documents.checklists import compose_checklist
from builder.compose.documents.class_pages import compose_class_page
from builder.compose.documents.dose_cards import compose_dose_cards
from builder.compose.documents.label_test_page import compose_test_page
from builder.compose.documents.labels import compose_labels
from builder.compose.documents.published_dates import compose_published_dates
from builder.compose.documents.shopping import compose_shopping
from builder.compose.documents.tags import compose_tags
from builder.compose.documents.take_home import compose_take_home
from builder.compose.documents.teacher_sheets import compose_teacher_sheet
from builder.compose.documents.text_pages import compose_pages
from builder.compose.edition import Edition
from builder.compose.templates import Templates
from builder.model.document import CopiedFile, Document, Publication
from builder.model.finding import Finding
from builder.model.held_back import NOTHING_HELD, HeldBack
from builder.model.studio import Studio
from builder.model.supplies.shopping import Shopping
from builder.model.teaching.class_plan import ClassPlan

__all__ = ["compose_documents"]


def compose_documents(
    studio: Studio,
    sheets: tuple[ClassPlan, ...],
    findings: Sequence[Finding],
    layout_folders: tuple[Path, ...],
    today: date,
    with_pdf: bool = True,
    shopping: Shopping | None = None,
    held: HeldBack = NOTHING_HELD,
) -> Publication:
    """Compose every document of a run.

    `sheets` holds one class sheet for each date of each class to publish, or one without a date. `findings` are those that were accepted
    and the cautions that stand. Of `layout_folders` the first that has a template counts. Without PDFs no page links to one.
    `shopping` is what to buy for all dates. `held` says which labels are not to be made.
    """
    # Names of people reach the sheets of the studio alone: whatever else is composed has never seen them.
    public = tuple(sheet.without_names() for sheet in sheets)
    edition = Edition(studio.without_names(), public, findings, Templates(layout_folders), today, with_pdf, held)
    documents: list[Document] = [compose_catalogue(edition)]
    for studio_class, first in edition.classes:
        documents.append(compose_class_page(edition, studio_class, first))
    documents.append(compose_published_dates(edition))
    documents += compose_pages(edition)
    for studio_class, first in edition.classes:
        documents += compose_take_home(edition, studio_class, first)
    for sheet, with_names in zip(public, sheets, strict=True):
        documents += compose_bench_cards(edition, sheet)
        documents += compose_dose_cards(edition, sheet)
        documents.append(compose_teacher_sheet(edition, with_names))
        documents.append(compose_checklist(edition, sheet))
        documents += compose_labels(edition, sheet)
        documents += compose_tags(edition, sheet)
    documents += compose_shopping(edition, shopping) if shopping else ()
    documents += compose_test_page(edition) if sheets else ()
    files = list_files(edition)
    _refuse_one_address_for_two([*documents, *files])
    return Publication(tuple(documents), files)


def _refuse_one_address_for_two(made: Sequence[Document | CopiedFile]) -> None:
    """See that nothing would be written over something else, also where capital letters do not tell files apart."""
    counts = Counter(f"{one.folder}/{one.path}".casefold() for one in made)
    twice = sorted(path for path, number in counts.items() if number > 1)
    if twice:
        raise ValueError(f"several documents would be written to one address: {', '.join(twice)}")
