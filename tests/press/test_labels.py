"""Label sheets: every cell where the sheet has it, letters as high as was asked for, and no text over an edge."""

import io
import os
import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from pathlib import Path
from typing import Any

import page as ua1
import pdfplumber
import pypdfium2
import pytest
import zxingcpp

from builder.compose.edition import Edition
from builder.compose.label.label_texts import Run
from builder.compose.label_layout.label_lines import Block, Setter
from builder.compose.label_layout.label_pages import labels_view, position_of
from builder.compose.views.labels import PositionView
from builder.fonts.files import only_our_fonts
from builder.fonts.typefaces import typefaces_of_labels
from builder.library import LAYOUTS
from builder.model.document import Document, Folder
from builder.model.label.label_sheet import LabelSheet, LabelWishes, Paper
from builder.model.label.typeface import MeasuredOn
from builder.model.recipe.container import Container
from builder.model.recipe.container_form import ContainerForm
from builder.model.recipe.quantity import Length
from builder.press.engine.sheets import Engine
from builder.press.kept import PressedSheet
from builder.rules.label.label_places import labels_for
from builder.rules.label.usual_outside import with_usual_outside
from tests.compose.conftest import read_edition, write_studio
from tests.composing import composed, styles
from tests.whole_run import LONG

MM = 72 / 25.4
FACES = typefaces_of_labels()


@pytest.fixture(scope="module")
def engine(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Engine]:
    with only_our_fonts(tmp_path_factory.mktemp("fonts")):
        yield Engine(tmp_path_factory.mktemp("studio"), (LAYOUTS,))


@pytest.fixture(scope="module")
def edition(tmp_path_factory: pytest.TempPathFactory) -> Edition:
    return read_edition(write_studio(tmp_path_factory.mktemp("labels")))


def wishing(edition: Edition, **wishes: Any) -> Edition:
    profile = replace(edition.studio.profile, labels=LabelWishes(**wishes), public_address="https://test.example")
    return replace(edition, studio=replace(edition.studio, profile=profile))


def press(engine: Engine, edition: Edition, stock: LabelSheet, cells: Sequence[PositionView], first: int = 1) -> PressedSheet:
    view = labels_view(edition, "Labels", stock, cells, first)
    html = edition.templates.render("sheets/labels.html", view)
    return engine.press(Document(Folder.PRINT, "labels.pdf", html, styles("labels")))


def corners(sheet: PressedSheet) -> list[list[tuple[float, ...]]]:
    """Return the left, top, right and bottom edge of everything drawn on each page, in millimetres."""
    with pdfplumber.open(io.BytesIO(sheet.pdf)) as pdf:
        return [
            [tuple(shape[edge] / MM for edge in ("x0", "top", "x1", "bottom")) for shape in (*one.rects, *one.curves)] for one in pdf.pages
        ]


STOCKS = ("letter 3 x 10", "letter 2 x 5", "letter 3 x 6", "letter 2 x 4", "letter 2 x 3 round", "a4 3 x 4 square", "a4 2 x 3", "a4 tags")


@pytest.mark.parametrize("name", [pytest.param(one, marks=pytest.mark.long if number % 3 else ()) for number, one in enumerate(STOCKS)])
def test_every_cell_lies_within_a_tenth_of_a_millimetre(engine: Engine, edition: Edition, name: str) -> None:
    stock = edition.studio.label_sheets[name]
    stock = replace(stock, is_cut=False)
    moved = wishing(edition, right=Length(Fraction(3, 2)), down=Length(Fraction(-1, 2)))
    for one, right, down in ((edition, 0, 0), (moved, 1.5, -0.5)):
        sheet = press(engine, one, stock, [PositionView(art="tick")] * stock.positions)
        (found,) = corners(sheet)
        assert len(found) == stock.positions
        places = sorted(found, key=lambda edges: (round(edges[1]), edges[0]))
        for number, (x0, top, x1, bottom) in enumerate(places):
            row, column = divmod(number, stock.columns)
            x = stock.left.millimetres + column * (stock.width.millimetres + stock.across.millimetres) + right
            y = stock.top.millimetres + row * (stock.height.millimetres + stock.down.millimetres) + down
            expected = (float(x), float(y), float(x + stock.width.millimetres), float(y + stock.height.millimetres))
            assert (x0, top, x1, bottom) == pytest.approx(expected, abs=0.1)


