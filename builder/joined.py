"""Finished PDFs to one, with its tags, bookmarks and links: the only module that knows the library that reads PDFs.

The first of them, the cover, gives the title, the language and what else the whole says of itself. Each piece of the others begins on a
front page, so that all of it can be printed on both sides; a first sheet of one page lies on the back of the cover. Nothing is laid out
again.

Decided: the structure trees are joined here, since the library joins pages alone: the numbers of pages in the parent tree, the ids that
header cells are called by and the names of places are made unlike those of other sheets.
"""

from __future__ import annotations

import io
import warnings
from collections.abc import Iterator, Sequence
from contextlib import ExitStack
from typing import TYPE_CHECKING, Any

from builder.model.document import Piece, laid_behind_a_cover

if TYPE_CHECKING:
    from pikepdf import Pdf


def join(cover: bytes, sheets: Sequence[tuple[bytes, bool]]) -> bytes:
    """Put tagged PDFs of one size of paper behind a cover; each says whether its pages are pieces for themselves."""
    import pikepdf

    with ExitStack() as opened:
        whole = opened.enter_context(pikepdf.open(io.BytesIO(cover)))
        others = [opened.enter_context(pikepdf.open(io.BytesIO(pdf))) for pdf, _ in sheets]
        laid = laid_behind_a_cover([(len(one.pages), apart) for one, (_, apart) in zip(others, sheets, strict=True)], len(whole.pages))
        root = pikepdf.Dictionary(Type=pikepdf.Name.StructElem, S=pikepdf.Name.Document, P=whole.Root.StructTreeRoot, K=pikepdf.Array())
        tree, parents = whole.make_indirect(root), pikepdf.Array()
        _take_tree(whole, whole.Root.StructTreeRoot, tree, parents, 0)
        names, tops = _named_apart(whole, 0), list(_top_of_outline(whole.Root))
        for number, (sheet, pieces) in enumerate(zip(others, laid, strict=True), start=1):
            names += _take(whole, sheet, number, pieces, tree, parents, tops)
        whole.Root.StructTreeRoot.K = pikepdf.Array([tree])
        whole.Root.StructTreeRoot.ParentTree = whole.make_indirect(pikepdf.Dictionary(Nums=parents))
        whole.Root.Names = pikepdf.Dictionary(Dests=pikepdf.Dictionary(Names=pikepdf.Array(_sorted_names(names))))
        _set_outline(whole, tops)
        whole.Root.ViewerPreferences.Duplex = pikepdf.Name.DuplexFlipLongEdge
        out = io.BytesIO()
        whole.save(out, object_stream_mode=pikepdf.ObjectStreamMode.generate, deterministic_id=True, fix_metadata_version=False)
    return out.getvalue()


def _take(whole: Pdf, sheet: Pdf, number: int, pieces: Sequence[Piece], tree: Any, parents: Any, tops: list[Any]) -> list[Any]:
    """Take over the pages of a sheet, then what points at them: copied before its page, a tag would point at nothing."""
    import pikepdf

    shift = 1 + int(parents[-2]) if len(parents) else 0
    names = _named_apart(sheet, number)
    for page in sheet.pages:
        _shift(page.obj, "/StructParents", shift)
        for annotation in page.obj.get("/Annots", ()):
            _shift(annotation, "/StructParent", shift)
    taken = 0
    for piece in pieces:
        while len(whole.pages) < piece.first - 1:
            box = whole.pages[-1].mediabox
            whole.add_blank_page().mediabox = box
        with warnings.catch_warnings():
            # It is told that names of places are not taken over; they are, below.
            warnings.simplefilter("ignore", pikepdf.PageCopyWarning)
            whole.pages.extend(sheet.pages[taken : taken + piece.pages])
        taken += piece.pages
    copied = whole.copy_foreign(sheet.make_indirect(pikepdf.Dictionary(Tags=sheet.Root.StructTreeRoot, Names=pikepdf.Array(names))))
    _take_tree(whole, copied.Tags, tree, parents, shift)
    if "/Outlines" in sheet.Root:
        tops += _top_of_outline(whole.copy_foreign(sheet.make_indirect(pikepdf.Dictionary(Outlines=sheet.Root.Outlines))))
    return list(copied.Names)


def _take_tree(whole: Pdf, structure: Any, tree: Any, parents: Any, shift: int) -> None:
    """Hang the tags of one sheet, as a part, below those of the whole."""
    import pikepdf

    for element in structure.K:
        element.S, element.P = pikepdf.Name.Part, tree
        tree.K.append(element)
    numbers = structure.ParentTree.Nums
    for at in range(0, len(numbers), 2):
        parents.append(int(numbers[at]) + shift)
        parents.append(whole.make_indirect(numbers[at + 1]))


def _named_apart(sheet: Pdf, number: int) -> list[Any]:
    """Make the names of places and the ids of header cells unlike those of other sheets; give names and places in turn."""
    import pikepdf

    def apart(name: Any) -> Any:
        return pikepdf.String(f"{number}-{name}")

    for one in sheet.objects:
        if not isinstance(one, pikepdf.Dictionary):
            continue
        if one.get("/Type") == pikepdf.Name.StructElem:
            if "/ID" in one:
                one.ID = apart(one.ID)
            if "/A" in one and isinstance(one.A, pikepdf.Dictionary) and "/Headers" in one.A:
                one.A.Headers = pikepdf.Array([apart(name) for name in one.A.Headers])
        if one.get("/Subtype") == pikepdf.Name.Link and isinstance(one.get("/Dest"), pikepdf.String):
            one.Dest = apart(one.Dest)
    places = sheet.Root.get("/Names", pikepdf.Dictionary()).get("/Dests", pikepdf.Dictionary()).get("/Names", pikepdf.Array())
    return [apart(one) if at % 2 == 0 else one for at, one in enumerate(places)]


def _sorted_names(names: Sequence[Any]) -> list[Any]:
    pairs = sorted(zip(names[::2], names[1::2], strict=True), key=lambda pair: bytes(pair[0]))
    return [one for pair in pairs for one in pair]


def _top_of_outline(root: Any) -> Iterator[Any]:
    one = root.Outlines.get("/First") if "/Outlines" in root else None
    while one is not None:
        yield one
        one = one.get("/Next")


def _set_outline(whole: Pdf, tops: Sequence[Any]) -> None:
    """Make the bookmarks of all sheets one list, in order."""
    import pikepdf

    if not tops:
        return
    outline = whole.make_indirect(pikepdf.Dictionary(Type=pikepdf.Name.Outlines, First=tops[0], Last=tops[-1], Count=len(tops)))
    for before, one, after in zip([None, *tops[:-1]], tops, [*tops[1:], None], strict=True):
        one.Parent = outline
        for key, other in (("/Prev", before), ("/Next", after)):
            if other is not None:
                one[key] = other
            elif key in one:
                del one[key]
        # Closed, so that the list of all sheets is seen first.
        one.Count = -abs(int(one.get("/Count", 0)))
    whole.Root.Outlines = outline


def _shift(where: Any, key: str, by: int) -> None:
    if key in where:
        where[key] = int(where[key]) + by
