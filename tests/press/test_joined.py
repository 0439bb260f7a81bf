"""Sheets joined to one file: read back with another library for their pages, tags, bookmarks and links.

The rules of tags are those of PDF/UA-1 (ISO 14289-1); that every id and every page's number in the parent tree is one of a kind is asked by
ISO 32000-1, 14.7.2 and 14.7.4.4.
"""

import io
from collections import Counter
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import page
import pdfplumber
import pikepdf
import pytest

from builder.joined import join
from builder.library import LAYOUTS
from builder.model.document import Document, Folder, Joined, JoinedSheet, Piece, Publication, laid_behind_a_cover
from builder.press import PressOutcome, press_publication
from tests.press.test_press import STYLES, elements, sheet

TABLE = """<h1>{0}</h1><p><a href="#top">to the top</a> <a href="https://studio.example/">a link</a></p><table><thead>
<tr><th scope="col">A</th><th scope="col">B</th></tr></thead><tbody><tr><th scope="row">one</th><td>{0}</td></tr></tbody></table>"""
NEXT_PAGE = '<h2 style="break-before: page">Next</h2><p>{}</p>'


def cover_of(pages: tuple[int, ...], own: int) -> str:
    return sheet("cover.pdf", f"<h1>Counts</h1><p>{' and '.join(map(str, pages))} pages behind {own}</p>").html


class Desk:
    def __init__(self, folder: Path) -> None:
        self.folder = folder
        (folder / "studio").mkdir()
        self.long = TABLE.format("Long") + NEXT_PAGE.format("Two.") + NEXT_PAGE.format("Three.")
        # `missing.pdf` is a sheet that nothing was made of, `labels.pdf` is counted and lies in its own file.
        named = (("long.pdf",), ("missing.pdf",), ("cards.pdf", True), ("labels.pdf", False, True))
        self.joined = Joined(tuple(JoinedSheet(Folder.PRINT, *one) for one in named), cover_of)

    def publish(self) -> tuple[PressOutcome, bytes]:
        pack = Document(Folder.PRINT, "pack.pdf", cover_of((), 1), STYLES, self.joined)
        cards, labels = TABLE.format("Card") + NEXT_PAGE.format("Another card."), "<h1>Labels</h1>"
        bodies = {"long.pdf": self.long, "cards.pdf": cards, "labels.pdf": labels}
        documents = (pack, *(sheet(path, body) for path, body in bodies.items()))
        outcome = press_publication(
            Publication(documents, ()),
            studio_folder=self.folder / "studio",
            layout_folders=(LAYOUTS,),
            output=self.folder / "output",
            progress=lambda _: None,
        )
        assert outcome.warnings == ()
        return outcome, self.read("pack.pdf")

    def read(self, path: str) -> bytes:
        return (self.folder / "output" / "print" / path).read_bytes()


@pytest.fixture(scope="module")
def desk(tmp_path_factory: pytest.TempPathFactory) -> Desk:
    return Desk(tmp_path_factory.mktemp("desk"))


@pytest.fixture(scope="module")
def pack(desk: Desk) -> bytes:
    return desk.publish()[1]


def test_each_sheet_and_each_card_begins_on_a_front_page(pack: bytes) -> None:
    with pdfplumber.open(io.BytesIO(pack)) as pdf:
        first = [(one.extract_text() or "blank").split("\n")[0] for one in pdf.pages]
        assert {(float(one.width), float(one.height)) for one in pdf.pages} == {(612, 792)}
    assert first == ["Counts", "blank", "Long", "Next", "Next", "blank", "Card", "blank", "Next"]


def test_the_cover_tells_the_pages_of_what_was_made(pack: bytes) -> None:
    with pdfplumber.open(io.BytesIO(pack)) as pdf:
        assert "3 and 0 and 2 and 1 pages" in pdf.pages[0].extract_text()


def test_the_tags_of_all_sheets_are_kept_and_pass_their_rules(desk: Desk, pack: bytes) -> None:
    report = page.validate_pdf_bytes(pack, profile="ua1")
    assert report.is_compliant, report.failures
    with pdfplumber.open(io.BytesIO(pack)) as pdf:
        (document,) = pdf.structure_tree
        assert [one["type"] for one in document["children"]] == ["Part"] * 3
        types = Counter(one["type"] for one in elements(document["children"]))
        marked = Counter((one.get("page_number"), mcid) for one in elements(document["children"]) for mcid in one.get("mcids", ()))
        assert set(marked.values()) == {1}
    single: Counter[str] = Counter()
    for path in ("long.pdf", "cards.pdf"):
        with pdfplumber.open(io.BytesIO(desk.read(path))) as pdf:
            single += Counter(one["type"] for one in elements(pdf.structure_tree))
    for kind in ("Table", "TH", "TD", "H1", "H2", "Link"):
        assert types[kind] == single[kind] + (kind == "H1")