def own_sizes(edition: Edition, paper: Paper) -> list[tuple[Container, LabelSheet, int]]:
    """Give the largest labels of each place of each container that ships, with how many of them lie on one container.

    Without `--long` those of one place of each shape, round ones and others.
    """
    found: dict[str, tuple[Container, LabelSheet, int]] = {}
    for one in edition.studio.containers.values():
        usual = with_usual_outside(one, edition.studio.constants)
        found |= {sheet.name: (usual, sheet, labels) for sheet, labels in labels_for(usual, paper)}
    of_each = {(one[0].shape, one[1].is_round): one for one in found.values()}
    return list((found if LONG in os.environ else of_each).values())


# Papers: letter, 8.5 by 11 in, and A4, 210 by 297 mm (ISO 216). What a printer leaves: 6.35 mm, common practice, no source.
PAPERS = [
    pytest.param(Paper.LETTER, 215.9, 279.4, marks=pytest.mark.long(sample=True)),
    pytest.param(Paper.A4, 210.0, 297.0, marks=pytest.mark.long),
]


@pytest.mark.parametrize(("paper", "wide", "high"), PAPERS)
def test_labels_of_every_container_are_printed_to_a_tenth_of_a_millimetre_and_sit_on_it(
    engine: Engine, edition: Edition, paper: Paper, wide: float, high: float
) -> None:
    sizes = own_sizes(edition, paper)
    assert {container.shape for container, _, _ in sizes} == {one.shape for one in edition.studio.containers.values()} == set(ContainerForm)
    views = [
        labels_view(edition, "Labels", replace(sheet, is_cut=False), [PositionView(art="tick")] * sheet.positions) for _, sheet, _ in sizes
    ]
    view = replace(views[0], pages=tuple(page for one in views for page in one.pages))
    html = edition.templates.render("sheets/labels.html", view)
    pages = corners(engine.press(Document(Folder.PRINT, "labels.pdf", html, styles("labels"))))
    assert len(pages) == len(sizes)
    for (container, sheet, labels), found in zip(sizes, pages, strict=True):
        assert len(found) == sheet.positions
        rows: dict[int, list[tuple[float, ...]]] = {}
        for edges in found:
            rows.setdefault(round(edges[1]), []).append(edges)
        for row in rows.values():
            lefts, rights = sorted(edges[0] for edges in row), sorted(edges[2] for edges in row)
            assert lefts[0] == pytest.approx(wide - rights[-1], abs=0.1) and lefts[0] >= 6.35, "in the middle of the paper"
            assert all(after - before >= 6 - 0.1 for before, after in zip(rights, lefts[1:], strict=False)), "paper between two labels"
        assert min(edges[1] for edges in found) >= 6.35 and max(edges[3] for edges in found) <= high - 6.35
        outside = {name: float(length.millimetres) for name, length in container.outside.measured}
        for x0, top, x1, bottom in found:
            width, height = x1 - x0, bottom - top
            assert (width, height) == pytest.approx((float(sheet.width.millimetres), float(sheet.height.millimetres)), abs=0.1)
            if sheet.is_round:
                assert width == pytest.approx(height, abs=0.1) and width <= outside["lid"]
            elif "around" in outside:
                assert labels * width <= outside["around"] and height <= outside["height"]
            else:
                assert width <= outside["width"] and height <= outside["height"]


def test_a_sheet_that_has_been_begun_is_used_up(engine: Engine, edition: Edition) -> None:
    stock = replace(edition.studio.label_sheets["letter 2 x 4"], is_cut=False)
    pages = corners(press(engine, edition, stock, [PositionView(art="tick")] * 9, first=6))
    assert [len(page) for page in pages] == [3, 6]
    assert min(edges[1] for edges in pages[0]) == pytest.approx(0.5 * 25.4 + 2 * 2.5 * 25.4, abs=0.1)


# 1/16 in and 1/8 in: 21 CFR 701.3(b) (read) and 701.13(i) (memory). 3 mm: SI 2006/659 reg. 8(3)(d) (read).
@pytest.mark.parametrize(
    ("face", "text", "millimetres", "measured_on"),
    [
        ("regular", "o", 1.5875, MeasuredOn.LETTERS),
        ("bold", "o", 3.175, MeasuredOn.LETTERS),
        ("bold", "H", 1.5875, MeasuredOn.LETTERS),
        ("bold", "1", 3.0, MeasuredOn.FIGURES),
    ],
)
def test_printed_letters_are_as_high_as_was_asked_for(
    engine: Engine, edition: Edition, face: str, text: str, millimetres: float, measured_on: MeasuredOn
) -> None:
    points = FACES[face].size_for(text, millimetres, measured_on)
    block = Block(5, 5, 40, points, ((Run(text, bold=face == "bold"),),))
    stock = replace(edition.studio.label_sheets["letter 2 x 4"], is_cut=False)
    sheet = press(engine, edition, stock, [position_of((block,))])
    dots = 1200
    page = pypdfium2.PdfDocument(sheet.pdf)[0].render(scale=dots / 72, grayscale=True, crop=(0, 600, 400, 0)).to_pil()
    _, top, _, bottom = page.point(lambda grey: 255 if grey < 128 else 0).getbbox()
    assert (bottom - top) / dots * 25.4 == pytest.approx(millimetres, rel=0.02)


