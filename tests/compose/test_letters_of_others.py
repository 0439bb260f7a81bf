"""The letters on a take-home sheet have no gap that nobody explains: what is not on it is named, with the recipe that it is for."""

import re
from functools import cache
from string import ascii_uppercase

from builder.model.document import Document
from tests.composing import of_example
from tests.page_text import tree_of


@cache
def sheets() -> list[Document]:
    return [one for one in of_example("take-home sheet") if "large-print" not in one.path]


def spelled_out(said: str) -> set[str]:
    """Return the letters that "B", "A and B" or "B to H" stand for."""
    if run := re.fullmatch(r"([A-Z]) to ([A-Z])", said):
        return set(ascii_uppercase[ascii_uppercase.index(run[1]) : ascii_uppercase.index(run[2]) + 1])
    return set(re.findall(r"\b[A-Z]\b", said))


def test_every_letter_up_to_the_last_is_on_the_sheet_or_named() -> None:
    assert len(sheets()) > 15
    for sheet in sheets():
        letters_are_on_it_or_named(sheet)


def letters_are_on_it_or_named(sheet: Document) -> None:
    soup = tree_of(sheet.html)
    own = {mark.get_text() for mark in soup.select(".part-letter")}
    named: set[str] = set()
    for line in soup.select(".letters"):
        said = re.fullmatch(r"Not on this sheet: parts? (.+), for (.+)\.", line.get_text())
        assert said and said[2].lower() not in str(soup.h1).lower(), sheet.path
        assert not named & spelled_out(said[1]), sheet.path
        named |= spelled_out(said[1])
    assert own and not own & named, sheet.path
    assert sorted(own | named) == list(ascii_uppercase[: len(own | named)]), sheet.path


def test_some_sheets_name_others_and_most_have_nothing_to_name() -> None:
    with_others = [one.path for one in sheets() if 'class="letters"' in one.html]
    assert 0 < len(with_others) < len(sheets())
    assert any("Not on this sheet: parts E to L, for meadow lotion." in one.html for one in sheets())
