"""The order in which a reader of screens says a sheet: in the tags of the PDF each caution comes before the steps that it is about.

PDF 1.7 (ISO 32000-1), 14.7 and 14.8, from memory: the order of reading is that of the structure tree. Read with `pdfplumber`.
"""

import io
from collections.abc import Iterator
from typing import Any

import pdfplumber
import pytest
from bs4 import BeautifulSoup

from tests.press.cautions_read import own_words, squeezed, told_words
from tests.press.test_cautions_on_their_page import html_of, pressed
from tests.published import sheets_of

# By default small ones.
READ = [
    ("steps at the bench", "salts-and-scrub-party/2027-01-16"),
    ("take-home sheet", "gallon-jug-lotion--4-containers"),
    *(
        pytest.param(*one, marks=pytest.mark.long)
        for one in (
            ("take-home sheet", "kitchen-garden-bar--1-kg-of-oils"),
            ("take-home sheet in large print", "mint-tin-lip-balm--200-g"),
            ("teacher's sheet", "melt-and-pour-soap/2027-01-23"),
            ("steps at the bench", "soap-lab-in-pairs/2027-02-13"),
        )
    ),
]


def leaves(tree: list[dict[str, Any]], page: int = 0) -> Iterator[tuple[int, int]]:
    """Yield page and number of each piece of content, in the order of the tags, without what is drawn."""
    for one in tree:
        here = one.get("page_number") or page
        if one["type"] == "Figure":
            continue
        yield from ((here, mcid) for mcid in one.get("mcids", ()))
        yield from leaves(one.get("children", []), here)


def said(pdf: bytes) -> str:
    """Return the text of a sheet in the order of its tags."""
    with pdfplumber.open(io.BytesIO(pdf)) as opened:
        pieces: dict[tuple[int, int], str] = {}
        for page in opened.pages:
            for char in page.chars:
                at = (page.page_number, char["mcid"])
                pieces[at] = pieces.get(at, "") + char["text"]
        return squeezed("".join(pieces.get(leaf, "") for leaf in leaves(opened.structure_tree)))


@pytest.mark.parametrize(("kind", "part"), READ)
def test_in_the_tags_each_caution_comes_before_its_steps(kind: str, part: str) -> None:
    (sheet,) = sheets_of(kind, (part,))
    html = html_of(sheet)
    text = said(sheet.read_bytes() if sheet.exists() else pressed(kind, html))
    at, cautions, steps = 0, 0, 0
    # In the order of the page, each after the one before: so a caution comes before the steps that follow it there. What is said before
    # several parts is not printed again.
    for one in BeautifulSoup(html, "html.parser").select(".caution:not(.is-said) .signal, section.part .steps li"):
        words = squeezed(told_words(one))[:24] if one.name == "li" else squeezed(own_words(one)).rstrip(".")
        found = text.find(words, at)
        assert found >= 0, f"not after what comes before it: {words}"
        at = found + len(words)
        steps, cautions = steps + (one.name == "li"), cautions + (one.name != "li")
    assert steps > 4 and cautions > 1
