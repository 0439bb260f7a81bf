"""A sheet with others behind it: its cover is pressed once the pages of those are known, and all become one file.

A pack of which nothing has changed, neither its cover nor a sheet in it, is taken from the last publication.
"""

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import replace
from pathlib import Path

from builder.joined import join
from builder.model.document import Document, JoinedSheet
from builder.press.kept import Kept, PressedSheet, Record

Press = Callable[[Sequence[Document]], Iterable[tuple[Document, PressedSheet]]]


def press_packs(documents: Sequence[Document], folder: Path, kept: Kept, press: Press) -> Iterator[tuple[Document, PressedSheet, bool]]:
    """Yield each of the documents as one file with the sheets that follow it, which lie in `folder`; and whether it was kept as it was."""

    waiting: dict[str, tuple[Document, tuple[tuple[Record | None, JoinedSheet], ...]]] = {}
    covers = []

    def cover_of(path: str, pages: int) -> Document:
        document, sheets = waiting[path]
        assert document.joined
        return replace(document, html=document.joined.cover(tuple(known.pages if known else 0 for known, _ in sheets), pages), joined=None)

    for document in documents:
        assert document.joined
        sheets = tuple((kept.known(one.folder, one.path), one) for one in document.joined.sheets)
        waiting[document.path] = document, sheets
        cover = cover_of(document.path, 1)
        as_it_was = kept.find(cover, _sums(sheets))
        if as_it_was:
            yield cover, as_it_was, True
        else:
            covers.append(cover)
    for cover, pressed in _pressed(press, covers, cover_of):
        _, sheets = waiting[cover.path]
        behind = [one for known, one in sheets if known and not one.in_own_file]
        pdf = join(pressed.pdf, [((folder / one.folder / one.path).read_bytes(), one.apart) for one in behind])
        whole = replace(pressed, pdf=pdf)
        kept.note(cover, whole, _sums(sheets))
        yield cover, whole, False


def _pressed(press: Press, covers: Sequence[Document], cover_of: Callable[[str, int], Document]) -> Iterator[tuple[Document, PressedSheet]]:
    """Yield the covers as they were pressed, each that takes more than a page with the counts that hold for as many."""
    longer = []
    for cover, pressed in press(covers):
        if pressed.pages > 1:
            longer.append(cover_of(cover.path, pressed.pages))
        else:
            yield cover, pressed
    yield from press(longer)


def _sums(sheets: Iterable[tuple[Record | None, JoinedSheet]]) -> tuple[str, ...]:
    return tuple(known.pdf if known else "" for known, _ in sheets)
