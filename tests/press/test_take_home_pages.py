"""Take-home sheets of the example, pressed: pages, type, lines, ticks, sums, and each caution on the page of its step.

Bounds are those of public practice, from memory: 14 pt and 18 pt, at most 75 letters to a line (at 14 pt 72), nothing under 10 pt but
numbers in drawings (guidance on accessible print of the government of the United Kingdom; large print as usual in the United States); a
caution on the page of its step (principle of ANSI Z535.6).
"""

import io
import re
from collections import Counter
from collections.abc import Iterator
from datetime import date
from decimal import Decimal
from functools import cache
from itertools import groupby, zip_longest
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import page
import pdfplumber
import pytest
from bs4 import BeautifulSoup
from pdfplumber.pdf import PDF

from builder.fonts.files import only_our_fonts
from builder.library import LAYOUTS
from builder.model.document import Document, Folder
from builder.press.pool import presses
from tests.composing import styles
from tests.making import sure
from tests.page_text import tree_of
from tests.press.cautions_read import squeezed, texts_of_pages
from tests.published import EXAMPLE, composed_for, sheets_of

DAY = date(2027, 1, 2)
SOAP, SALTS, TEA = "kitchen-garden-bar--1-kg-of-oils", "still-water-bath-salts--2-containers", "hedgerow-bath-tea--5-containers"
LAB, LIQUID = "green-lab-bar--500-g-of-oils", "pump-side-hand-soap--500-g-of-oils"
BAR, JUG = "window-bar--500-g", "gallon-jug-lotion--4-containers"
LOTION, CREAM, BALM, SCRUB = "meadow-lotion--500-g", "winter-hand-cream--500-g", "mint-tin-lip-balm--200-g", "orchard-sugar-scrub--2"
LYE = (SOAP, LAB, LIQUID)
WITHOUT_LYE = (SALTS, TEA, BAR, JUG, LOTION, CREAM, BALM, SCRUB)
OTHER_SIZES = ("kitchen-garden-bar--500-g-of-oils", "green-lab-bar--1-kg-of-oils", "pump-side-hand-soap--300-g-of-oils")
FOOT_OF_LYE = (
    "Lye: brush off if dry, wet clothes off. Eyes: lids open.",
    "Running water at once, at least 20 minutes, until help takes over. Swallowed: no vomiting.",
)
PAGES = {**dict.fromkeys(LYE, 6), **dict.fromkeys(WITHOUT_LYE, 4)}
# By default pages are read of one with cautions that is short, and published in any run.
READ = [JUG, *(pytest.param(name, marks=pytest.mark.long) for name in PAGES if name != JUG)]
HOME, LARGE = "take-home sheet", "take-home sheet in large print"
IN_BOTH_SIZES = [
    pytest.param(kind, name, marks=() if (kind, name) == (HOME, JUG) else pytest.mark.long) for kind in (HOME, LARGE) for name in PAGES
]
TYPE = {HOME: (14, 20), LARGE: (18, 25.4)}  # Points of the type, and millimetres of the margin.
NAME_OF_STEP = re.compile(r"^[A-Z]\d+ ?")
COLUMN = 9  # Points between two columns at the least.
FOOT = 40  # Points from the lower edge, beneath which the title and the page stand.
LARGE_FOOT = 54  # In large print.


def sheet_of(kind: str, name: str) -> Path:
    (sheet,) = sheets_of(kind, (name,))
    return sheet


@cache
def pressed(kind: str, name: str) -> bytes:
    """Return a sheet as it was published, and one that was not as it is pressed."""
    sheet = sheet_of(kind, name)
    if sheet.exists():
        return sheet.read_bytes()
    document = Document(Folder.PRINT, sheet.name, composed_for(sheet).read_text(encoding="utf-8"), styles(kind))
    with TemporaryDirectory() as folder, only_our_fonts(Path(folder)), presses(EXAMPLE, (LAYOUTS,)) as ready:
        ((_, made),) = ready.press([document])
    assert made.warnings == ()
    return made.pdf


@cache
def read(name: str, kind: str = HOME) -> PDF:
    """Return a sheet as it was pressed, read back once for all that is asked of it."""
    return pdfplumber.open(io.BytesIO(pressed(kind, name)))


def html(name: str) -> BeautifulSoup:
    return tree_of(composed_for(sheet_of(HOME, name)).read_text(encoding="utf-8"))


