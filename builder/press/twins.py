"""The twin of a sheet: the same HTML as a page beside the PDF, for a screen, a reader of screens, and a browser that prints.

Decided: a sheet of the studio has one whether or not PDFs can be made, in the same styles and fonts. Why: the PDF is then never the only
form of a sheet, and without the PDF engine everything is there. A sheet that a page of its own says already, such as the take-home sheet,
has no second one, and neither has what only joins other sheets.
"""

import re
from collections.abc import Iterator, Sequence
from html import unescape
from pathlib import Path, PurePosixPath
from posixpath import relpath
from urllib.parse import quote, unquote

from builder.fonts.files import all_files, font_faces, font_folders
from builder.model.document import CopiedFile, Document, Folder, MadeFile, Origin
from builder.press.files import copy_file, write_document
from builder.press.kept import style_file
from builder.press.kept_pictures import KeptPictures

ON_SCREEN = "on-screen.css"
_FACES, _FONTS = "faces.css", "fonts"
_RELATIVE_PICTURE = re.compile(r'(<img[^>]*\ssrc=")(?![a-z]+:|/)([^"]*)')
_BESIDE_A_STYLE = re.compile(r'url\("\.\./([\w/.-]+)"\)')


def with_pictures_at(html: str, address: str) -> str:
    """Return a sheet with its pictures, which lie in the studio folder, at another address, which ends with a stroke."""
    return _RELATIVE_PICTURE.sub(rf"\g<1>{address}\g<2>", html)


def with_twins(documents: Sequence[Document]) -> tuple[Document, ...]:
    """Return the sheets of the studio that no page says already."""
    pages = {(one.folder, one.path) for one in documents}
    sheets = (one for one in documents if one.folder is Folder.PRINT and one.path.endswith(".pdf") and not one.joined)
    return tuple(one for one in sheets if (one.folder, _path(one)) not in pages)


def write_twins(
    building: Path, sheets: Sequence[Document], studio_folder: Path, layout_folders: tuple[Path, ...], pictures: KeptPictures
) -> Iterator[CopiedFile | MadeFile]:
    """Write the twins of some sheets below the folder that is being built, with the styles, fonts and pictures that they need.

    Yields all that was written.
    """
    origins = {Origin.PICTURES: (studio_folder,), Origin.LAYOUTS: layout_folders, Origin.TYPEFACES: font_folders()}
    for copied in dict.fromkeys(_needed(sheets, studio_folder, layout_folders)):
        if not (building / copied.folder / copied.path).exists():
            copy_file(building, copied, origins[copied.origin], pictures)
            yield copied
    for made in (*(_twin_of(sheet) for sheet in sheets), *([_faces()] if sheets else [])):
        write_document(building, made, made.content)
        yield made


def _path(sheet: Document) -> str:
    return str(PurePosixPath(sheet.path).with_suffix(".html"))


def _twin_of(sheet: Document) -> MadeFile:
    top = relpath(".", PurePosixPath(sheet.path).parent)
    links = (f'<link rel="stylesheet" href="{quote(f"{top}/styles/{name}")}">' for name in (_FACES, *sheet.styles, ON_SCREEN))
    head = f'<meta name="viewport" content="width=device-width, initial-scale=1">{"".join(links)}</head>'
    html = with_pictures_at(sheet.html, f"{top}/pictures/").replace("</head>", head, 1)
    return MadeFile(sheet.folder, _path(sheet), html.encode())


def _faces() -> MadeFile:
    """Return the style that names the fonts beside it."""
    return MadeFile(Folder.PRINT, f"styles/{_FACES}", font_faces(lambda file: f"{_FONTS}/{file.name}").encode())


def _needed(sheets: Sequence[Document], studio_folder: Path, layout_folders: tuple[Path, ...]) -> Iterator[CopiedFile]:
    """Yield the fonts, every style of some sheets, what these show, and the pictures of the studio that are there."""
    for file in all_files() if sheets else ():
        yield CopiedFile(Folder.PRINT, f"styles/{_FONTS}/{file.name}", Origin.TYPEFACES, file.name)
    for name in dict.fromkeys((*(name for sheet in sheets for name in sheet.styles), *([ON_SCREEN] if sheets else []))):
        yield CopiedFile(Folder.PRINT, f"styles/{name}", Origin.LAYOUTS, f"styles/{name}")
        for shown in _BESIDE_A_STYLE.findall(style_file(name, layout_folders).read_text(encoding="utf-8")):
            yield CopiedFile(Folder.PRINT, shown, Origin.LAYOUTS, shown)
    for picture in (unescape(unquote(address)) for sheet in sheets for _, address in _RELATIVE_PICTURE.findall(sheet.html)):
        file = (studio_folder / picture).resolve()
        if file.is_file() and file.is_relative_to(studio_folder.resolve()):
            yield CopiedFile(Folder.PRINT, f"pictures/{picture}", Origin.PICTURES, picture)
