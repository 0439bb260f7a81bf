"""The private names of the PDF library are as this stage needs them, and stand in one module."""

from itertools import product
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import pytest
from pydyf import PDF
from weasyprint import HTML
from weasyprint.document import Document
from weasyprint.layout import preferred
from weasyprint.text import line_break

from builder import press
from builder.press.engine import private_names
from builder.press.engine.private_names import (
    TEXT_STYLE,
    boxes_of,
    break_lines,
    made_of,
    note_what_tags_are_made_of,
    room_below,
    set_scope,
)

TABLE = """<html lang="en"><head><title>A</title></head><body><h1>A</h1><p style="position: absolute">Placed</p>
<table><tr><th scope="col">Oil</th><th scope="col">Grams</th></tr><tr><th scope="row">Olive</th><td>12</td></tr></table></body></html>"""


def test_all_boxes_of_a_page_are_given() -> None:
    (page,) = HTML(string=TABLE).render().pages
    assert {"h1", "p", "table", "th", "td"} <= {box.element_tag for box in boxes_of(page, placeholders=True)}


@pytest.mark.parametrize("shown_as", ["block", "table"])
def test_what_goes_on_on_the_next_page_leaves_the_rest_of_this_one_empty(shown_as: str) -> None:
    page = "@page { size: 100px 100px; margin: 0 } body { margin: 0 }"
    paged = f"<style>{page} p {{ margin: 0; font: 10px/10px sans-serif; break-inside: avoid }}</style>"
    pieces = f"<p>Olive</p><p>{'Castor<br>' * 10}</p>"
    first, last = HTML(string=f'{paged}<div style="display: {shown_as}">{pieces}</div>').render().pages
    assert room_below(first) == pytest.approx(0.9) and room_below(last) < 0.5


def test_a_header_cell_of_a_tagged_pdf_says_what_it_heads() -> None:
    told = []

    def finish(document: Document, _: PDF) -> None:
        for box in (box for page in document.pages for box in boxes_of(page) if box.element_tag == "th"):
            set_scope(box, "Row" if box.element.get("scope") == "row" else "Column")
            if hasattr(box, "mark"):
                told.append(box.mark["A"]["Scope"])

    pdf = HTML(string=TABLE).write_pdf(pdf_variant="pdf/ua-1", finisher=finish, uncompressed_pdf=True)
    assert told == ["/Column", "/Column", "/Row"], "the library no longer writes down what a box became in the tags"
    assert pdf.count(b"/Scope /Column") == 2 and pdf.count(b"/Scope /Row") == 1


def test_a_box_without_tags_is_left_alone() -> None:
    (page,) = HTML(string=TABLE).render().pages
    for box in boxes_of(page):
        set_scope(box, "Row")
        assert getattr(box, "mark", None) is None


def test_no_word_stands_on_a_line_by_itself_before_a_number_that_does_not_fit() -> None:
    """As CSS Text 3 has it, section 4.1.3: spaces at the end of a line hang, and make no line too long."""
    break_lines()
    style = "@page {{ size: {}px 99px; margin: 0 }} body, p {{ margin: 0; font: 16px monospace }}"
    for width in range(300, 420):
        html = f"<style>{style.format(width)}</style><p>One scent goes into all of it, at most <b>0.71\u00a0g</b>.</p>"
        (page,) = HTML(string=html).render().pages
        texts = [box for box in boxes_of(page) if type(box).__name__ == "TextBox"]
        assert " " in texts[0].text, width


class Reads:
    """A style that notes what is read of it."""

    def __init__(self, style: Any) -> None:
        self.style, self.font_config, self.read = style, style.font_config, set[str]()

    def __getitem__(self, name: str) -> Any:
        self.read.add(name)
        return self.style[name]


OF_TEXT = ("hyphens: auto", "overflow-wrap: anywhere", "white-space: pre; tab-size: 4", "text-decoration: underline", "word-spacing: 3px")
TEXTS = ("Weigh unscented melt-and-pour soap.", "a\tb\tc", "un\u00adscented ", "Weigh")
WIDTHS = (None, 5.0, 60.0, 4000.0)


def style_of_text(of_text: str) -> Any:
    (page,) = HTML(string=f'<html lang="en"><p style="{of_text}">Weigh.</html>').render().pages
    return next(box.style for box in boxes_of(page) if type(box).__name__ == "TextBox")


@pytest.mark.parametrize("of_text", OF_TEXT)
def test_all_that_the_break_of_a_line_reads_of_a_style_tells_one_text_from_another(of_text: str) -> None:
    reads = Reads(style_of_text(of_text))
    for text, width in product(TEXTS, WIDTHS):
        line_break.split_first_line(text, reads, SimpleNamespace(dictionaries={}), width, 0)
    assert "font_size" in reads.read <= {*TEXT_STYLE, "white_space"}


@pytest.mark.parametrize("of_text", OF_TEXT)
def test_a_text_that_was_broken_before_is_broken_as_the_library_does_it(of_text: str) -> None:
    break_lines()
    style, context = style_of_text(of_text), SimpleNamespace(dictionaries={})
    for text, width, minimum in product(TEXTS, WIDTHS, (True, False)):
        first, second = (preferred.split_first_line(text, style, context, width, 0, minimum=minimum) for _ in range(2))
        by_library = line_break.split_first_line(text, style, context, width, 0, minimum=minimum)
        assert first[1:] == second[1:] == by_library[1:] and first[0].text == second[0].text == by_library[0].text
        assert first[0] is not second[0], "who draws the one writes on the other"


def test_no_more_texts_are_remembered_than_there_is_room_for(monkeypatch: pytest.MonkeyPatch) -> None:
    asked = []

    def split(text: str, *_: Any) -> Any:
        asked.append(text)
        return SimpleNamespace(text=text), len(text)

    monkeypatch.setattr(private_names, "LINES_KEPT", 2)
    once = private_names.remembering(split)
    style = style_of_text("")
    for text in "ababccaa":
        assert once(text, style, None, 10.0)[0].text == text
    assert asked == ["a", "b", "c", "a"]


def test_each_element_of_the_tags_knows_what_it_was_made_of() -> None:
    note_what_tags_are_made_of()
    told: dict[str, str] = {}

    def finish(_: Document, pdf: PDF) -> None:
        for one in (each for each in pdf.objects if made_of(each) is not None):
            told.setdefault(one["S"], made_of(one).tag)

    HTML(string=TABLE).write_pdf(pdf_variant="pdf/ua-1", finisher=finish)
    assert told == {"/H1": "h1", "/P": "p", "/Table": "table", "/TBody": "tbody", "/TR": "tr", "/TH": "th", "/TD": "td"}


@pytest.mark.parametrize("name", ["split_first_line", "_page_box", "_build_box_tree", ".mark[", '"mark"'])
def test_no_other_module_writes_them(name: str) -> None:
    modules = sorted(Path(press.__file__).parent.rglob("*.py"))
    found = {module.name for module in modules if name in module.read_text(encoding="utf-8")}
    assert found <= {"private_names.py"}
