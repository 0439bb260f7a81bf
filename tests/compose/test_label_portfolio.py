"""The portfolio: made where it is asked for, every label in every design, in colour and in grey, and nothing off the paper."""

import re
from dataclasses import replace

import pytest

from builder.compose.edition import Edition
from builder.compose.label_front.designs import DESIGNS
from tests.compose.conftest import FILES, read_edition, write_studio
from tests.composing import composed

JAR = """our jar:
  {capacity: 8 fl oz, shape: round lid, height: 64 mm, around: 236 mm, lid: 76 mm, source: common-practice, at: a tape, known: measured}
"""


@pytest.fixture(scope="module")
def edition(tmp_path_factory: pytest.TempPathFactory) -> Edition:
    salts = FILES["recipes/salts.yaml"].replace("container: 4 fl oz jar", "container: our jar")
    return read_edition(write_studio(tmp_path_factory.mktemp("portfolio"), recipes__salts_yaml=salts, shelf__containers_yaml=JAR))


@pytest.fixture(scope="module")
def portfolio(edition: Edition) -> str:
    wishes = replace(edition.studio.profile.labels, portfolio=True)
    studio = replace(edition.studio, profile=replace(edition.studio.profile, labels=wishes))
    (made,) = composed("label portfolio", replace(edition, studio=studio))
    return made.html


def test_it_is_made_only_where_it_is_asked_for(edition: Edition) -> None:
    assert composed("label portfolio", edition) == []


def test_every_design_of_every_product_is_there_in_colour_in_grey_and_to_colour_in(portfolio: str) -> None:
    drawings = re.findall(r'<svg class="drawn".*?</svg>', portfolio, re.DOTALL)
    grey = [one for one in drawings if (found := re.findall("#[0-9a-f]{6}", one)) and all(c[1:3] == c[3:5] == c[5:7] for c in found)]
    in_colour = [one for one in drawings if one not in grey]
    shapes = {re.sub("#[0-9a-f]{6}", "", one) for one in in_colour}
    pairs = [one for one in grey if re.sub("#[0-9a-f]{6}", "", one) in shapes]
    outlines = [one for one in in_colour if set(re.findall("#[0-9a-f]{6}", one)) <= {"#1d1a17", "#ffffff"}]
    assert len(pairs) >= len(DESIGNS) and len(outlines) >= len(DESIGNS) and "To colour in" in portfolio
    assert all(portfolio.count(f">{name}") + portfolio.count(f"<b>{name}") >= 2 for name in DESIGNS)


def test_a_label_lies_on_its_container(portfolio: str) -> None:
    size = r"left:([\d.]+)mm;top:([\d.]+)mm;width:([\d.]+)mm;height:([\d.]+)mm"
    outline, then = r'[^>]*>\s*<div class="outline"[^>]*></div>\s*</div>\s*', rf'<div class="label" style="{size};overflow:hidden'
    both = rf'class="label" style="{size}"{outline}{then}'
    bearing = re.findall(both, portfolio)
    assert bearing
    for x, y, width, height, u, v, wide, high in (map(float, one) for one in bearing):
        assert x <= u and y <= v and u + wide <= x + width + 0.1 and v + high <= y + height + 0.1


def test_nothing_lies_off_the_paper(portfolio: str) -> None:
    places = re.findall(r'class="label" style="left:([\d.]+)mm;top:([\d.]+)mm;width:([\d.]+)mm;height:([\d.]+)mm', portfolio)
    assert places
    for x, y, width, height in (map(float, one) for one in places):
        assert x + width <= 215.9 and y + height <= 279.4
