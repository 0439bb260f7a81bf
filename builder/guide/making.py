"""The guide as web pages: the studio of each page is laid out, checked and worked out, its sheets are drawn and its site lies beside.

Decided: a picture of a sheet is drawn from the sheet itself whenever the guide is written, and leads to it; of a page for the screen there
is no picture but the page. Why: a picture kept beside the program shows what it printed some time ago.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from pathlib import Path
from tempfile import TemporaryDirectory

from builder import pipeline
from builder.compose.on_demand import OnDemand
from builder.compose.views.frame import Link
from builder.guide.pages import START, guide_pages
from builder.guide.shown import PagePicture, files_of, pictures_of, with_pictures
from builder.library import LAYOUTS
from builder.model.document import CopiedFile, Document, Folder, MadeFile, Publication
from builder.model.studio import Studio
from builder.pictures.sheet_page import draw_sheet_page
from builder.press import missing_pdf_engine, press_publication, press_some
from builder.press.new_files import write_new_files
from builder.reference import Page, pages, text_publication
from builder.words.say import speaking

# The day on which the examples are looked at: their dates are a few weeks ahead of it.
DAY = date(2027, 1, 2)
_WIDTH = 760  # points of a picture: twice what a phone is wide
_SITE = f"{Folder.SITE.value}/"


@dataclass(frozen=True)
class Made:
    """What came of the studio of one page: its pages and the files beside them, sheets and pictures, and where each picture lies."""

    documents: tuple[Document, ...] = ()
    files: tuple[CopiedFile, ...] = ()
    made: tuple[MadeFile, ...] = ()
    drawn: Mapping[PagePicture, tuple[str, str]] = field(default_factory=dict)


def write_guide(output: Path, progress: Callable[[str], None]) -> int:
    """Write the guide and the reference as web pages, and give how many there are. Raises FolderError."""
    publication = guide_publication(guide_pages(), progress)
    press_publication(publication, studio_folder=output, layout_folders=(LAYOUTS,), output=output, progress=lambda _: None)
    return len(guide_pages()) + len(pages())


def guide_publication(texts: tuple[Page, ...], progress: Callable[[str], None]) -> Publication:
    """Make the pages of the guide and of the reference, with the studios that these pages of the guide show."""
    with_pdf = missing_pdf_engine() is None
    made = {}
    for page in texts:
        progress(page.title)
        made[page.key] = _made(page, with_pdf=with_pdf) if files_of(page.text) else Made()
    shown = [replace(page, text=with_pictures(page.text, made[page.key].drawn)) for page in texts]
    written = text_publication(LAYOUTS, (*shown, *pages()), Link(f"{START}.html", "stillroom"), Link("index.html", "Reference"))
    return Publication(
        (*written.documents, *(one for each in made.values() for one in each.documents)),
        (*written.files, *(one for each in made.values() for one in each.files)),
        made=tuple(one for each in made.values() for one in each.made),
    )


def _made(page: Page, *, with_pdf: bool) -> Made:
    with TemporaryDirectory(prefix="guide-") as scratch:
        folder = Path(scratch)
        write_new_files(folder, files_of(page.text))
        outcome, listed = pipeline.preview(folder, on=DAY)
        assert outcome.studio is not None and listed is not None, page.key
        documents, files = _site(page.key, outcome.studio, listed)
        wanted = pictures_of(page.text) if with_pdf else []
        sheets = list(dict.fromkeys(one.sheet for one in wanted))
        pressed = dict(zip(sheets, press_some([_document(outcome.studio, listed, one) for one in sheets], folder, (LAYOUTS,)), strict=True))
    drawn, made = {}, [MadeFile(Folder.SITE, f"{page.key}/{_name(sheet)}", pdf) for sheet, pdf in pressed.items()]
    for number, picture in enumerate(wanted, 1):
        here = f"{page.key}/picture-{number}.webp"
        made.append(MadeFile(Folder.SITE, here, draw_sheet_page(pressed[picture.sheet], picture.number, _WIDTH)))
        drawn[picture] = (here, f"{page.key}/{_name(picture.sheet)}")
    return Made(documents, files, tuple(made), drawn)


def _name(sheet: str) -> str:
    return sheet.rpartition("/")[2]


def _document(studio: Studio, listed: OnDemand, path: str) -> Document:
    with speaking(studio.speaks.messages):
        document = listed.entries[path].make()
    assert document is not None, path
    return document


def _site(key: str, studio: Studio, listed: OnDemand) -> tuple[tuple[Document, ...], tuple[CopiedFile, ...]]:
    """Return the site of a studio, moved into a folder of the guide."""
    with speaking(studio.speaks.messages):
        made = [entry.make() for path, entry in listed.entries.items() if path.startswith(_SITE)]
    documents = tuple(replace(one, path=f"{key}/{one.path}") for one in made if one is not None)
    files = tuple(replace(one, path=f"{key}/{one.path}") for one in listed.files.values() if one.folder is Folder.SITE)
    return documents, files
