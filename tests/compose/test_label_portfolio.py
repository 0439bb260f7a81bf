"""The portfolio: made where it is asked for, every label in every design, in colour and in grey, and nothing off the paper."""

import re
from dataclasses import replace

import pytest

from builder.compose.edition import Edition
from builder.compose.label_front.designs import DESIGNS
from tests.compose.conftest import read_edition, write_studio
from tests.composing import composed


@pytest.fixture(scope="module")
def edition(tmp_path_factory: pytest.TempPathFactory) -> Edition:
    return read_edition(write_studio(tmp_path_factory.mktemp("portfolio")))


@pytest.fixture(scope="module")
def portfolio(edition: Edition) -> str:
    wishes = replace(edition.studio.profile.labels, portfolio=True)
    studio = replace(edition.studio, profile=replace(edition.studio.profile, labels=wishes))
    (made,) = composed("label portfolio", replace(edition, studio=studio))
    return made.html


def test_it_is_made_only_where_it_is_asked_for(edition: Edition) -> None:
    assert composed("label portfolio", edition) == []


def test_every_design_of_every_product_is_there_in_colour_and_in_grey(portfolio: str) -> None:
    drawings = re.findall(r'<svg class="drawn".*?</svg>', portfolio, re.DOTALL)
    assert len(drawings) >= 2 * len(DESIGNS) and len(drawings) % 2 == 0
    for colour, grey in zip(drawings[::2], drawings[1::2], strict=True):
        assert re.sub("#[0-9a-f]{6}", "", colour) == re.sub("#[0-9a-f]{6}", "", grey)
        assert all(one[1:3] == one[3:5] == one[5:7] for one in re.findall("#[0-9a-f]{6}", grey))
    assert all(f">{name}" in portfolio for name in DESIGNS)


def test_nothing_lies_off_the_paper(portfolio: str) -> None:
    places = re.findall(r'class="label" style="left:([\d.]+)mm;top:([\d.]+)mm;width:([\d.]+)mm;height:([\d.]+)mm', portfolio)
    assert places
    for x, y, width, height in (map(float, one) for one in places):
        assert x + width <= 215.9 and y + height <= 279.4
