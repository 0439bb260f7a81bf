"""What is known of the fonts: the letters that all faces of the printed sheets have, and the faces of the labels, the two of all text and
those of names, as their outlines have them. Heights are those of the outline itself:
the font's own tables of heights name the flat x, and an o is higher than that."""

from pathlib import Path

from builder.cache import made_once
from builder.model.label.typeface import Typeface
from builder.model.remembered import remembered
from builder.press.fonts import DISPLAY, FACES, PACKAGES, display_file, font_file
from builder.press.kerning import kerning_of

FAMILY = "Fira Sans Condensed"
CUTS = {"regular": "Regular", "bold": "Bold"}


@remembered(1)
def letters_of_fonts() -> frozenset[int]:
    """Return the code points that all faces share."""
    return made_once(frozenset, Path(__file__).parent, _shared)


def _shared() -> frozenset[int]:
    return frozenset.intersection(*(_letters(font_file(family, cut)) for family in PACKAGES for cut, _, _ in FACES))


def _letters(file: Path) -> frozenset[int]:
    from fontTools.ttLib import TTFont

    with TTFont(file, lazy=True) as font:
        return frozenset(font.getBestCmap())


@remembered(1)
def typefaces_of_labels() -> dict[str, Typeface]:
    """Measure the regular and the bold face, and those of names by the names that labels call them."""
    return made_once(dict, Path(__file__).parent, _measured)


def _measured() -> dict[str, Typeface]:
    text = {name: measure_typeface(font_file(FAMILY, cut)) for name, cut in CUTS.items()}
    return text | {name: measure_typeface(display_file(name), kerned=True) for name in DISPLAY}


def measure_typeface(file: Path, *, kerned: bool = False) -> Typeface:
    """Measure one font file; with its kerning, if it is set with it."""
    from fontTools.pens.boundsPen import BoundsPen
    from fontTools.ttLib import TTFont

    with TTFont(file, lazy=True) as font:
        em, glyphs, names, advances = font["head"].unitsPerEm, font.getGlyphSet(), font.getBestCmap(), font["hmtx"]

        def height(letter: str) -> float:
            pen = BoundsPen(glyphs)
            glyphs[names[ord(letter)]].draw(pen)
            return float(pen.bounds[3] - pen.bounds[1]) / float(em)

        return Typeface(
            widths={code: advances[name][0] / em for code, name in names.items()},
            capital=height("H"),
            small_o=height("o"),
            figure=min(height(figure) for figure in "0123456789"),
            kerning=kerning_of(font) if kerned else {},
            bearings={code: advances[name][1] / em for code, name in names.items()} if kerned else {},
        )