def test_text_is_as_wide_as_the_layout_believes(engine: Engine, edition: Edition) -> None:
    text = "Ingredients: Water (Aqua), AVALON To Ty fi 1 3/4 fl oz"
    setter = Setter(FACES)
    block = Block(5, 5, 85, 8.25, ((Run(text),),))
    stock = edition.studio.label_sheets["letter 2 x 4"]
    sheet = press(engine, edition, stock, [position_of((block,))])
    with pdfplumber.open(io.BytesIO(sheet.pdf)) as pdf:
        chars = pdf.pages[0].chars
    assert (chars[-1]["x1"] - chars[0]["x0"]) / MM == pytest.approx(setter.width(text, False, 8.25), abs=0.05)


NAMES_TO_MEASURE = (
    "AVATAR & To Wax, LTV",
    "Yarrow We Toffee rye",
    "Kitchen garden bar",
    "P. F. Tea, A.V. 11 17",
    "“Fête” d’été à Kerkrade",
)


NAME_FACES = sorted(set(FACES) - {"regular", "bold"})
# By default each face with one name, and each name.
SET_IN = [
    pytest.param(text, face, marks=() if at == number % len(NAMES_TO_MEASURE) else pytest.mark.long)
    for at, text in enumerate(NAMES_TO_MEASURE)
    for number, face in enumerate(NAME_FACES)
]


@pytest.mark.parametrize(("text", "face"), SET_IN)
def test_names_are_set_with_kerning_and_are_as_wide_as_the_layout_believes(engine: Engine, edition: Edition, face: str, text: str) -> None:
    """Held against the PDF: where its engine begins each letter is what the layout has worked out, to a tenth of a millimetre."""
    block = Block(5, 5, 180, 24, ((Run(text),),), face)
    sheet = press(engine, edition, edition.studio.label_sheets["letter 1 x 2"], [position_of((block,))])
    with pdfplumber.open(io.BytesIO(sheet.pdf)) as pdf:
        chars = [char for char in pdf.pages[0].chars if char["text"].strip()]
    (first, *_) = chars
    solid = [(at, letter) for at, letter in enumerate(text) if letter.strip()]
    assert [char["text"] for char in chars] == [letter for _, letter in solid]
    for char, (at, letter) in zip(chars, solid, strict=True):
        believed = FACES[face].width(text[: at + 1], 24) - FACES[face].width(letter, 24)
        assert (char["x0"] - first["x0"]) / MM == pytest.approx(believed, abs=0.1), text[: at + 1]


def test_text_that_runs_over_its_edge_is_told(engine: Engine, edition: Edition) -> None:
    block = Block(5, 5, 20, 9, ((Run("Helianthus Annuus (Sunflower) Seed Oil"),),))
    sheet = press(engine, edition, edition.studio.label_sheets["letter 2 x 4"], [position_of((block,))])
    assert "runs over its edge" in sheet.warnings[0]


@pytest.mark.long
def test_labels_to_colour_tags_and_the_test_page_can_be_read_by_everyone(engine: Engine, edition: Edition) -> None:
    colouring = wishing(edition, to_colour=True)
    sheet = colouring.plans[-1]
    for document in (one for name in ("labels", "tags", "label test page") for one in composed(name, colouring, sheet)):
        pressed = engine.press(document)
        assert pressed.warnings == ()
        report = ua1.validate_pdf_bytes(pressed.pdf, profile="ua1")
        assert report.is_compliant, f"{document.path}: {report.failures}"


def alternatives(elements: Sequence[dict[str, Any]]) -> Iterator[str]:
    """Yield the text alternatives of a tagged PDF, those of what stands in others too."""
    for one in elements:
        yield from filter(None, [one.get("alt_text")])
        yield from alternatives(one.get("children", []))


def test_the_code_on_a_tag_leads_to_the_page_of_the_class(engine: Engine, edition: Edition) -> None:
    colouring = wishing(edition, to_colour=True)
    (tags,) = composed("tags", colouring, colouring.plans[-1])
    sheet = engine.press(tags)
    page = pypdfium2.PdfDocument(sheet.pdf)[1]
    for dots in (300, 150):
        codes = zxingcpp.read_barcodes(page.render(scale=dots / 72).to_pil())
        assert {code.text for code in codes} == {"https://test.example/classes/first.html"}, dots
        assert len(codes) == colouring.plans[-1].students
        for code in codes:
            assert (code.position.top_right.x - code.position.top_left.x) / dots * 25.4 >= 15
    with pdfplumber.open(io.BytesIO(sheet.pdf)) as read:
        told = [one for one in alternatives(read.structure_tree) if "test.example/classes/first.html" in one]
    assert len(told) == colouring.plans[-1].students
    assert "test.example/classes/first.html" in page.get_textpage().get_text_range().replace("\r\n", "")