def structure(one: Any) -> Iterator[Any]:
    for child in one.get("/K", ()) if isinstance(one.get("/K"), pikepdf.Array) else ():
        if isinstance(child, pikepdf.Dictionary) and "/S" in child:
            yield child
            yield from structure(child)


def test_what_tags_and_links_point_at_is_theirs_alone(pack: bytes) -> None:
    with pikepdf.open(io.BytesIO(pack)) as pdf:
        tree = pdf.Root.StructTreeRoot
        numbers = [int(number) for number in tree.ParentTree.Nums[::2]]
        assert numbers == sorted(set(numbers))
        asked = [int(one.obj.StructParents) for one in pdf.pages if "/StructParents" in one.obj]
        asked += [int(link.StructParent) for one in pdf.pages for link in one.obj.get("/Annots", ())]
        assert sorted(asked) == numbers
        ids = [str(one.ID) for one in structure(tree) if "/ID" in one]
        assert len(ids) == len(set(ids)) > 4
        named = [str(name) for one in structure(tree) if "/A" in one and "/Headers" in one.A for name in one.A.Headers]
        assert named and set(named) <= set(ids)
        places = {str(pdf.Root.Names.Dests.Names[at]): at + 1 for at in range(0, len(pdf.Root.Names.Dests.Names), 2)}
        pages = [one.obj.objgen for one in pdf.pages]
        for at, one in enumerate(pdf.pages):
            for link in one.obj.get("/Annots", ()):
                if "/Dest" in link:
                    assert pages.index(pdf.Root.Names.Dests.Names[places[str(link.Dest)]][0].objgen) == at
        with pdf.open_outline() as outline:
            assert [one.title for one in outline.root] == ["Counts", "Long", "Card"]
        assert (str(pdf.Root.Lang), str(pdf.Root.ViewerPreferences.Duplex)) == ("en-US", "/DuplexFlipLongEdge")


def test_the_same_sheets_give_the_same_bytes(desk: Desk, pack: bytes) -> None:
    parts = [(desk.read("long.pdf"), False), (desk.read("cards.pdf"), True)]
    assert join(desk.read("labels.pdf"), parts) == join(desk.read("labels.pdf"), parts)
    outcome, again = desk.publish()
    assert outcome.kept == 4 and again == pack


def test_a_pack_is_made_anew_when_a_sheet_in_it_has_changed(desk: Desk, pack: bytes) -> None:
    desk.long += "<p>One line more.</p>"
    outcome, again = desk.publish()
    assert outcome.kept == 2
    with pdfplumber.open(io.BytesIO(again)) as pdf:
        assert "One line more." in pdf.pages[4].extract_text()
    assert again != pack


@pytest.mark.long
def test_a_cover_of_two_pages_is_told_that_it_takes_two(tmp_path: Path) -> None:
    desk = Desk(tmp_path)
    body = "<h1>Behind {}</h1>" + NEXT_PAGE.format("More.")
    desk.joined = Joined(desk.joined.sheets, lambda _, own: sheet("cover.pdf", body.replace("{}", str(own))).html)
    _, pack = desk.publish()
    with pdfplumber.open(io.BytesIO(pack)) as pdf:
        assert [page.extract_text().split("\n")[0] for page in pdf.pages[:3]] == ["Behind 2", "Next", "Long"]


def test_pieces_lie_on_front_pages() -> None:
    # Worked by hand: three pages take 3 to 5, two cards 7 and 9, what is not there nothing, and the next begins on 11.
    laid = laid_behind_a_cover([(3, False), (2, True), (0, True), (5, False)], 1)
    assert laid == ((Piece(3, 3),), (Piece(7, 1), Piece(9, 1)), (), (Piece(11, 5),))
    assert [piece.paper for piece in (Piece(3, 1), Piece(3, 2), Piece(3, 5))] == [1, 1, 3]


def test_a_first_sheet_of_one_page_lies_on_the_back_of_the_cover_where_that_is_free() -> None:
    on_the_back, behind = [laid_behind_a_cover([(1, False), (2, False)], cover) for cover in (1, 2)]
    assert on_the_back == ((Piece(2, 1),), (Piece(3, 2),)) and behind == ((Piece(3, 1),), (Piece(5, 2),))
    assert [piece.paper for (piece,) in on_the_back] == [0, 1] and [piece.paper for (piece,) in behind] == [1, 1]
