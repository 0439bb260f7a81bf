"""Label sheets: every label where the stock has it, and no text cut off."""

import io

import pdfplumber
import pytest

from builder.compose.labels import STYLES
from builder.compose.templates import Templates
from builder.compose.views.frame import Sender, SheetFrame
from builder.compose.views.labels import LabelsView, LabelView
from builder.model.document import Document, Folder
from builder.press.fonts import only_our_fonts
from builder.press.sheets import Engine
from builder.stock import LAYOUTS

INCH, MM = 72, 72 / 25.4
SHORT, LONG, TOO_LONG = "Glycerin", ", ".join(["Glycerin"] * 100), ", ".join(["Glycerin"] * 900)


@pytest.fixture(scope="module")
def engine(tmp_path_factory):
    with only_our_fonts():
        yield Engine(tmp_path_factory.mktemp("studio"), (LAYOUTS,))


def press(engine, paper, ingredients, count, fits=("plain", "tall", "wide")):
    label = LabelView(
        "Lotion", "Test lotion", "No scent", "Net Wt 3.98\u00a0oz (113\u00a0g)", ingredients, "", ("Keep out of eyes.",), "A-1", ""
    )
    frame = SheetFrame("en-US", "Labels", "Labels", paper, Sender("Test", "", (), ()))
    view = LabelsView(frame, "Labels", " ".join(fits), fits[0], "Test, Testham", (label,) * count)
    html = Templates((LAYOUTS,)).render("sheets/labels.html", view)
    return engine.press(Document(Folder.PRINT, "labels.pdf", "Labels", html, STYLES))


def corners(sheet):
    """Give the top left corner of each label's text on each page, and the size of the ingredients' letters."""
    with pdfplumber.open(io.BytesIO(sheet.pdf)) as pdf:
        found = [[(word["x0"], word["top"]) for word in one.extract_words() if word["text"] == "Lotion"] for one in pdf.pages]
        small = [char["size"] for char in pdf.pages[0].chars if char["text"] == "G"]
        last = [char for one in pdf.pages for char in one.chars]
        inside = all(char["x0"] >= 0 and char["x1"] <= pdf.pages[0].width and char["bottom"] <= pdf.pages[0].height for char in last)
    assert inside
    return found, small[0]


@pytest.mark.parametrize(
    ("paper", "columns", "rows", "left", "top", "across", "down"),
    [("letter", 2, 4, 0.5 * INCH, 0.5 * INCH, 3.75 * INCH, 2.5 * INCH), ("a4", 2, 4, 10 * MM, 10 * MM, 95 * MM, 69 * MM)],
)
def test_labels_stand_where_the_stock_has_them(engine, paper, columns, rows, left, top, across, down):
    sheet = press(engine, paper, SHORT, columns * rows + 1)
    assert sheet.warnings == ()
    pages, _ = corners(sheet)
    assert [len(labels) for labels in pages] == [columns * rows, 1]
    first_x, first_y = pages[0][0]
    assert first_x == pytest.approx(left + 2.4 * MM, abs=0.5)
    assert top < first_y < top + 5 * MM
    for number, (x, y) in enumerate(pages[0]):
        assert x - first_x == pytest.approx(number % columns * across, abs=0.01)
        assert y - first_y == pytest.approx(number // columns * down, abs=0.01)


def test_text_that_does_not_fit_gets_a_taller_cell_of_the_same_type(engine):
    sheet = press(engine, "letter", LONG, 5)
    assert sheet.warnings == ()
    pages, size = corners(sheet)
    assert [len(labels) for labels in pages] == [4, 1]
    assert pages[0][2][1] - pages[0][0][1] == pytest.approx(5 * INCH, abs=0.01)
    assert size >= 8.16


def test_where_no_law_asks_for_higher_letters_type_shrinks_first_but_not_below_the_least(engine):
    sheet = press(engine, "a4", ", ".join(["Glycerin"] * 110), 4, fits=("plain", "small", "tall", "wide"))
    assert sheet.warnings == ()
    pages, size = corners(sheet)
    assert len(pages[0]) == 4
    assert size == pytest.approx(6.5, abs=0.01)


def test_text_that_fits_no_cell_is_told_and_not_cut(engine):
    sheet = press(engine, "letter", TOO_LONG, 1)
    assert "runs over its edge" in sheet.warnings[0]
    with pdfplumber.open(io.BytesIO(sheet.pdf)) as pdf:
        assert "".join(char["text"] for one in pdf.pages for char in one.chars).count("Glycerin") == 900
