"""How long what is hot takes to cool is said on a take-home sheet where one waits for it, and in the times on its first page."""

from functools import cache

import pytest
from bs4 import BeautifulSoup, Tag

from tests.composing import of_example
from tests.making import sure
from tests.page_text import tree_of


@cache
def sheet(name: str) -> BeautifulSoup:
    return tree_of(next(one.html for one in of_example("take-home sheet") if name in one.path))


def said(soup: BeautifulSoup, begins: str = "Lye takes") -> Tag:
    (only,) = (one for one in soup.select("section.part p") if one.get_text().startswith(begins) and "perhaps a tenth" in one.get_text())
    return only


@pytest.mark.parametrize("name", ["meadow-lotion--500-g", "meadow-lotion--1-kg", "winter-hand-cream--500-g"])
def test_a_batch_cools_before_the_step_that_waits_for_it(name: str) -> None:
    line = said(sheet(name), "To cool: from")
    (step,) = sure(line.find_next_sibling("ol")).select("li")
    assert "until it is below 104\u00a0°F (40\u00a0°C)" in step.get_text() or "until it is below 104 °F (40 °C)" in step.get_text()
    assert "of the preservative" not in " ".join(one.get_text() for one in line.find_all_previous("li"))
    assert "Until the batch has cooled: from" in sure(sheet(name).select_one(".fills")).get_text()


@pytest.mark.parametrize("name", ["green-lab-bar--500-g", "kitchen-garden-bar--1-kg", "pump-side-hand-soap--300-g"])
def test_lye_cools_after_the_steps_that_make_it(name: str) -> None:
    line = said(sheet(name))
    part = sure(line.find_parent(class_="part"))
    assert "Make the lye" in sure(part.h2).get_text()
    last = part.select(".step")[-1]
    assert "Let it cool" in sure(last.parent).get_text() and last in line.find_all_previous("b")
    assert "Until the lye has cooled:" in sure(sheet(name).select_one(".fills")).get_text()


def test_what_is_not_hot_has_nothing_to_wait_for() -> None:
    for name in ("still-water-bath-salts--2", "mint-tin-lip-balm", "window-bar--500"):
        assert "cooled" not in sure(sheet(name).select_one(".fills")).get_text()
        assert "to cool to" not in sheet(name).get_text()