def columns(line: list[dict[str, Any]]) -> Iterator[str]:
    """Divide what stands at one height into the lines of its columns: what is further apart than a space is wide."""
    text = ""
    for one, after in zip_longest(line, line[1:]):
        text += one["text"]
        gap = after["x0"] - one["x1"] if after else 0
        text += " " if 2 < gap <= COLUMN else ""
        if after is None or gap > COLUMN:
            yield text
            text = ""


@pytest.mark.parametrize("name", READ)
def test_it_has_few_pages_and_none_with_a_few_lines_alone(name: str) -> None:
    pdf = read(name)
    assert len(pdf.pages) <= PAGES[name]
    for one in pdf.pages:
        lines = one.crop((0, 0, one.width, one.height - FOOT)).extract_text_lines()
        assert len(lines) >= 5, f"{len(lines)} lines on page {one.page_number}"


@pytest.mark.long
@pytest.mark.parametrize("paper", ["letter", "a4"])
@pytest.mark.parametrize("name", [*LYE, *OTHER_SIZES])
def test_with_lye_it_has_six_pages_in_every_size_on_either_paper(name: str, paper: str) -> None:
    text = composed_for(sheet_of(HOME, name)).read_text(encoding="utf-8").replace('class="letter', f'class="{paper}', 1)
    with TemporaryDirectory() as folder, only_our_fonts(Path(folder)), presses(EXAMPLE, (LAYOUTS,)) as ready:
        ((_, made),) = ready.press([Document(Folder.PRINT, "sheet.pdf", text, styles(HOME))])
    assert made.pages == 6


@pytest.mark.parametrize(("kind", "name"), IN_BOTH_SIZES)
def test_type_is_large_enough_and_lines_are_short_enough(kind: str, name: str) -> None:
    pdf, (size, margin) = read(name, kind), TYPE[kind]
    chars = [char for one in pdf.pages for char in one.chars if char["text"].strip()]
    small = "".join(char["text"] for char in chars if char["size"] < 9.9)
    assert re.fullmatch(r"[\d.g]*", small), small  # Numbers in drawings alone: of the bench's legend, and on a scale.
    assert Counter(round(char["size"]) for char in chars).most_common(1)[0][0] == size
    assert min(char["x0"] for char in chars) >= margin / 25.4 * 72 - 1
    lines = [line["chars"] for one in pdf.pages for line in one.extract_text_lines() if round(line["chars"][0]["size"]) == size]
    assert max(len(NAME_OF_STEP.sub("", one)) for line in lines for one in columns(line)) <= (72 if size == 14 else 75)


@pytest.mark.parametrize(("kind", "name"), IN_BOTH_SIZES)
def test_no_letter_stands_where_a_printer_on_a_desk_prints_none(kind: str, name: str) -> None:
    """A sixth of an inch, 4.2 mm, on every side (common practice of laser printers, from memory; no source)."""
    for one in read(name, kind).pages:
        tops, bottoms = zip(*((char["top"], char["bottom"]) for char in one.chars if char["text"].strip()), strict=True)
        assert min(tops) >= 12
        assert max(bottoms) <= one.height - 12


@pytest.mark.long
def test_a_page_onto_which_a_part_runs_names_it_at_its_head() -> None:
    heads = [one.extract_text_lines()[0]["text"] for one in read(JUG).pages]
    assert heads[0].startswith("Wrenlow")
    assert heads[1:] == ["B Clean hands, clean bottle goes on.", "E Shimmer and stir goes on."]
    whole = [one.extract_text_lines()[0]["text"] for one in read(LOTION).pages[1:]]
    assert [text.partition(" About")[0] for text in whole] == ["E Clean hands, clean tools", "H Blend", "K Your own bottle"]
    of_lab = [one.extract_text_lines()[0]["text"] for one in read(LAB).pages]
    run_on = [text for text in of_lab if text.endswith("goes on.")]
    assert run_on == ["C Weigh and melt the oils goes on."]


@pytest.mark.long
@pytest.mark.parametrize("name", [TEA, JUG])
def test_in_large_print_all_text_is_large_but_that_of_drawings_and_margins(name: str) -> None:
    for one in read(name, LARGE).pages:
        lines = one.crop((0, 1.5 * FOOT, one.width, one.height - LARGE_FOOT)).extract_text_lines()
        small = [line["text"] for line in lines if max(round(char["size"]) for char in line["chars"]) < TYPE[LARGE][0]]
        assert all(re.fullmatch(r"[\d.g ]*", text) for text in small), small


