"""What compose makes: finished HTML with its place in the output, and files to copy beside it."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from enum import StrEnum
from typing import NamedTuple

from builder.model.sharing import SharingPicture


class Folder(StrEnum):
    """The two output roots: `site` is uploaded, `print` stays in the studio."""

    SITE = "site"
    PRINT = "print"


# The pages that a site has in any case, by their addresses: home, all classes, all dates, ways of teaching, how to visit, pictures.
SITE_PAGES = ("index", "classes", "dates", "ways-of-teaching", "visit", "gallery")


@dataclass(frozen=True)
class JoinedSheet:
    """A sheet that is joined to others, by its place.

    `apart`: its pages are cards, each of which begins on a front page. `in_own_file`: it is counted, and lies in a file of its own.
    """

    folder: Folder
    path: str
    apart: bool = False
    in_own_file: bool = False


@dataclass(frozen=True)
class Joined:
    """What follows a sheet in one file, in order; `cover` gives the HTML of that sheet once the pages of each are known, for as many
    pages as it takes itself.
    """

    sheets: tuple[JoinedSheet, ...]
    cover: Callable[[tuple[int, ...], int], str] = field(compare=False)


@dataclass(frozen=True)
class Document:
    """One finished document. `path` is relative to its root, with forward slashes and its ending.

    A path that ends in `.pdf` is pressed to PDF with `styles` (names in `layouts/styles/`); any other is written as it is.
    Pictures in a PDF are addressed relative to the studio folder. `joined` is what follows in the file.
    """

    folder: Folder
    path: str
    html: str
    styles: tuple[str, ...] = ()
    joined: Joined | None = None

    @property
    def place(self) -> str:
        """Return where it lies in the output."""
        return f"{self.folder}/{self.path}"


class Origin(StrEnum):
    """Where a copied file comes from: the pictures of the studio (made anew), its own fonts, our typefaces, styles and the like."""

    PICTURES = "pictures"
    FONTS = "fonts"
    TYPEFACES = "typefaces"
    LAYOUTS = "layouts"


@dataclass(frozen=True)
class CopiedFile:
    """A file to copy into the output, with its `source` relative to its origin.

    `width` is that of a photograph in points, which is made anew; 0 where a file keeps its size.
    """

    folder: Folder
    path: str
    origin: Origin
    source: str
    width: int = 0


@dataclass(frozen=True)
class MadeFile:
    """A file that is whole already: its place in the output, and its bytes."""

    folder: Folder
    path: str
    content: bytes


@dataclass(frozen=True)
class Publication:
    """Everything that one run writes; `drawn` are the pictures that stand for pages where somebody passes them on."""

    documents: tuple[Document, ...]
    files: tuple[CopiedFile, ...]
    drawn: tuple[SharingPicture, ...] = ()
    made: tuple[MadeFile, ...] = ()


class Piece(NamedTuple):
    """So many pages in a row of a pack, counted from 1; the first lies on a front page, or alone on the back of the cover."""

    first: int
    pages: int

    @property
    def last(self) -> int:
        """Return the last of its pages."""
        return self.first + self.pages - 1

    @property
    def paper(self) -> int:
        """Return the number of sheets of paper that it takes, printed on both sides; the back of the cover is none."""
        return 0 if self.on_the_back else self.pages - self.pages // 2

    @property
    def on_the_back(self) -> bool:
        """Tell whether it lies on the back of the cover."""
        return self.first % 2 == 0


def laid_behind_a_cover(sheets: Sequence[tuple[int, bool]], cover: int) -> tuple[tuple[Piece, ...], ...]:
    """Lay sheets one after another, each from a front page on; each is its number of pages, and whether each page is a piece for itself.

    `cover` is the number of pages of the cover; a first sheet of one page lies on its back where that is free. Returns the pieces of each
    sheet; one without pages has none.
    """
    laid: list[tuple[Piece, ...]] = []
    last = cover
    for number, (pages, apart) in enumerate(sheets):
        each = 1 if apart else pages
        here = []
        for _ in range(pages // each if each else 0):
            first = last + 1 if number == 0 and pages == 1 else last + last % 2 + 1
            here.append(Piece(first, each))
            last = here[-1].last
        laid.append(tuple(here))
    return tuple(laid)
