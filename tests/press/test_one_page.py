"""Sheets that ask for one page: the largest type that fits is taken, and nothing is ever left out, whatever the size."""

import io
from collections.abc import Iterator
from functools import cache

import pdfplumber
import pytest

from builder.fonts.files import only_our_fonts
from builder.library import LAYOUTS
from builder.model.document import Document, Folder
from builder.press.engine.sheets import Engine
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


@cache
def press(engine: Engine, body: str, styles: tuple[str, ...], cards: int) -> list[tuple[str, list[float]]]:
    pieces = "".join(f'<article class="card one-page">{body}</article>' for _ in range(cards))
    html = f'<html lang="en"><head><title>One</title></head><body class="letter" data-title="One" {FITS}>{pieces}</body></html>'
    pdf = engine.press(Document(Folder.PRINT, "one.pdf", html, styles)).pdf
    with pdfplumber.open(io.BytesIO(pdf)) as opened:
        return [(page.extract_text(), sorted({round(char["size"], 1) for char in page.chars}, reverse=True)) for page in opened.pages]


@pytest.mark.parametrize("lines", [1, 22, *(pytest.param(lines, marks=pytest.mark.long) for lines in (8, 12, 16, 20, 40, 60, 90))])
def test_nothing_is_lost_whatever_the_length(engine: Engine, lines: int) -> None:
    pages = press(engine, card(lines), STYLES, cards=2)
    assert [sum(text.count(f"item{number}x") for text, _ in pages) for number in range(lines)] == [2] * lines


@pytest.mark.long
def test_what_fits_takes_one_page_and_smaller_type_only_where_it_has_to(engine: Engine) -> None:
    short, longer, longest = (press(engine, card(lines), STYLES, cards=2) for lines in (8, 22, 60))
    # The heading has the largest type whatever the fit, and amounts come next: 26 pt where there is room, 20 pt at the least.
    amounts = [pages[0][1][1] for pages in (short, longer)]
    assert amounts[0] == pytest.approx(26, abs=0.2)
    assert amounts[0] > amounts[1] >= 20
    assert (len(short), len(longer)) == (2, 2)
    assert len(longest) > 2 and any(amounts[0] in sizes for _, sizes in longest)


@pytest.mark.long
def test_a_check_list_of_many_lines_keeps_every_one(engine: Engine) -> None:
    rows = "".join(f"<li>line{number}x to tick</li>" for number in range(150))
    body = f'<div class="columns"><section><h2>All</h2><ul class="boxes">{rows}</ul></section></div>'
    pages = press(engine, body, CHECKLIST, cards=1)
    assert all(any(f"line{number}x" in text for text, _ in pages) for number in range(150))


def two_up(engine: Engine, lines: int) -> list[str]:
    article = f'<article class="card one-page" data-in="large">{card(lines)}</article>'
    body = f'<div class="page one-page" data-in="half-small">{article * 2}</div>'
    fits = 'data-fit="half-small" data-fits="half-small large two-pages"'
    html = f'<html lang="en"><head><title>One</title></head><body class="letter" data-title="One" {fits}>{body}</body></html>'
    pdf = engine.press(Document(Folder.PRINT, "one.pdf", html, STYLES)).pdf
    with pdfplumber.open(io.BytesIO(pdf)) as opened:
        return [page.extract_text() for page in opened.pages]


@pytest.mark.parametrize(("lines", "pages"), [(8, 1), pytest.param(16, 2, marks=pytest.mark.long)])
def test_two_cards_share_a_page_where_both_fit_and_lose_nothing_where_they_do_not(engine: Engine, lines: int, pages: int) -> None:
    texts = two_up(engine, lines)
    assert len(texts) == pages
    assert [sum(text.count(f"item{number}x") for text in texts) for number in range(lines)] == [2] * lines


@pytest.mark.long
def test_a_sheet_that_wants_so_many_pages_gets_smaller_type_until_it_has_no_more(engine: Engine) -> None:
    paragraphs = "".join(f"<p>Step{number}x. {'Weigh and stir. ' * 12}</p>" for number in range(40))

    def pressed(most: int) -> list[str]:
        fits = f'data-fit="large" data-fits="large middle small smallest" data-most="{most}"'
        html = (
            f'<html lang="en"><head><title>S</title></head><body class="letter" data-title="S" {fits}><h1>S</h1>{paragraphs}</body></html>'
        )
        pdf = engine.press(Document(Folder.PRINT, "s.pdf", html, styles("steps at the bench"))).pdf
        with pdfplumber.open(io.BytesIO(pdf)) as opened:
            return [page.extract_text() for page in opened.pages]

    plenty, few, none = pressed(20), pressed(4), pressed(1)
    assert len(plenty) > 4 >= len(few) and len(none) > 1
    for texts in (plenty, few, none):
        assert all(f"Step{number}x." in " ".join(texts) for number in range(40))


@pytest.mark.long
def test_what_takes_more_pages_than_it_wants_has_the_largest_type_of_that_number(engine: Engine) -> None:
    style = "<style>body { font-size: 30pt } [data-fit=middle] { font-size: 16pt } [data-fit=small] { font-size: 15pt }</style>"
    rows = "".join(f"<p>item{number}x</p>" for number in range(50))
    sizes = {}
    for most in (1, 9):
        html = f'<html lang="en"><head><title>One</title>{style}</head><body class="letter" data-title="One" data-fit="large" '
        html += f'data-fits="large middle small" data-most="{most}"><h1>A</h1>{rows}</body></html>'
        with pdfplumber.open(io.BytesIO(engine.press(Document(Folder.PRINT, "one.pdf", html, STYLES[:3])).pdf)) as opened:
            sizes[most] = (len(opened.pages), {round(char["size"]) for page in opened.pages for char in page.chars if char["text"] == "x"})
    assert sizes[9][1] == {30} and 2 < sizes[9][0] <= 9
    assert sizes[1][1] == {16} and sizes[1][0] == 3


def closer(engine: Engine, filling: int, height: int) -> int:
    """Press a piece that stays whole between two others, which may be split more closely; return how many pages it takes."""
    style = "<style>p { height: 10mm; margin: 0 } div { break-inside: avoid } [data-closer=any] div { break-inside: auto }</style>"
    pieces = "".join(f"<div>{'<p>x</p>' * rows}</div>" for rows in (filling, height, filling))
    body = f'<body class="letter" data-title="One" data-closers="last any">{pieces}</body>'
    html = f'<html lang="en"><head><title>One</title>{style}</head>{body}</html>'
    with pdfplumber.open(io.BytesIO(engine.press(Document(Folder.PRINT, "one.pdf", html, STYLES[:3])).pdf)) as opened:
        assert sum(one.extract_text().count("x") for one in opened.pages) == 2 * filling + height
        return len(opened.pages)


def test_a_sheet_is_laid_out_more_closely_where_that_saves_a_page(engine: Engine) -> None:
    assert closer(engine, 15, 12) == 2  # 42 rows of 10 mm: whole pieces would take three pages of 24 rows.
    assert closer(engine, 20, 12) == 3  # 52 rows are three pages either way.
