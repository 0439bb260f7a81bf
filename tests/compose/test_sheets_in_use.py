"""Sheets by their measures alone, and a test page for each that labels lie on."""

from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest

from builder.model.label.label_sheet import Paper
from tests.compose.conftest import FILES, read_edition, write_studio
from tests.composing import composed

INCH = Fraction(254, 10)


@pytest.mark.parametrize(("name", "labels", "width", "height"), [("letter 3 x 10", 30, "2.625", "1"), ("letter 2 x 5", 10, "4", "2")])
def test_sheets_of_thirty_and_of_ten_lie_in_the_middle_of_the_paper(
    tmp_path: Path, name: str, labels: int, width: str, height: str
) -> None:
    """Sizes as stationers cut them: common practice, no source. Alike margins left and right, above and below, follow from the paper."""
    sheet = read_edition(write_studio(tmp_path)).studio.label_sheets[name]
    assert sheet.positions == labels and not sheet.is_cut
    assert (sheet.width.millimetres, sheet.height.millimetres) == (Fraction(width) * INCH, Fraction(height) * INCH)
    page_width, page_height = Paper.LETTER.size
    across = sheet.columns * sheet.width.millimetres + (sheet.columns - 1) * sheet.across.millimetres
    down = sheet.rows * sheet.height.millimetres + (sheet.rows - 1) * sheet.down.millimetres
    assert page_width - across == 2 * sheet.left.millimetres and page_height - down == 2 * sheet.top.millimetres


def test_every_sheet_on_which_labels_lie_has_a_test_page(tmp_path: Path) -> None:
    edition = read_edition(write_studio(tmp_path))
    (page,) = composed("label test page", edition)
    assert "letter 3 x 6" in page.html and page.html.count('<div class="page">') == 1 + 1, "what to do, and one for the sheet"
    asked_for = FILES["studio.yaml"].rstrip("\n") + "\nlabels: {sheet: letter 2 x 5}\n"
    own = FILES["classes/first/class.yaml"].rstrip("\n") + "\nlabels: {sheet: letter 3 x 4 square}\n"
    edition = read_edition(write_studio(tmp_path / "two", studio_yaml=asked_for, classes__first__class_yaml=own))
    (page,) = composed("label test page", edition)
    assert all(name in page.html for name in ("letter 2 x 5", "letter 3 x 4 square")) and page.html.count('<div class="page">') == 1 + 2


def test_paper_that_is_cut_by_hand_needs_no_test_page(tmp_path: Path) -> None:
    edition = read_edition(write_studio(tmp_path))
    cut = {key: replace(sheet, is_cut=True) for key, sheet in edition.studio.label_sheets.items()}
    (page,) = composed("label test page", replace(edition, studio=replace(edition.studio, label_sheets=cut)))
    assert page.html.count('<div class="page">') == 1 + 1, "the first of the paper, for the scale of the printer"


def test_words_lie_outside_the_outlines_and_the_name_of_a_sheet_within_one(tmp_path: Path) -> None:
    asked_for = FILES["studio.yaml"].rstrip("\n") + "\nlabels: {sheet: letter 3 x 10}\n"
    edition = read_edition(write_studio(tmp_path, studio_yaml=asked_for))
    (page,) = composed("label test page", edition)
    words, outlines = page.html.split('<div class="page">')[1:]
    assert 'class="outline"' not in words and "actual size" in words
    assert outlines.count('class="outline"') == 30 and "actual size" not in outlines
    sheet = edition.studio.label_sheets["letter 3 x 10"]
    x, y = sheet.position(sheet.positions - 1)
    lines = [text.removeprefix('<p class="holds" style="') for text in outlines.split("\n") if "Sheet letter 3 x 10" in text]
    (left, top) = (float(lines[0].split(side)[1].split("mm")[0]) for side in ("left:", "top:"))
    assert x < left < x + float(sheet.width.millimetres) and y < top < y + float(sheet.height.millimetres)