@pytest.mark.parametrize(
    "title", ["Bar-and-balm-and-bath-tea-and-lotion-in-an-afternoon", pytest.param("Soap and " * 20 + "tea", marks=pytest.mark.long)]
)
def test_a_tag_says_all_that_it_has_to_and_nothing_runs_into_the_code(engine: Engine, edition: Edition, title: str) -> None:
    sheet = edition.plans[-1]
    long = replace(sheet, studio_class=replace(sheet.studio_class, title=title))
    wanting = wishing(edition, tags=True)
    profile = replace(wanting.studio.profile, public_address="https://a-studio-with-a-name-that-is-long-without-need.example")
    (tags,) = composed("tags", replace(wanting, studio=replace(wanting.studio, profile=profile)), long)
    pressed = engine.press(tags)
    assert pressed.warnings == ()
    front, back = pypdfium2.PdfDocument(pressed.pdf)
    for page, texts in (
        (front, ("For", "From")),
        (back, (title, "Plain salts and Plain bar", "without-need.example", "Not tested for sale")),
    ):
        said = "".join(filter(str.isalnum, page.get_textpage().get_text_range()))
        for text in texts:
            assert said.count("".join(filter(str.isalnum, text))) >= sheet.students, text
    assert len(zxingcpp.read_barcodes(back.render(scale=300 / 72).to_pil())) == sheet.students


def test_each_back_of_a_tag_lies_behind_its_front(edition: Edition) -> None:
    """Turned over its long edge, what lies at the left of a sheet lies at the right of its other side."""
    stock = edition.studio.label_sheets["letter tags"]
    lopsided = replace(stock, left=Length(Fraction(9)), across=Length(Fraction(3)), columns=3, rows=1, width=Length(Fraction(60)))
    wanting = wishing(edition, tags=True)
    studio = replace(wanting.studio, label_sheets={"lopsided": lopsided})
    (tags,) = composed("tags", replace(wanting, studio=studio), wanting.plans[-1])
    pages = tags.html.split('<div class="page">')[1:]
    assert len(pages) == 4
    for front, back in zip(pages[::2], pages[1::2], strict=True):
        fronts = [float(x) for x in re.findall(r'class="label" style="left:([\d.]+)mm', front)]
        backs = [float(x) for x, cell in re.findall(r'class="label" style="left:([\d.]+)mm(.*?)</div>', back, re.DOTALL) if "<p" in cell]
        assert sorted(215.9 - 60 - x for x in backs) == pytest.approx(sorted(fronts), abs=0.1)


def test_a_sheet_may_have_no_margin_and_a_tag_that_holds_too_little_is_passed_over(tmp_path: Path) -> None:
    own = """
whole page: {paper: letter, columns: 2, rows: 1, width: 4.25 in, height: 11 in, left: 0 mm, top: 0 mm}
our small tags: {paper: letter, columns: 4, rows: 4, width: 20 mm, height: 40 mm, left: 1 mm, top: 1 mm, hole: 3 mm}
"""
    edition = read_edition(write_studio(tmp_path, shelf__label_sheets_yaml=own))
    assert edition.studio.label_sheets["whole page"].position(0) == (0, 0)
    (tags,) = composed("tags", wishing(edition, tags=True), edition.plans[-1])
    assert "width:63.5000mm;height:127.0000mm" in tags.html


def test_tags_come_with_labels_to_colour_in_or_when_they_are_asked_for(edition: Edition) -> None:
    for wishes, made in (({"to_colour": True}, 1), ({"tags": True}, 1), ({"to_colour": True, "tags": False}, 0), ({}, 0)):
        assert len(composed("tags", wishing(edition, **wishes), edition.plans[-1])) == made


def test_labels_are_printed_at_their_size(engine: Engine, edition: Edition) -> None:
    sheet = press(engine, edition, edition.studio.label_sheets["letter 2 x 4"], [PositionView(art="tick")])
    with pdfplumber.open(io.BytesIO(sheet.pdf)) as pdf:
        viewer = pdf.doc.catalog["ViewerPreferences"]
    assert viewer["PrintScaling"].name == "None" and viewer["DisplayDocTitle"] is True
