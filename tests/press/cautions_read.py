"""A pressed sheet read in the order of its words: on which page each step stands, and which of its cautions stand before it there."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import accumulate

import pypdfium2
from bs4 import BeautifulSoup, Tag


@dataclass(frozen=True)
class StepRead:
    """A step by its first words, its page, what its head of that page says, and the cautions of its part before it that the page lacks.

    `first` are those of these of which it is the first step.
    """

    words: str
    page: int
    head: str
    lacks: frozenset[str]
    first: frozenset[str]


def squeezed(text: str) -> str:
    return re.sub(r"\s+", "", text)


def texts_of_pages(pdf: bytes) -> list[str]:
    """Return the signs of each page in the order in which they were set, so that columns beside each other do not mix."""
    opened = pypdfium2.PdfDocument(pdf)
    try:
        return ["".join(text for text, _ in _signs(page)) for page in opened]
    finally:
        opened.close()


def steps_read(pdf: bytes, html: str, head: float) -> list[StepRead]:
    """Return the steps of a sheet; what stands above `head`, in points, is the head of its page."""
    opened = pypdfium2.PdfDocument(pdf)
    try:
        texts = [list(_signs(page)) for page in opened]
    finally:
        opened.close()
    pages = ["".join(text for text, top in page if top >= head) for page in texts]
    heads = ["".join(text for text, top in page if top < head) for page in texts]
    whole, begins = "".join(pages), [0, *accumulate(map(len, pages))]
    found, at = [], 0
    for part in BeautifulSoup(html, "html.parser").select("section.part"):
        names: list[str] = []
        new: list[str] = []
        for one in part.select(".caution .signal, .steps li"):
            if one.name != "li":
                new.append(squeezed(own_words(one)).rstrip("."))
                continue
            words = squeezed(told_words(one))[:24]
            at = whole.index(words, at)
            page = max(number for number, begin in enumerate(begins) if begin <= at)
            above = whole[begins[page] : at]
            names += [name for name in new if name not in names]
            lacks = frozenset(name for name in names if name not in above)
            found.append(StepRead(words, page + 1, heads[page], lacks, frozenset(new)))
            new = []
    return found


def _signs(page: pypdfium2.PdfPage) -> Iterator[tuple[str, float]]:
    """Yield each sign of a page in the order in which they were set, and how far below the upper edge its ink begins, in points."""
    text, height = page.get_textpage(), page.get_height()
    for number in range(text.count_chars()):
        sign = chr(pypdfium2.raw.FPDFText_GetUnicode(text, number)).replace("\x02", "-")  # It calls a hyphen at the end of a line so.
        if sign.strip():
            yield sign, height - text.get_charbox(number)[3]


def own_words(signal: Tag) -> str:
    """Return the name of a caution without its signal word."""
    return "".join(signal.find_all(string=True, recursive=False))


def told_words(step: Tag) -> str:
    return "".join(text for text in step.find_all(string=True) if not text.find_parent("figure"))
