"""A sheet with others behind it: its cover is pressed once the pages of those are known, and all become one file.

A pack of which nothing has changed, neither its cover nor a sheet in it, is taken from the last publication.
"""

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path

from builder.joined import join, pages_of
from builder.model.document import Document, JoinedSheet
from builder.press.kept import Kept, PressedSheet, sum_of

Press = Callable[[Sequence[Document]], Iterable[tuple[Document, PressedSheet]]]


@dataclass(frozen=True)
class _Sheet:
    """A finished sheet of the publication that is being built; `pages` is 0 where there is none."""

    path: Path
    sum: str
    pages: int


def press_packs(documents: Sequence[Document], folder: Path, kept: Kept, press: Press) -> Iterator[tuple[Document, PressedSheet, bool]]:
    """Yield each of the documents as one file with the sheets that follow it, which lie in `folder`; and whether it was kept as it was."""

    @cache
    def finished(path: Path) -> _Sheet:
        if not path.is_file():
            return _Sheet(path, "", 0)
        pdf = path.read_bytes()
        return _Sheet(path, sum_of(pdf), pages_of(pdf))

    waiting: dict[str, tuple[Document, tuple[tuple[_Sheet, JoinedSheet], ...]]] = {}
    covers = []

    def cover_of(path: str, pages: int) -> Document:
        document, sheets = waiting[path]
        assert document.joined
        return replace(document, html=document.joined.cover(tuple(sheet.pages for sheet, _ in sheets), pages), joined=None)

    for document in documents:
        assert document.joined
        sheets = tuple((finished(folder / one.folder / one.path), one) for one in document.joined.sheets)
        waiting[document.path] = document, sheets
        cover = cover_of(document.path, 1)
        as_it_was = kept.find(cover, _sums(sheets))
        if as_it_was:
            yield cover, as_it_was, True
        else:
            covers.append(cover)
    for cover, pressed in _pressed(press, covers, cover_of):
        _, sheets = waiting[cover.path]
        pdf = join(pressed.pdf, [(sheet.path.read_bytes(), one.apart) for sheet, one in sheets if sheet.pages and not one.in_own_file])
        whole = replace(pressed, pdf=pdf)
        kept.note(cover, whole, _sums(sheets))
        yield cover, whole, False


def _pressed(press: Press, covers: Sequence[Document], cover_of: Callable[[str, int], Document]) -> Iterator[tuple[Document, PressedSheet]]:
    """Yield the covers as they were pressed, each that takes more than a page with the counts that hold for as many."""
    longer = []
    for cover, pressed in press(covers):
        pages = pages_of(pressed.pdf)
        if pages > 1:
            longer.append(cover_of(cover.path, pages))
        else:
            yield cover, pressed
    yield from press(longer)


def _sums(sheets: Iterable[tuple[_Sheet, JoinedSheet]]) -> tuple[str, ...]:
    return tuple(sheet.sum for sheet, _ in sheets)
