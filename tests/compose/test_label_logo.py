"""The logo as the brand mark of a front and in the pictures that stand for pages: where there is room, in its proportions, off words.

That it is not below 4 mm and gives way on a coloured ground is this studio's own measure, no source.
"""

import io
from dataclasses import replace
from pathlib import Path

import numpy
import pypdfium2
import pytest
from PIL import Image, ImageChops

from builder.check.look import find_look_amiss
from builder.compose.label_front.designs import DESIGNS
from builder.compose.label_layout.composed import lay_out_composed, whole_of
from builder.compose.label_layout.label_lines import Block
from builder.fonts.files import font_file, only_our_fonts
from builder.library import LAYOUTS
from builder.model.label.logo import Logo
from builder.model.sharing import SharingPicture
from builder.pictures.sharing import draw_sharing
from builder.press import press_one
from builder.press.logo import logo_as_photograph
from builder.rules.look.logo import logo_of
from tests.compose.conftest import FILES, read_edition, write_studio
from tests.compose.test_label_fronts import LARGE, LEAST, SETTER, SHAPES, inside, label
from tests.composing import composed
from tests.making import sure

LOGO = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 240 80"><rect width="240" height="80" rx="40" fill="#ff0000"/></svg>'
THREE_TO_ONE = Logo("logo.svg", 3.0)
FONTS = (font_file("Fira Sans", "Regular"), font_file("Fira Sans", "Bold"))


def of_logo(blocks: tuple[Block, ...]) -> list[Block]:
    return [block for block in blocks if block.picture]


@pytest.mark.parametrize("shape", SHAPES)
@pytest.mark.parametrize("design", DESIGNS)
def test_it_keeps_its_proportions_and_stays_off_edges_words_and_mark(design: str, shape: str) -> None:
    text, rules = replace(label(), logo=THREE_TO_ONE), LEAST["large" if shape in LARGE else "small"]
    laid = sure(lay_out_composed([(text, DESIGNS[design])], SHAPES[shape], rules, SETTER))
    blocks = laid.labels[0][0].blocks
    for one in of_logo(blocks):
        assert one.width / one.height == pytest.approx(3.0) and 4.0 <= one.height <= 8.0
        assert one.x >= 2.49 and one.y >= 2.49 and one.x + one.width <= whole_of(laid.sheet).width - 2.49
        for other in blocks:
            beside = one.x + one.width <= other.x + 1e-6 or other.x + other.width <= one.x + 1e-6
            assert other is one or one.below <= other.y + 1e-6 or other.below <= one.y + 1e-6 or beside, other
    assert all(inside(laid.sheet, block) for block in blocks if not block.picture)


def test_on_a_bottle_every_design_bears_it_and_on_a_small_lid_none() -> None:
    text = replace(label(), logo=THREE_TO_ONE)
    for name, design in DESIGNS.items():
        bottle = sure(lay_out_composed([(text, design)], SHAPES["bottle"], LEAST["large"], SETTER))
        lid = sure(lay_out_composed([(text, design)], SHAPES["lid and tag"], LEAST["small"], SETTER))
        assert len(of_logo(bottle.labels[0][0].blocks)) == 1, name
        assert of_logo(lid.labels[0][0].blocks) == [], name


def test_what_shows_a_box_of_its_own_gives_way_to_the_name_on_a_ground_of_colour() -> None:
    boxed = replace(label(), logo=replace(THREE_TO_ONE, see_through=False))
    slate, posy = (
        sure(lay_out_composed([(boxed, DESIGNS[name])], SHAPES["bottle"], LEAST["large"], SETTER)).labels[0][0].blocks
        for name in ("slate", "posy")
    )
    assert of_logo(slate) == [] and len(of_logo(posy)) == 1
    assert any("WRENLOW" in run.text for block in slate for line in block.lines for run in line)


def test_a_logo_too_wide_to_be_read_gives_way_to_the_name() -> None:
    ribbon = replace(label(), logo=Logo("logo.svg", 30.0))
    front = sure(lay_out_composed([(ribbon, DESIGNS["posy"])], SHAPES["bottle"], LEAST["large"], SETTER)).labels[0][0].blocks
    assert of_logo(front) == [] and any("WRENLOW" in run.text for block in front for line in block.lines for run in line)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    own = FILES["studio.yaml"].rstrip("\n") + "\nlook: {logo: logo.svg}\nlabels: {logo: yes, sheet: letter 3 x 4 square, panels: 2}\n"
    (tmp_path / "logo.svg").write_text(LOGO, encoding="utf-8")
    return write_studio(tmp_path, studio_yaml=own)


@pytest.mark.long
def test_it_is_printed_with_the_name_as_its_text_alternative(folder: Path) -> None:
    edition = read_edition(folder)
    assert list(find_look_amiss(edition.studio)) == []
    (document, *_) = composed("labels", edition, edition.plans[-1])
    assert 'src="logo.svg" alt="Test studio"' in document.html
    page = pypdfium2.PdfDocument(press_one(document, folder, (LAYOUTS,)))[0].render(scale=2).to_pil().convert("RGB")
    red = sum(count for count, colour in sure(page.getcolors(1 << 24)) if colour == (255, 0, 0))
    assert red > 500


@pytest.mark.long
def test_the_picture_of_a_page_bears_it_above_the_words(folder: Path, tmp_path: Path) -> None:
    logo = sure(logo_of(read_edition(folder).studio))
    assert (logo.proportion, logo.see_through) == (3.0, True)
    with only_our_fonts(tmp_path):
        photograph = logo_as_photograph(logo, folder, (LAYOUTS,))
    with Image.open(io.BytesIO(photograph)) as seen:
        assert seen.width / seen.height == pytest.approx(3.0, abs=0.02)
        dots = numpy.array(seen)
        assert list(dots[seen.height // 2, seen.width // 2]) == [255, 0, 0, 255]
        assert dots[1, 1, 3] == 0, "the paper behind a drawing is left out"
    for title in ("Soap", "A rather long name of a class in which very much is made by very many people on one single day"):
        with_logo, without = (
            Image.open(io.BytesIO(draw_sharing(SharingPicture("a.png", "Studio", "", title), *FONTS, data))).convert("RGB")
            for data in (photograph, b"")
        )
        top = numpy.array(with_logo.crop((0, 0, 700, 140)), dtype=int)
        rows, columns = numpy.nonzero((top[:, :, 0] > 200) & (top[:, :, 2] < 60))
        assert columns.min() >= 64 and columns.max() <= 64 + 288 and rows.min() >= 44 and rows.max() <= 44 + 96
        words = ImageChops.difference(with_logo.crop((0, 141, 700, 540)), Image.new("RGB", (700, 399), with_logo.getpixel((2, 2))))
        assert words.getbbox() and sure(words.getbbox())[1] > 0 and sure(words.getbbox())[3] < 399
        assert with_logo.crop((0, 547, 1200, 630)).tobytes() == without.crop((0, 547, 1200, 630)).tobytes()
