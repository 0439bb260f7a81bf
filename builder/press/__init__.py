"""Documents to files. The only stage that writes, and it computes nothing."""

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from builder.model.document import CopiedFile, Document, Folder, Publication
from builder.press.files import copy_file, write_document
from builder.press.folder import replaced
from builder.press.fonts import only_our_fonts

__all__ = ["PressOutcome", "missing_pdf_engine", "press_publication"]


@dataclass(frozen=True)
class PressOutcome:
    """What was written, by root and path; why no PDF could be made (None where they were); what the PDF engine warned of."""

    written: tuple[tuple[Folder, str], ...]
    pdf_missing: str | None
    warnings: tuple[str, ...]


def press_publication(
    publication: Publication,
    *,
    studio_folder: Path,
    layout_folders: tuple[Path, ...],
    output: Path,
    progress: Callable[[str], None],
) -> PressOutcome:
    """Write a publication to an output folder, which is replaced as a whole. `progress` hears the title of each document."""
    pages = [document for document in publication.documents if not document.path.endswith(".pdf")]
    sheets = [document for document in publication.documents if document.path.endswith(".pdf")]
    origins = {"studio": (studio_folder,), "layouts": layout_folders}
    with replaced(output) as building:
        for document in pages:
            write_document(building, document, document.html)
            progress(document.title)
        for copied in publication.files:
            copy_file(building, copied, origins[copied.origin])
        pdf_missing, warnings = _press_sheets(building, sheets, studio_folder, layout_folders, progress)
    made: list[Document | CopiedFile] = [*pages, *publication.files, *(sheets if pdf_missing is None else ())]
    return PressOutcome(tuple((one.folder, one.path) for one in made), pdf_missing, warnings)


def missing_pdf_engine() -> str | None:
    """Say in one line what keeps PDFs from being made on this machine; None where nothing does."""
    from builder.press.sheets import missing_engine

    with only_our_fonts():
        return missing_engine()


def _press_sheets(
    building: Path, sheets: list[Document], studio_folder: Path, layout_folders: tuple[Path, ...], progress: Callable[[str], None]
) -> tuple[str | None, tuple[str, ...]]:
    from builder.press.pool import press_sheets
    from builder.press.sheets import missing_engine

    if not sheets:
        return None, ()
    warnings: list[str] = []
    with only_our_fonts():
        missing = missing_engine()
        if missing is not None:
            return missing, ()
        for document, pressed in press_sheets(sheets, studio_folder, layout_folders):
            write_document(building, document, pressed.pdf)
            warnings += pressed.warnings
            progress(document.title)
    return None, tuple(sorted(warnings))
