"""Which files are copied into the output beside the documents: stylesheets, the icon, pictures."""

from collections.abc import Iterable, Sequence

from builder.compose import addresses
from builder.compose.documents.text_pages import PAGES
from builder.compose.edition import Edition
from builder.compose.frames import SCREEN_SIGNS, SCREEN_STYLES
from builder.compose.picture_files import files_of
from builder.compose.teaching.class_facts import picture_file
from builder.compose.teaching.pieces import pictures_in
from builder.model.dates.studio_class import StudioClass
from builder.model.document import CopiedFile, Document, Folder, Origin
from builder.model.teaching.lesson import Where


def list_files(edition: Edition, documents: Sequence[Document]) -> tuple[CopiedFile, ...]:
    """List every file that the documents need beside them, each once, in order."""
    site = _site_pictures(edition)
    print_pictures = _sheet_pictures(edition, public=False)
    if any(not own.on_paper for own in edition.studio.profile.documents):
        # A page of the studio's own may show any picture of the site and of a lesson.
        print_pictures += [*site, *(file for studio_class, _ in edition.classes for file in _pictures_of(studio_class, *Where))]
    logo = edition.studio.profile.look.logo
    site += [one.text for one in (logo, edition.studio.profile.look.portrait) if one]
    print_pictures += [logo.text] if logo else []
    copies = [*_styles(Folder.SITE), *_fonts(edition, Folder.SITE), *_pictures(edition, Folder.SITE, site)]
    if any(document.folder is Folder.PRINT and document.path.endswith(".html") for document in documents):
        copies += [*_styles(Folder.PRINT), *_fonts(edition, Folder.PRINT), *_pictures(edition, Folder.PRINT, print_pictures)]
    return tuple(copies)


def _styles(folder: Folder) -> Iterable[CopiedFile]:
    yield CopiedFile(folder, addresses.icon(folder).path, Origin.LAYOUTS, "styles/icon.svg")
    for name in SCREEN_STYLES:
        yield CopiedFile(folder, addresses.style(folder, name).path, Origin.LAYOUTS, f"styles/{name}")
    for name in SCREEN_SIGNS:
        yield CopiedFile(folder, addresses.sign(folder, name).path, Origin.LAYOUTS, f"signs/{name}")


def _fonts(edition: Edition, folder: Folder) -> Iterable[CopiedFile]:
    font = edition.studio.title_font
    if font and font.shows:
        yield CopiedFile(folder, addresses.title_font(folder, font.ending).path, Origin.FONTS, font.path)


def _pictures(edition: Edition, folder: Folder, files: Iterable[str]) -> Iterable[CopiedFile]:
    for file in sorted(set(files)):
        yield from files_of(edition.studio, folder, file)


def _site_pictures(edition: Edition) -> list[str]:
    found = [file for page in edition.studio.pages.values() for file in pictures_in(page.blocks, PAGES)]
    for studio_class, _ in edition.classes:
        found += [picture_file(studio_class)] if studio_class.picture else []
        found += pictures_in(studio_class.lesson.introduction, addresses.class_folder(studio_class.key))
    return found + _sheet_pictures(edition, public=True)


def _sheet_pictures(edition: Edition, *, public: bool) -> list[str]:
    classes = (studio_class for studio_class, _ in edition.classes if studio_class.sheets_are_public is public)
    return [file for studio_class in classes for file in _pictures_of(studio_class, Where.EVERYWHERE, Where.HOME_ONLY)]


def _pictures_of(studio_class: StudioClass, *places: Where) -> tuple[str, ...]:
    parts = (part for part in studio_class.lesson.parts if part.where in places)
    return pictures_in((block for part in parts for block in part.blocks), addresses.class_folder(studio_class.key))
