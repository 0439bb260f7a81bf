"""The studio's own look: colours that can be read by day and by night whatever is asked for, its logo, its menu."""

import re
from pathlib import Path

import pytest
from bs4 import BeautifulSoup
from hypothesis import given
from hypothesis import strategies as st

from builder import pipeline
from builder.compose.look import title_css
from builder.guide import files_of
from builder.guide.making import DAY
from builder.library import LAYOUTS
from builder.model.own_document import Look
from builder.press.new_files import write_new_files
from builder.reference import find_page
from builder.reference.layouts import layout_rows, token_rows
from builder.rules.look.colours import HIGH, LEAST, contrast, lowest_contrast
from builder.rules.look.palette import INK, NIGHT_INK, WHITE, palette
from builder.words.say import speaking
from tests.guide.doing import text_of
from tests.making import sure

colours = st.integers(0, 0xFFFFFF).map(lambda number: f"#{number:06x}")
LOGO = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 40"><circle cx="20" cy="20" r="19" fill="#7a3b69"/></svg>'
LOOK = 'look: {accent: "#7a3b69", paper: "#fbf3e6", logo: logo.svg, menu: [visit, dates]}\n'


@pytest.mark.parametrize(
    ("one", "other", "ratio"),
    [("#000000", "#ffffff", 21.0), ("#ffffff", "#ffffff", 1.0), ("#767676", "#ffffff", 4.54), ("#ff0000", "#ffffff", 4.0)],
)
def test_contrast_is_that_of_wcag(one: str, other: str, ratio: float) -> None:
    """Black on white is 21 to 1 by the definition of WCAG 2.2; #767676 on white has 4.54, pure red 4.0 (from memory)."""
    assert contrast(one, other) == pytest.approx(ratio, abs=0.005) and contrast(one, other) == contrast(other, one)


@given(colours, colours)
def test_whatever_is_asked_for_can_be_read(accent: str, paper: str) -> None:
    """WCAG 2.2, criteria 1.4.3 (text, 4.5 to 1) and 1.4.11 (lines that bound what is used, 3 to 1)."""
    made = palette(Look(accent=accent, paper=paper))
    by_day = (made.day["paper"], WHITE, made.day["pale"])
    by_night = (made.night["paper"], made.night["sheet"], made.night["pale"])
    assert lowest_contrast(made.day["accent"], by_day) >= LEAST and contrast(made.day["on-accent"], made.day["accent"]) >= LEAST
    assert lowest_contrast(made.night["accent"], by_night) >= HIGH and contrast(made.night["on-accent"], made.night["accent"]) >= HIGH
    assert contrast(INK, made.day["paper"]) >= HIGH and lowest_contrast(INK, by_day) >= LEAST
    assert lowest_contrast(NIGHT_INK, by_night) >= HIGH
    assert contrast(made.day["strong-line"], made.day["paper"]) >= 3 and contrast(made.night["strong-line"], made.night["sheet"]) >= 3


def test_a_colour_that_can_be_read_stays_as_it_is_written() -> None:
    assert palette(Look(accent="#7a3b69", paper="#fbf3e6")).day["accent"] == "#7a3b69"
    assert palette(Look()).day == {}


def test_titles_in_a_font_of_its_own_name_no_token_that_the_styles_lack() -> None:
    """A declaration with a variable that stands nowhere is invalid, and all of it falls away (CSS Custom Properties 1, section 3.1)."""
    named = set(re.findall(r"var\((--[a-z-]+)", title_css("our.ttf")))
    assert named
    for style in ("tokens.css", "paper.css"):
        told = (LAYOUTS / "styles" / style).read_text(encoding="utf-8")
        assert named <= set(re.findall(r"^\s*(--[a-z-]+):", told, re.MULTILINE))


def test_pages_and_sheets_show_it(tmp_path: Path) -> None:
    files = dict(files_of(text_of("walk")))
    write_new_files(tmp_path, files | {"studio.yaml": files["studio.yaml"] + LOOK, "logo.svg": LOGO})
    outcome, listed = pipeline.preview(tmp_path, on=DAY)
    assert outcome.findings == ()
    with speaking(sure(outcome.studio).speaks.messages):
        html = {path: sure(sure(listed).entries[path].make()).html for path in PATHS}
    page = BeautifulSoup(html["site/classes/your-first-scrub.html"], "html.parser")
    assert "--accent:#7a3b69" in sure(page.find("style")).get_text() and "prefers-color-scheme:dark" in sure(page.find("style")).get_text()
    assert [link.get_text() for link in page.select(".menu a")] == ["Visit", "Dates"]
    address = str(sure(page.select_one(".studio img.logo"))["src"])
    assert f"site/{address.removeprefix('../')}" in sure(listed).files
    assert "--accent:#7a3b69" in html["site/404.html"]
    assert 'src="logo.svg" alt="The Drying Loft"' in html["print/your-first-scrub/take-home-garden-scrub--2-containers.pdf"]


PATHS = (
    "site/classes/your-first-scrub.html",
    "site/404.html",
    "print/your-first-scrub/take-home-garden-scrub--2-containers.pdf",
)


def test_a_block_a_token_and_a_rule_for_paper_are_said_otherwise_alone(tmp_path: Path) -> None:
    own = {
        "layouts/pages/class.html": '{% extends "ours/pages/class.html" %}{% block before %}<p>Come early.</p>{{ super() }}{% endblock %}',
        "layouts/styles/own.css": ":root { --go: #ffb0a0; }",
        "layouts/styles/own-paper.css": "h1 { letter-spacing: 1pt }",
    }
    write_new_files(tmp_path, {**files_of(text_of("walk")), **own})
    outcome, listed = pipeline.preview(tmp_path, on=DAY)
    assert outcome.findings == ()
    with speaking(sure(outcome.studio).speaks.messages):
        page, _, sheet = (sure(sure(listed).entries[path].make()) for path in PATHS)
        labels = sure(sure(listed).entries["print/your-first-scrub/2030-05-04/labels-garden-scrub.pdf"].make())
    read = BeautifulSoup(page.html, "html.parser")
    assert "Come early.Before you comeWear or bring:" in "".join(read.get_text().split("\n"))
    assert "--go: #ffb0a0" in sure(read.find("style")).get_text()
    assert sheet.styles[-1] == "own-paper.css" and "own-paper.css" not in labels.styles


def test_what_ours_says_may_be_added_to(tmp_path: Path) -> None:
    """The twin of `template-drops-safety`: a template that shows all of ours, and more."""
    own = '{% include "ours/parts/take-home.html" %}<p>Ring us when in doubt.</p>'
    write_new_files(tmp_path, {**files_of(text_of("walk")), "layouts/parts/take-home.html": own})
    assert pipeline.check(tmp_path, on=DAY).findings == ()


def test_each_template_and_token_is_listed_and_shown_as_it_ships() -> None:
    rows = {row[0]: row for row in layout_rows()}
    assert {f"layouts/{path.relative_to(LAYOUTS).as_posix()}" for path in LAYOUTS.rglob("*.html")} <= set(rows)
    assert rows["layouts/pages/class.html"][1].split(", ")[:2] == ["main", "opening"]
    assert (LAYOUTS / "parts" / "sender.html").read_text(encoding="utf-8").rstrip("\n") in sure(find_page("layouts/parts/sender.html")).text
    assert find_page("layouts/../content/constants.yaml") is None
    assert ("--accent", "#0b5160", "#9adbe6") in set(token_rows())
