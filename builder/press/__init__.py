"""Documents to files. The only stage that writes, and it computes nothing."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from contextlib import AbstractContextManager, nullcontext
from dataclasses import dataclass
from functools import cache
from pathlib import Path, PurePosixPath
from tempfile import TemporaryDirectory
from typing import TYPE_CHECKING

from builder.fonts.files import only_our_fonts
from builder.model.document import Document, Folder, Origin, Publication
from builder.press.files import copy_file, write_document, write_picture
from builder.press.folder import Building, replaced
from builder.press.kept import Kept, PressedSheet, engine_sum
from builder.press.kept_pictures import KeptPictures
from builder.press.logo import logo_as_photograph
from builder.press.twins import with_twins, write_twins
from builder.press.weight import refuse_heavy_pages

if TYPE_CHECKING:
    from builder.press.pool import Presses

__all__ = ["PressOutcome", "missing_pdf_engine", "press_one", "press_publication", "press_some", "press_to_folder", "presses_of"]


@dataclass(frozen=True)
class PressOutcome:
    """What was written, by root and path; why no PDF could be made (None where they were); what the PDF engine warned of.

    `kept` counts the sheets that were taken from the last publication as they were.
    """

    written: tuple[tuple[Folder, str], ...]
    pdf_missing: str | None
    warnings: tuple[str, ...]
    kept: int = 0


def press_publication(
    publication: Publication,
    *,
    studio_folder: Path,
    layout_folders: tuple[Path, ...],
    output: Path,
    progress: Callable[[str], None],
    waits: Callable[[], None] = lambda: None,
    presses: Presses | None = None,
) -> PressOutcome:
    """Write a publication to an output folder, which is replaced as a whole.

    `progress` hears where each document lies; `waits` is called where another run is writing to the same folder. `presses` are those of
    the studio where they are ready (`presses_of`). Raises FolderError.
    """
    pages = [document for document in publication.documents if not document.path.endswith(".pdf")]
    sheets = [document for document in publication.documents if document.path.endswith(".pdf")]
    origins = {Origin.PICTURES: (studio_folder,), Origin.FONTS: (studio_folder,), Origin.LAYOUTS: layout_folders}
    with replaced(output, waits) as building:
        pictures = KeptPictures(building.last)
        for document in pages:
            write_document(building.folder, document, document.html)
            progress(document.place)
        for copied in publication.files:
            copy_file(building.folder, copied, origins[copied.origin], pictures)
        for made_file in publication.made:
            write_document(building.folder, made_file, made_file.content)
        refuse_heavy_pages(building.folder)
        twins = tuple(write_twins(building.folder, with_twins(publication.documents), studio_folder, layout_folders, pictures))
        pdf_missing, warnings, kept = _press_sheets(building, sheets, studio_folder, layout_folders, progress, presses)
        with only_our_fonts(building.scratch):
            _draw_pictures(building, publication, studio_folder, layout_folders, pictures)
        pictures.write(building.folder)
    made = [*pages, *publication.files, *twins, *(sheets if pdf_missing is None else ())]
    written = [*((one.folder, one.path) for one in made), *((Folder.SITE, drawn.path) for drawn in publication.drawn)]
    return PressOutcome(tuple(written), pdf_missing, warnings, kept)


def _draw_pictures(
    building: Building, publication: Publication, studio_folder: Path, layout_folders: tuple[Path, ...], pictures: KeptPictures
) -> None:
    """Draw the pictures that stand for pages. The logo is made a photograph once, and only where one of them is drawn anew."""
    logo = next((drawn.logo for drawn in publication.drawn if drawn.logo), None)
    photograph = cache(lambda: logo_as_photograph(logo, studio_folder, layout_folders) if logo else b"")
    of_logo = (studio_folder / logo.file).read_bytes() if logo else b""
    for drawn in publication.drawn:
        write_picture(building.folder, drawn, pictures, of_logo, photograph)


def missing_pdf_engine() -> str | None:
    """Return in one line what keeps PDFs from being made on this machine; None where nothing does."""
    from builder.press.engine.sheets import missing_engine

    with TemporaryDirectory(prefix="fonts-") as folder, only_our_fonts(Path(folder)):
        return missing_engine()


def presses_of(studio_folder: Path, layout_folders: tuple[Path, ...], *, early: bool) -> AbstractContextManager[Presses]:
    """Return what presses the sheets of a studio, for as long as this lasts; with `early` its processes are there from the beginning."""
    from builder.press.pool import presses

    return presses(studio_folder, layout_folders, early=early)


def press_one(document: Document, studio_folder: Path, layout_folders: tuple[Path, ...]) -> bytes:
    """Make one sheet as a PDF and write nothing. Raises OSError where this machine has no PDF engine."""
    return press_some((document,), studio_folder, layout_folders)[0]


def press_some(documents: Sequence[Document], studio_folder: Path, layout_folders: tuple[Path, ...]) -> list[bytes]:
    """Make a few sheets as PDFs, in their order, and write nothing. Raises OSError where this machine has no PDF engine."""
    from builder.press.engine.sheets import Engine, missing_engine

    with TemporaryDirectory(prefix="fonts-") as scratch, only_our_fonts(Path(scratch)):
        missing = missing_engine()
        if missing is not None:
            raise OSError(missing)
        engine = Engine(studio_folder, layout_folders)
        return [engine.press(document).pdf for document in documents]


def press_to_folder(documents: Sequence[Document], *, studio_folder: Path, layout_folders: tuple[Path, ...], to: Path) -> list[Path]:
    """Write a few sheets into a folder, each by the last part of its path, and give where they lie; what is there beside them stays.

    Raises OSError where this machine has no PDF engine or the folder cannot be written.
    """
    made = [(to / PurePosixPath(one.path).name, press_one(one, studio_folder, layout_folders)) for one in documents]
    to.mkdir(parents=True, exist_ok=True)
    for path, pdf in made:
        whole = path.with_name(f".{path.name}.part")
        whole.write_bytes(pdf)
        whole.replace(path)
    return [path for path, _ in made]


def _press_sheets(
    building: Building,
    sheets: list[Document],
    studio_folder: Path,
    layout_folders: tuple[Path, ...],
    progress: Callable[[str], None],
    ready: Presses | None,
) -> tuple[str | None, tuple[str, ...], int]:
    from builder.press.engine.sheets import missing_engine, roots_of, system_libraries
    from builder.press.packs import press_packs
    from builder.press.pool import presses

    if not sheets:
        return None, (), 0
    warnings: list[str] = []
    with only_our_fonts(building.scratch), nullcontext(ready) if ready else presses(studio_folder, layout_folders) as pressing:
        missing = missing_engine()
        if missing is not None:
            return missing, (), 0
        kept = Kept(building.last, engine_sum(system_libraries()), roots_of(studio_folder, layout_folders), layout_folders)
        plain = [document for document in sheets if document.joined is None]
        as_they_were = [(document, pressed) for document in plain if (pressed := kept.find(document))]
        found = {(document.folder, document.path) for document, _ in as_they_were}
        anew = [document for document in plain if (document.folder, document.path) not in found]

        def made() -> Iterator[tuple[Document, PressedSheet, bool]]:
            yield from ((document, pressed, True) for document, pressed in as_they_were)
            for document, pressed in pressing.press(anew):
                kept.note(document, pressed)
                yield document, pressed, False
            # What is joined to others waits until all of them are there.
            yield from press_packs([one for one in sheets if one.joined], building.folder, kept, pressing.press)

        as_before = 0
        for document, pressed, is_kept in made():
            write_document(building.folder, document, pressed.pdf)
            warnings += pressed.warnings
            as_before += is_kept
            progress(document.place)
        kept.write(building.folder)
    return None, tuple(sorted(warnings)), as_before
