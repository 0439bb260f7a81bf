"""The portfolio: made where it is asked for, every label in every design, in colour and in grey, and nothing off the paper."""

import re
from dataclasses import replace
from math import pi

import pytest

from builder.compose.addresses import Address
from builder.compose.documents.label_portfolio import _shown, compose_portfolio
from builder.compose.edition import Edition
from builder.compose.label_front.designs import DESIGNS
from builder.compose.label_front.drawn import Ink
from builder.compose.label_layout.composed import lay_out_composed
from builder.compose.label_layout.label_sheets import SheetUse
from builder.compose.ornament.portrait import Form
from builder.compose.views.labels import LabelsView, PositionView
from builder.model.document import Folder
from tests.compose.conftest import FILES, read_edition, write_studio
from tests.compose.test_colouring import SHARES
from tests.compose.test_colouring import portrait as portrait_like
from tests.compose.test_label_fronts import LEAST, SETTER, label, sheet
from tests.composing import composed
from tests.making import sure

JAR = """our jar:
  {capacity: 8 fl oz, shape: round lid, height: 64 mm, around: 236 mm, lid: 76 mm, source: common-practice, at: a tape, known: measured}
"""


ONE = portrait_like(SHARES["even seven"], Form.BLUNT)


def at(position: PositionView) -> tuple[float, float]:
    """Give where a position lies on its page."""
    x, y = re.findall(r"(?:left|top):(-?[\d.]+)mm", position.style)[:2]
    return float(x), float(y)


def said(position: PositionView) -> str:
    return " ".join(run.text for block in position.blocks for line in block.lines for run in line)


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


def names_of_items(edition: Edition) -> list[tuple[str, str]]:
    """Give for each label of a design that is shown its name, and the words above the label that lies beneath it on its page."""
    wishes = replace(edition.studio.profile.labels, portfolio=True)
    studio = replace(edition.studio, profile=replace(edition.studio.profile, labels=wishes))
    found = []
    view = sure(compose_portfolio(replace(edition, studio=studio), studio, Address(Folder.PRINT, "x.pdf"))).view
    assert isinstance(view, LabelsView)
    for page in view.pages:
        words = {at(one): said(one) for one in page if one.blocks and not one.drawing_html}
        for one in page:
            if one.drawing_html and "overflow" not in one.style:
                x, y = at(one)
                above = [(up, text) for (left, up), text in words.items() if abs(left - x) < 0.1 and up < y]
                found.append((one.drawing_html, max(above)[1] if above else ""))
    return found


def test_each_label_stands_beneath_its_own_name(edition: Edition) -> None:
    names = [name for _, name in names_of_items(edition) if name]
    shown = {name: names.count(name) for name in DESIGNS}
    assert all(count >= 1 for count in shown.values()), shown
    assert len(names) >= 3 * len(DESIGNS)
    assert all(name in DESIGNS or name in ("in grey", "to colour in") or name.endswith(")") for name in names), names


def test_of_a_label_that_goes_around_a_jar_its_middle_is_seen() -> None:
    """Plain geometry: on a jar of 236 mm around, which is 75.1 mm wide, a label that is wider is cut off as much on both sides."""
    text = label(name="Still water bath salts")
    laid = sure(lay_out_composed([(text, DESIGNS["posy"])], SheetUse(sheet(95.25, 63.5), 2), LEAST["large"], SETTER))
    (whole,) = _shown(laid, ONE, Ink.ACCENT)
    (seen,) = _shown(laid, ONE, Ink.ACCENT, 236 / pi)
    off = (236 / pi - 95.25) / 2
    assert seen.width == pytest.approx(75.12, abs=0.01) and whole.width == 95.25
    lefts, moved = ([float(block.style.split("mm")[0].removeprefix("left:")) for block in item.position.blocks] for item in (whole, seen))
    assert moved == pytest.approx([x + off for x in lefts], abs=0.001)
    assert f"left:{off:.4f}mm" in seen.position.drawing_html


def test_nothing_lies_off_the_paper(portfolio: str) -> None:
    places = re.findall(r'class="label" style="left:([\d.]+)mm;top:([\d.]+)mm;width:([\d.]+)mm;height:([\d.]+)mm', portfolio)
    assert places
    for x, y, width, height in (map(float, one) for one in places):
        assert x + width <= 215.9 and y + height <= 279.4
