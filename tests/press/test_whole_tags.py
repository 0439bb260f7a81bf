"""What goes on on the next page is one thing in the tags, and each piece of content is where the tags say.

ISO 32000-1 (PDF 1.7), 14.7.4 and 14.8.4.3.4, from memory: a table has at most one head; the tree of parents names for each piece of
content of a page the element that holds it; content on another page than its element is named with its page. Read with `pikepdf`.
"""

import io
from collections import Counter
from collections.abc import Iterator
from typing import Any

import pikepdf
import pytest

from builder.fonts.files import only_our_fonts
from builder.library import LAYOUTS
from builder.model.document import Document, Folder
from builder.press.engine.sheets import Engine

ROWS = "".join(f'<tr><th scope="row">Oil {number}</th><td>{number} g</td></tr>' for number in range(40))
STEPS = "".join(f'<li>Step {number}, see <a href="#last">the last</a>.</li>' for number in range(40))
HTML = f"""<html lang="en"><head><title>One</title><style>@page {{ size: 100mm 80mm; margin: 5mm }} p {{ orphans: 1; widows: 1 }}</style>
</head><body><main><h1>One</h1><table><thead><tr><th>Oil</th><th>Grams</th></tr></thead><tbody>{ROWS}</tbody>
<tfoot><tr><th scope="row">In all</th><td>780 g</td></tr></tfoot></table>
<ol>{STEPS}</ol><p id="last"><a href="#last">{"Wear goggles and gloves. " * 90}</a></p></main></body></html>"""


@pytest.fixture(scope="module")
def sheet(tmp_path_factory: pytest.TempPathFactory) -> Iterator[pikepdf.Pdf]:
    folder = tmp_path_factory.mktemp("studio")
    with only_our_fonts(folder):
        pressed = Engine(folder, (LAYOUTS,)).press(Document(Folder.PRINT, "one.pdf", HTML, ()))
    with pikepdf.open(io.BytesIO(pressed.pdf)) as opened:
        assert len(opened.pages) > 8
        yield opened


def elements(parent: Any) -> Iterator[Any]:
    """Yield an element of the tree and all within it, in the order in which they are said."""
    yield parent
    for kid in parent.get("/K", ()):
        if isinstance(kid, pikepdf.Dictionary) and kid.get("/Type") == "/StructElem":
            assert kid.P.objgen == parent.objgen
            yield from elements(kid)


def whole_tree(sheet: pikepdf.Pdf) -> list[Any]:
    return list(elements(sheet.Root.StructTreeRoot.K[0]))


def content(sheet: pikepdf.Pdf) -> list[tuple[int, str, int | None]]:
    """Return page, tag and number of each marked piece of content, in the order in which it is drawn; what is no content has no number."""
    marked = []
    for number, page in enumerate(sheet.pages):
        for one in pikepdf.parse_content_stream(page):
            if isinstance(one, pikepdf.ContentStreamInstruction) and str(one.operator) in ("BDC", "BMC"):
                tag, *more = one.operands
                marked.append((number, str(tag), int(more[0].MCID) if more else None))
    return marked


def test_a_table_a_list_and_a_text_of_many_pages_are_one_each(sheet: pikepdf.Pdf) -> None:
    found = Counter(str(one.S) for one in whole_tree(sheet))
    assert [found[tag] for tag in ("/Part", "/H1", "/Table", "/THead", "/TBody", "/TFoot", "/L", "/P")] == [1] * 8
    assert (found["/TR"], found["/LI"], found["/Lbl"]) == (42, 40, 40)


def test_the_foot_of_a_table_comes_last_and_its_rows_in_their_order(sheet: pikepdf.Pdf) -> None:
    (table,) = (one for one in whole_tree(sheet) if one.S == "/Table")
    assert [str(one.S) for one in table.K] == ["/THead", "/TBody", "/TFoot"]
    pages = [sheet.pages.index(pikepdf.Page(row.Pg)) for row in table.K[1].K]
    assert len(pages) == 40 and pages == sorted(pages) and len(set(pages)) > 3


def test_each_cell_finds_its_heads_in_the_tree(sheet: pikepdf.Pdf) -> None:
    tree = whole_tree(sheet)
    heads = {str(one.ID): one for one in tree if one.S == "/TH"}
    assert len(heads) == 43
    cells = [one for one in tree if one.S == "/TD"]
    assert len(cells) == 41
    for cell in cells:
        row, column = sorted(str(heads[str(name)].A.Scope) for name in cell.A.Headers)[::-1]
        assert (row, column) == ("/Row", "/Column")


def held(sheet: pikepdf.Pdf) -> dict[tuple[int, int], Any]:
    """Return which element holds each piece of content, by page and number, as the tree has it."""
    found = {}
    for element in whole_tree(sheet):
        for kid in element.get("/K", ()):
            if isinstance(kid, int):
                found[sheet.pages.index(pikepdf.Page(element.Pg)), kid] = element.objgen
            elif kid.get("/Type") == "/MCR":
                found[sheet.pages.index(pikepdf.Page(kid.Pg)), int(kid.MCID)] = element.objgen
    return found


def test_each_piece_of_content_is_held_by_the_element_that_the_tree_of_parents_names(sheet: pikepdf.Pdf) -> None:
    drawn = [(page, mcid) for page, _, mcid in content(sheet) if mcid is not None]
    elements_of = held(sheet)
    assert sorted(elements_of) == sorted(drawn) and len(drawn) > 200
    numbers = sheet.Root.StructTreeRoot.ParentTree.Nums
    parents = {int(numbers[at]): numbers[at + 1] for at in range(0, len(numbers), 2)}
    assert {at: parents[at[0]][at[1]].objgen for at in drawn} == elements_of


def test_heads_and_feet_that_are_repeated_are_no_content(sheet: pikepdf.Pdf) -> None:
    pages = {page for page, _, mcid in content(sheet) if mcid is not None}
    artifacts = Counter(page for page, tag, _ in content(sheet) if tag == "/Artifact")
    (table,) = (one for one in whole_tree(sheet) if one.S == "/Table")
    of_table = {sheet.pages.index(pikepdf.Page(row.Pg)) for row in table.K[1].K}
    first, last = min(of_table), max(of_table)
    # Two texts of a head on each page but the first, two of a foot on each but the last, beside the grounds and lines that any page has.
    bare = min(artifacts[page] for page in pages - of_table)
    assert {artifacts[page] - bare for page in of_table - {first, last}} == {4}


def test_each_link_is_that_of_its_words(sheet: pikepdf.Pdf) -> None:
    numbers = sheet.Root.StructTreeRoot.ParentTree.Nums
    parents = {int(numbers[at]): numbers[at + 1] for at in range(0, len(numbers), 2)}
    links = {one.objgen for one in whole_tree(sheet) if one.S == "/Link"}
    notes = [note for page in sheet.pages for note in page.get("/Annots", ())]
    # The last one is a link of many lines, of which each is one by itself but where it goes on on the next page.
    last = [element for element in whole_tree(sheet) if element.S == "/P"][-1]
    within = {one.objgen for one in elements(last)}
    pages = {page for (page, _), element in held(sheet).items() if element in within}
    assert len(links) == len(notes) - (len(pages) - 1) > 50 and {parents[int(note.StructParent)].objgen for note in notes} == links
