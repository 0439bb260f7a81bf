"""A drawing that stands on a sheet many times is drawn once, looks the same, and the names of the library that this rests on are there."""

import inspect
from pathlib import Path
from xml.etree import ElementTree

import pypdfium2
import pytest
from PIL import ImageChops
from PIL.Image import Image

from builder.fonts.files import only_our_fonts
from builder.library import LAYOUTS
from builder.model.document import Document, Folder
from builder.press.engine import sheets
from builder.press.engine.sheets import Engine
from builder.press.kept import PressedSheet

# Tiles of nine parts with many strokes each, as a studio draws a border of its own.
TILE = '<svg xmlns="http://www.w3.org/2000/svg" width="90" height="90" viewBox="0 0 90 90"><g fill="none" stroke="#111">{}</g></svg>'
TILES = {
    "leaves": TILE.format(
        "".join(f'<path d="M{x} {y}C{x + 3} {y - 6} {x + 9} {y - 6} {x + 9} {y}"/>' for x in range(0, 80, 10) for y in (9, 81))
    ),
    "stars": TILE.format("".join(f'<path d="M{x} {y}L{x + 7} {y + 2}L{x + 1} {y + 5}z"/>' for x in (4, 80) for y in range(0, 80, 8))),
}
CELL = '<div style="width: 40mm; height: 30mm; border: 5mm solid; border-image: url({}) 30 round; margin: 2mm">Weigh {} g.</div>'
HTML = '<!DOCTYPE html><html lang="en"><head><title>A</title></head><body class="a4" data-title="A">{}</body></html>'


def extremes(grey: Image) -> tuple[float, float]:
    """Return the darkest and the lightest of a picture in greys."""
    low, high = grey.getextrema()
    assert isinstance(low, (int, float)) and isinstance(high, (int, float))
    return low, high


def press(folder: Path, fonts: Path, number: int) -> PressedSheet:
    cells = "".join(CELL.format(f"{border}.svg", grams) for border in ("leaves", "stars") for grams in range(number))
    document = Document(Folder.PRINT, "a.pdf", HTML.format(cells), ("tokens.css", "paper.css"))
    with only_our_fonts(fonts):
        return Engine(folder, (LAYOUTS,)).press(document)


@pytest.fixture
def studio(tmp_path: Path) -> Path:
    for name, tile in TILES.items():
        (tmp_path / f"{name}.svg").write_text(tile, encoding="utf-8")
    return tmp_path


def pictures(pdf: bytes) -> list[Image]:
    with pypdfium2.PdfDocument(pdf) as read:
        return [page.render(scale=1.5).to_pil().convert("L") for page in read]


@pytest.mark.long
def test_it_looks_as_if_each_were_drawn_anew(
    studio: Path, tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch
) -> None:
    from weasyprint.images import SVGImage

    fonts = tmp_path_factory.mktemp("fonts")
    once = press(studio, fonts, 6)
    drawn = SVGImage.draw
    monkeypatch.setattr(sheets, "draw_once", lambda: None)
    monkeypatch.setattr(SVGImage, "draw", drawn.__closure__[0].cell_contents)
    anew = press(studio, fonts, 6)
    assert once.warnings == anew.warnings == ()
    for one, other in zip(pictures(once.pdf), pictures(anew.pdf), strict=True):
        # One step of grey: the edge of a form is rounded elsewhere than that of a path.
        assert extremes(ImageChops.difference(one, other))[1] <= 1
        assert extremes(one)[0] < 128
    # Twelve cells of two borders: most of what was drawn anew is gone.
    assert len(once.pdf) < 0.7 * len(anew.pdf)


def test_a_drawing_that_stands_in_the_html_of_every_label_is_drawn_once(tmp_path: Path, tmp_path_factory: pytest.TempPathFactory) -> None:
    leaves, stars = TILES.values()
    with only_our_fonts(tmp_path_factory.mktemp("fonts")):
        engine = Engine(tmp_path, (LAYOUTS,))

        def forms(*drawings: str) -> int:
            pdf = engine.press(Document(Folder.PRINT, "a.pdf", HTML.format("".join(drawings)), ("tokens.css", "paper.css"))).pdf
            return pdf.count(b"/Subtype /Form")

        assert [forms(leaves), forms(leaves, leaves, leaves), forms(leaves, stars, leaves, stars)] == [1, 1, 2]
        # The same drawing in another size is another form.
        assert forms(leaves, leaves.replace('width="90" height="90"', 'width="45" height="45"')) == 2


def test_the_names_of_the_library_are_as_they_were() -> None:
    from weasyprint.images import SVGImage
    from weasyprint.pdf.stream import Stream

    drawn = SVGImage.draw
    anew = drawn.__closure__[0].cell_contents if getattr(drawn, "shows_again", False) else drawn
    assert list(inspect.signature(anew).parameters) == ["self", "stream", "concrete_width", "concrete_height", "_style"]
    drawing = ElementTree.fromstring(TILES["leaves"])
    assert SVGImage(drawing, None, None, None)._svg.tree._etree_node is drawing
    assert list(inspect.signature(Stream.add_group).parameters) == ["self", "x", "y", "width", "height"]
    assert list(inspect.signature(Stream.draw_x_object).parameters) == ["self", "reference"]
