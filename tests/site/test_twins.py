"""The page beside each sheet in Chromium: it asks for nothing from elsewhere, fits a phone, and prints all that the sheet says."""

import io
import re
from pathlib import Path

import pdfplumber
import pytest

from tests.browser import Browser
from tests.published import is_beside_a_sheet, kind_of, published, soup
from tests.site.looks import WHOLE, axe

_NOT_FOUND = "Array.from(document.images).filter(one => !one.naturalWidth).length"


def twins() -> list[Path]:
    """Return the page beside each sheet that was pressed; those of labels have places in millimetres, and are not read on a phone."""
    sheets = sorted((published()[0] / "print").rglob("*.pdf"))
    return [page for page in (sheet.with_suffix(".html") for sheet in sheets) if page.exists() and is_beside_a_sheet(page)]


def letters(text: str) -> str:
    return re.sub(r"\W", "", text)


def test_every_sheet_but_the_pack_has_a_page() -> None:
    sheets = [sheet for sheet in (published()[0] / "print").rglob("*.pdf") if sheet.name != "pack.pdf"]
    assert len(sheets) > 12
    assert [sheet.name for sheet in sheets if not sheet.with_suffix(".html").exists()] == []


@pytest.mark.parametrize(
    "name", ["bench-steps", *(pytest.param(one, marks=pytest.mark.long) for one in ("checklist", "teacher", "roster"))]
)
def test_a_page_prints_what_its_sheet_says_on_the_same_paper(chromium: Browser, name: str) -> None:
    page = next(one for one in twins() if one.stem == name)
    chromium.open(page)
    assert chromium.complaints == []
    assert all(address.startswith(("file:", "data:")) for address in chromium.asked_for)
    assert chromium.evaluate("document.fonts.ready.then(() => document.fonts.check('12px \"Fira Sans\"'))") is True
    assert chromium.evaluate(_NOT_FOUND) == 0
    with pdfplumber.open(io.BytesIO(chromium.pdf(8.5, 11))) as pdf:
        printed = letters("".join(one.extract_text() for one in pdf.pages))
    shown = soup(page)
    for drawing in shown.select("svg, .drawing"):
        drawing.decompose()
    words = {word for item in shown.select("h1, h2, li, th, td") for word in map(letters, item.get_text(" ").split()) if len(word) > 2}
    assert len(words) > 30 and [word for word in words if word not in printed] == []


@pytest.mark.long(sample=True)
def test_axe_finds_nothing_on_a_page_of_each_kind(chromium: Browser) -> None:
    """WCAG 2.2 A and AA, and the best practice of axe-core: landmarks, a first heading, no empty head of a table."""
    folder = published()[0] / "print"
    each = {kind_of(page.relative_to(folder).with_suffix(".pdf").as_posix()): page for page in twins()}
    found = {}
    for kind, page in each.items():
        chromium.open(page)
        found[kind] = axe(chromium, WHOLE)
    assert {"label test page", "labels", "tags", "dose cards", "check list"} <= found.keys()
    assert not any(found.values()), found


@pytest.mark.long
def test_no_page_is_wider_than_a_phone(chromium: Browser) -> None:
    wide = []
    chromium.size(390)
    for page in twins():
        if page.stem.startswith(("labels", "label-", "tags")):
            continue
        chromium.open(page)
        width = chromium.evaluate("document.documentElement.scrollWidth")
        if width > 390:
            wide.append(f"{page.name}: {width}")
    chromium.size(1000)
    assert wide == []


def test_on_a_screen_the_steps_stand_below_one_another_and_no_page_is_counted(chromium: Browser) -> None:
    page = next(one for one in twins() if one.stem == "teacher")
    chromium.size(1000)
    chromium.open(page)
    tops = chromium.evaluate("[...document.querySelectorAll('.part-head')].map(one => one.getBoundingClientRect().top)")
    assert len(tops) > 4 and tops == sorted(tops)
    counted = "[...document.querySelectorAll('.sheet-page')].map(one => one.getBoundingClientRect().height)"
    assert set(chromium.evaluate(counted)) == {0}


# A word of a table is broken where its text needs more lines than it has words.
_BROKEN = """[...document.querySelectorAll('.clock td:first-child b, .pot td:nth-child(2), .number')].filter(one => {
  const range = document.createRange();
  range.selectNodeContents(one);
  const lines = new Set([...range.getClientRects()].map(box => Math.round(box.top))).size;
  return lines > one.textContent.trim().split(' ').length;
}).map(one => one.textContent.trim())"""


def test_on_a_phone_no_hour_day_weight_or_telephone_number_is_broken_within_a_word(chromium: Browser) -> None:
    chromium.size(390)
    found = {}
    for page in (one for one in twins() if one.stem == "teacher"):
        chromium.open(page)
        assert chromium.evaluate("document.querySelectorAll('.clock td:first-child b').length") > 4
        found[page.parent.name] = chromium.evaluate(_BROKEN)
    chromium.size(1000)
    assert found and not any(found.values()), found