@pytest.mark.long
@pytest.mark.parametrize(("kind", "least"), [(HOME, 9), (LARGE, 13.5)])
def test_the_numbers_on_the_bench_are_large_enough_to_find_from_the_legend(kind: str, least: float) -> None:
    """Two thirds of the type, and three quarters of it in large print, in white on black."""
    (bench,) = (one for one in read(SOAP, kind).pages if "sink, a few steps away" in one.extract_text())
    sizes = [char["size"] for char in bench.chars if char["text"] in "12345678" and char["non_stroking_color"] in [(1, 1, 1), (1,)]]
    assert len(sizes) == 8 and min(sizes) >= least


@pytest.mark.long
@pytest.mark.parametrize("name", [SOAP, LAB])
def test_the_bench_and_all_of_the_setting_up_stand_on_one_page_which_hangs_on_the_wall(name: str) -> None:
    text = read(name).pages[1].extract_text()
    last = text.index("A11 Line the mold, and set out all that you will need.")
    assert text.index("sink, a few steps away") < text.index("A1 Choose a bench") < last


@pytest.mark.parametrize("name", PAGES)
def test_every_step_has_its_tick_and_its_name(name: str) -> None:
    steps = html(name).select(".steps li")
    names = [sure(step.select_one(".step")).get_text() for step in steps]
    assert steps and all(len(step.select(".tick")) == 1 for step in steps)
    assert names == list(dict.fromkeys(names))
    assert all(re.fullmatch(r"[A-Z]\d+", one) for one in names)
    sections = [[one.get_text() for one in part.select(".step")] for part in html(name).select("section.part")]
    assert [one for section in sections for one in section] == names
    # A part that no page holds is in pieces, which are counted on.
    for letter, part in groupby(names, key=lambda one: one[0]):
        mine = list(part)
        assert mine == [f"{letter}{number}" for number in range(1, len(mine) + 1)]


@pytest.mark.parametrize("name", READ)
def test_a_caution_stands_on_the_page_of_its_step(name: str) -> None:
    pages = texts_of_pages(pressed(HOME, name))
    cautions = html(name).select("section.part .caution")
    assert cautions
    for caution in cautions:
        step = sure(caution.find_next(class_="step")).find_parent("li")
        first = squeezed("".join(one for one in sure(step).find_all(string=True) if not one.find_parent("figure")))[:25]
        for signal in caution.select(".signal"):
            name = squeezed("".join(signal.find_all(string=True, recursive=False)))
            assert any(first in text and name in text[: text.index(first)] for text in pages), (name, first)


@pytest.mark.long
@pytest.mark.parametrize("kind", [HOME, LARGE])
@pytest.mark.parametrize("name", [LOTION, CREAM])
def test_first_aid_that_a_caution_leaves_to_the_one_above_it_stands_on_its_page(name: str, kind: str) -> None:
    leaning = [one for one in html(name).select("section.part .caution") if not one.select(".happens")]
    assert leaning
    for caution in leaning:
        above = sure(caution.find_previous_sibling(class_="caution"))
        both = [squeezed(sure(one.select_one(place)).get_text()) for one, place in ((above, ".happens"), (caution, ".says"))]
        assert any(all(text in page_text for text in both) for page_text in texts_of_pages(pressed(kind, name)))


@pytest.mark.parametrize("name", PAGES)
def test_numbers_to_call_stand_in_every_part_with_a_caution(name: str) -> None:
    for part in html(name).select("section.part"):
        assert bool(part.select(".calls")) == bool(part.select(".caution"))
        assert not part.select(".calls") or "911" in sure(part.select_one(".calls")).get_text()


@pytest.mark.parametrize("name", [SOAP, LOTION, *(pytest.param(one, marks=pytest.mark.long) for one in PAGES if one not in (SOAP, LOTION))])
def test_on_a4_it_takes_no_more_pages_and_what_a_caution_says_stands_beside_what_it_is_about(name: str) -> None:
    text = composed_for(sheet_of(HOME, name)).read_text(encoding="utf-8").replace('class="letter', 'class="a4', 1)
    with TemporaryDirectory() as folder, only_our_fonts(Path(folder)), presses(EXAMPLE, (LAYOUTS,)) as ready:
        ((_, made),) = ready.press([Document(Folder.PRINT, "a4.pdf", text, styles(HOME))])
    assert made.pages <= PAGES[name]
    with pdfplumber.open(io.BytesIO(made.pdf)) as pdf:
        assert [round(length / 72 * 25.4) for length in (pdf.pages[0].width, pdf.pages[0].height)] == [210, 297]
        lines = [line["text"] for one in pdf.pages[1:] for line in one.extract_text_lines()]
    signals = [line for line in lines if re.match("(DANGER|WARNING|CAUTION) ?", line)]
    assert signals and not [line for line in signals if len(line.split()) < 4]


