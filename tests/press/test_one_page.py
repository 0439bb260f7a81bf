"""Sheets that ask for one page: the largest type that fits is taken, and nothing is ever left out, whatever the size."""

import io
from collections.abc import Iterator

import pdfplumber
import pytest

from builder.library import LAYOUTS
from builder.model.document import Document, Folder
from builder.press.fonts import only_our_fonts
from builder.press.sheets import Engine
from tests.composing import styles

STYLES, CHECKLIST = styles("bench cards"), styles("check list")
FITS = 'data-fit="large" data-fits="large middle small smallest two-pages"'


@pytest.fixture(scope="module")
def engine(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Engine]:
    with only_our_fonts(tmp_path_factory.mktemp("fonts")):
        yield Engine(tmp_path_factory.mktemp("studio"), (LAYOUTS,))


def card(lines: int) -> str:
    rows = "".join(f'<li><b class="amount">{number}.25 g</b> item{number}x</li>' for number in range(lines))
    phases = f'<div class="phases"><div class="phase"><ul class="amounts">{rows}</ul></div></div>'
    return f"<h1>Group 1</h1><section><h2>Salts</h2>{phases}</section>"


def press(engine: Engine, body: str, styles: tuple[str, ...], cards: int) -> list[tuple[str, list[float]]]:
    pieces = "".join(f'<article class="card one-page">{body}</article>' for _ in range(cards))
    html = f'<html lang="en"><head><title>One</title></head><body class="letter" data-title="One" {FITS}>{pieces}</body></html>'
    pdf = engine.press(Document(Folder.PRINT, "one.pdf", "One", html, styles)).pdf
    with pdfplumber.open(io.BytesIO(pdf)) as opened:
        return [(page.extract_text(), sorted({round(char["size"], 1) for char in page.chars}, reverse=True)) for page in opened.pages]


@pytest.mark.parametrize("lines", [1, 8, 12, 16, 20, 40, 90])
def test_nothing_is_lost_whatever_the_length(engine: Engine, lines: int) -> None:
    pages = press(engine, card(lines), STYLES, cards=2)
    assert [sum(text.count(f"item{number}x") for text, _ in pages) for number in range(lines)] == [2] * lines


def test_what_fits_takes_one_page_and_smaller_type_only_where_it_has_to(engine: Engine) -> None:
    short, longer, longest = (press(engine, card(lines), STYLES, cards=2) for lines in (8, 17, 90))
    # The heading has the largest type whatever the fit, and amounts come next: 26 pt where there is room, 20 pt at the least.
    amounts = [pages[0][1][1] for pages in (short, longer)]
    assert amounts[0] == pytest.approx(26, abs=0.2)
    assert amounts[0] > amounts[1] >= 20
    assert (len(short), len(longer)) == (2, 2)
    assert len(longest) > 2 and any(amounts[0] in sizes for _, sizes in longest)


def test_a_check_list_of_many_lines_keeps_every_one(engine: Engine) -> None:
    rows = "".join(f"<li>line{number}x to tick</li>" for number in range(150))
    body = f'<div class="columns"><section><h2>All</h2><ul class="boxes">{rows}</ul></section></div>'
    pages = press(engine, body, CHECKLIST, cards=1)
    assert all(any(f"line{number}x" in text for text, _ in pages) for number in range(150))
