"""Pages as Chromium prints them, on both papers: a class is a page, the catalogue a programme of two, and each says of which day it is."""

import io
import os
from collections import Counter
from pathlib import Path

import pdfplumber
import pytest
from pypdfium2 import PdfDocument

from tests.browser import Browser
from tests.published import published, soup, squeeze
from tests.whole_run import LONG

LETTER, A4 = (8.5, 11.0), (210 / 25.4, 297 / 25.4)
PAPERS = [pytest.param(LETTER, id="letter"), pytest.param(A4, id="A4")]
# By default the paper of the studio, which is the shorter one.
BY_DEFAULT = [pytest.param(LETTER, id="letter", marks=pytest.mark.long(sample=True)), pytest.param(A4, id="A4", marks=pytest.mark.long)]
ADDRESS = "https://wrenlow.example/"


def class_pages() -> list[Path]:
    return [page for page in sorted((published()[0] / "site/classes").glob("*.html")) if "--" not in page.name]


def printed(chromium: Browser, page: Path, paper: tuple[float, float]) -> list[str]:
    chromium.open(page)
    pdf = PdfDocument(io.BytesIO(chromium.pdf(*paper)))
    return [squeeze(sheet.get_textpage().get_text_bounded().replace("\x02", "-")) for sheet in pdf]


@pytest.mark.parametrize("paper", BY_DEFAULT)
def test_a_class_is_one_page(chromium: Browser, paper: tuple[float, float]) -> None:
    """Without `--long` the one with most to say."""
    pages = sorted(class_pages(), key=lambda page: page.stat().st_size)
    assert len(pages) == 8
    for page in pages if LONG in os.environ else pages[-1:]:
        sheets = printed(chromium, page, paper)
        assert len(sheets) == 1, page.name
        assert "This page was made on January 2, 2027." in sheets[0]
        assert f"{ADDRESS}classes/{page.name}" in sheets[0]
        shown = soup(page)
        price = shown.select_one(".quick .price")
        assert price and price.get_text() in sheets[0]
        for risk in shown.select(".risks b"):
            assert squeeze(risk.get_text()) in sheets[0], f"{page.name} does not print: {risk.get_text()}"


@pytest.mark.long
@pytest.mark.parametrize("paper", PAPERS)
def test_the_catalogue_is_a_programme_of_two_pages(chromium: Browser, paper: tuple[float, float]) -> None:
    page = published()[0] / "site/classes.html"
    sheets = printed(chromium, page, paper)
    assert len(sheets) == 2
    whole = " ".join(sheets)
    for card in soup(page).select(".card"):
        title, price = card.select_one("h2"), card.find(string=lambda text: text.startswith("$"))
        assert title and squeeze(title.get_text()) in whole
        assert price and price in whole
    assert f"{ADDRESS}classes.html" in sheets[1]
    assert "This page was made on January 2, 2027." in sheets[1]


@pytest.mark.long
@pytest.mark.parametrize("name", ["classes/salts-and-scrub-party", "index", "classes", "dates", "visit"])
def test_nothing_is_printed_small(chromium: Browser, name: str) -> None:
    """TYPE-02 of the project: 10 pt at the least. The text of pages is 12 pt, that of a class 10 pt, so that it is one page."""
    chromium.open(published()[0] / f"site/{name}.html")
    with pdfplumber.open(io.BytesIO(chromium.pdf(*LETTER))) as pdf:
        sizes = Counter(round(char["size"], 1) for page in pdf.pages for char in page.chars if char["text"].strip())
    assert min(sizes) >= 10
    assert sizes.most_common(1)[0][0] >= (10 if "/" in name else 10.5)


@pytest.mark.long(sample=True)
def test_what_is_folded_on_the_screen_is_printed(chromium: Browser) -> None:
    """CSS Pseudo-Elements Level 4, `::details-content`: on paper nothing can be opened. What one chooses by is of no use there."""
    pages = class_pages()
    for page in pages if LONG in os.environ else pages[:1]:
        folded = soup(page).select("details:not(.filters)")
        text = " ".join(printed(chromium, page, LETTER))
        cells = [squeeze(cell.get_text(" ")) for one in folded for cell in one.select("summary, tbody th, tbody td")]
        assert len(cells) > 12, page.name
        assert [cell for cell in cells if cell not in text] == [], page.name


@pytest.mark.parametrize("name", ["classes/soap-lab-in-pairs", pytest.param("visit", marks=pytest.mark.long)])
def test_the_address_of_what_lies_elsewhere_is_printed(chromium: Browser, name: str) -> None:
    page = published()[0] / f"site/{name}.html"
    outward = [str(link["href"]) for link in soup(page).select('main a[href^="http"]')]
    text = "".join(printed(chromium, page, LETTER)).replace(" ", "")
    assert outward and [address for address in outward if f"({address})" not in text] == []


def test_where_seats_are_booked_elsewhere_the_address_is_printed_once(chromium: Browser) -> None:
    chromium.open(class_pages()[0])
    chromium.evaluate("document.querySelectorAll('.dates .action').forEach(one => one.href = 'https://seats.example/book')")
    (sheet,) = PdfDocument(io.BytesIO(chromium.pdf(*LETTER)))
    assert sheet.get_textpage().get_text_bounded().count("(https://seats.example/book)") == 1


def test_no_heading_is_printed_without_what_it_heads(chromium: Browser) -> None:
    text = " ".join(printed(chromium, published()[0] / "site/dates.html", LETTER))
    assert "Dates with room, by month" not in text and "January 2027" in text