@pytest.mark.parametrize("name", [JUG, *(pytest.param(name, marks=pytest.mark.long) for name in (*LYE, BAR))])
def test_the_foot_of_each_page_says_whom_to_call_and_with_lye_all_that_its_cautions_leave_to_it(name: str) -> None:
    """Dry lye off first, clothing off, lids open, running water for 20 minutes and until help takes over, and no vomiting.

    New Jersey's fact sheet on sodium hydroxide, Public Health England 2015 and NIOSH 2007-107, as the caution on lye says whole.
    """
    says = FOOT_OF_LYE if name in LYE else ("Local rules and the safety data sheet come first.",)
    for one in read(name).pages:
        foot = one.crop((0, one.height - FOOT, one.width, one.height)).extract_text()
        assert "Emergency: 911" in foot and all(words in foot for words in says), foot


@pytest.mark.parametrize("name", [TEA, pytest.param(LAB, marks=pytest.mark.long)])
def test_in_large_print_the_foot_of_each_page_says_whom_to_call_in_large_type(name: str) -> None:
    for one in read(name, LARGE).pages:
        foot = one.crop((0, one.height - LARGE_FOOT, one.width, one.height))
        assert foot.extract_text().startswith("Emergency: 911 · Poison center: 1-800-222-1222")
        assert min(char["size"] for char in foot.chars) >= 15.9


@pytest.mark.parametrize("name", LYE)
def test_first_aid_is_left_to_the_foot_only_where_the_foot_and_the_page_on_first_aid_say_it(name: str) -> None:
    """On paper each sentence that is not shown beside its danger is one of these, whose words the foot has on the same page."""
    at_foot = {
        "Dry lye: brush off first.",
        "On skin: clothing off, running water at once, at least 20 minutes.",
        "In eyes: rinse, lids open, at least 20 minutes and until help takes over.",
        "Swallowed: no vomiting; call the poison center.",
    }
    first_aid = sure(html(name).select_one(".first-aid")).get_text(" ")
    for words in ("dry lye", "clothing", "running water", "lids open", "until help takes over", "no vomiting", "poison center"):
        assert words in first_aid
    hidden = html(name).select("section.part .happens.at-foot, section.part .happens .at-foot")
    assert hidden
    for text in (" ".join(one.get_text(" ").split()) for one in hidden):
        for sentence in at_foot:
            text = text.replace(sentence, "")
        assert text.removeprefix("If it happens.").strip() == "", text


@pytest.mark.parametrize("name", PAGES)
def test_sums_of_the_table_add_up_and_each_weighing_has_its_field(name: str) -> None:
    table = html(name).select_one("table.home")
    assert all(row.select("td.field") for row in sure(table).select("tbody tr"))
    whole = [Decimal(0), Decimal(0)]
    for group in sure(table).select("tbody"):
        rows = [[Decimal(cell.get_text().split("\xa0")[0]) for cell in row.select(".weight")] for row in group.select("tr")]
        rows_have_sum = group.select("tr")[-1].get("class") is not None
        if "in-all" in (group.select("tr")[-1].get("class") or ()):
            assert rows[-1] == whole
            continue
        single = rows[:-1] if rows_have_sum else rows
        sums = [sum(column) for column in zip(*single, strict=True)]
        assert not rows_have_sum or rows[-1] == sums
        whole = [one + more for one, more in zip(whole, sums, strict=True)]


def test_first_aid_and_the_bench_stand_before_the_first_step_that_handles_lye() -> None:
    text = html(SOAP).get_text(" ")
    before = text[: text.index("of sodium hydroxide into the cup")]
    for said in ("On skin", "In eyes", "Swallowed", "Breathed in", "Your bench from above", "1-800-222-1222"):
        assert said in before
    assert not html(SALTS).select(".before-lye")


def test_the_table_is_in_the_order_of_the_steps() -> None:
    names = [row.get_text() for row in html(SOAP).select("table.home tbody th")]
    assert names[:5] == ["Water for the lye", "Sodium hydroxide", "Lye together", "Coconut oil", "Cocoa butter"]


@pytest.mark.parametrize(("kind", "name"), IN_BOTH_SIZES)
def test_it_passes_the_rules_of_pdf_ua(kind: str, name: str) -> None:
    report = page.validate_pdf_bytes(pressed(kind, name), profile="ua1")
    assert report.is_compliant, report.failures
