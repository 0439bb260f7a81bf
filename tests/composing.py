"""Documents of one kind for tests, by their name in the table of documents."""

from dataclasses import replace

from builder.compose.document_table import DOCUMENTS
from builder.compose.edition import Edition
from builder.model.document import Document
from builder.model.teaching.class_plan import ClassPlan

KINDS = {kind.name: kind for kind in DOCUMENTS}


def composed(name: str, edition: Edition, sheet: ClassPlan | None = None) -> list[Document]:
    """Make all documents of a kind, or those of one class sheet, which may be none of the edition's own."""
    seen = edition if sheet is None else replace(edition, sheets=(sheet,))
    made = (KINDS[name].make(seen, subject) for subject in KINDS[name].scope.all(seen))
    return [document for document in made if document is not None]


def styles(name: str) -> tuple[str, ...]:
    """Give the stylesheets of a kind of sheet."""
    return KINDS[name].all_styles
