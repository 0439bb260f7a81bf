"""What is known of the fonts: the letters that all faces of the printed sheets have, and the faces of the labels, the two of all text and
those of names, as their outlines have them. Heights are those of the outline itself:
the font's own tables of heights name the flat x, and an o is higher than that. And a font of the studio's own: whether it can be read,
what its maker allows, and how its outlines measure.

Decided: the bits of OS/2 fsType are taken at their word (OpenType 1.9, OS/2): a font with restricted licence, or of which only bitmaps may
be embedded, or no part, is not printed; only an installable one lies on the web. Why: what the maker of a font has written into it is all
that a program can know of its licence.
"""

import logging
from collections.abc import Mapping
from io import BytesIO
from pathlib import Path

from builder.cache import made_once
from builder.fonts.files import DISPLAY, FACES, PACKAGES, display_file, font_file
from builder.fonts.kerning import kerning_of
from builder.model.label.own_font import FONT_ENDINGS, OWN_TITLES, OwnFont
from builder.model.label.typeface import Typeface
from builder.model.remembered import remembered

FAMILY = "Fira Sans Condensed"
# Bits of OS/2 fsType.
_RESTRICTED, _PREVIEW, _EDITABLE, _NO_PARTS, _BITMAPS = 0x0002, 0x0004, 0x0008, 0x0100, 0x0200
_CAPITALS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz"
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


@remembered(4)
def typefaces_with(own: OwnFont | None) -> Mapping[str, Typeface]:
    """Return the faces of labels, with the studio's own for titles where it may be printed: the same faces for all who ask."""
    faces = typefaces_of_labels()
    return faces | {OWN_TITLES: own.typeface} if own and own.typeface and own.prints else faces


def measure_typeface(file: Path | BytesIO, *, kerned: bool = False) -> Typeface:
    """Measure one font; with its kerning, if it is set with it.

    What a face for names alone lacks is as high as its capitals. Raises what the library does for a file that is no font, and StopIteration
    for a font without a Latin letter.
    """
    from fontTools.pens.boundsPen import BoundsPen
    from fontTools.ttLib import TTFont

    with TTFont(file, lazy=True) as font:
        em, glyphs, names, advances = font["head"].unitsPerEm, font.getGlyphSet(), font.getBestCmap(), font["hmtx"]

        def height(letter: str) -> float:
            pen = BoundsPen(glyphs)
            glyphs[names[ord(letter)]].draw(pen)
            return float(pen.bounds[3] - pen.bounds[1]) / float(em)

        capital = "H" if ord("H") in names else next(letter for letter in _CAPITALS if ord(letter) in names)
        return Typeface(
            widths={code: advances[name][0] / em for code, name in names.items()},
            capital=height(capital),
            small_o=height("o" if ord("o") in names else capital),
            figure=min(height(figure) for figure in "0123456789" if ord(figure) in names) if ord("0") in names else height(capital),
            kerning=kerning_of(font) if kerned else {},
            bearings={code: advances[name][1] / em for code, name in names.items()} if kerned else {},
        )


def own_font(folder: Path, name: str) -> OwnFont:
    """Look at a font file by its path in the studio folder; one that cannot be read has no typeface."""
    file = (folder / name).resolve()
    if not file.is_relative_to(folder.resolve()) or file.suffix.lower() not in FONT_ENDINGS or not file.is_file():
        return OwnFont(name)
    try:
        return _own_font(name, file.read_bytes())
    except OSError:
        return OwnFont(name)


@remembered(4, bytes)
def _own_font(name: str, data: bytes) -> OwnFont:
    """Measure a font of the studio's own, once for as long as its file stays as it is."""
    from fontTools.ttLib import TTFont

    # It tells of every oddity of a file on the terminal, in words for those who make fonts.
    logging.getLogger("fontTools").setLevel(logging.CRITICAL)
    try:
        with TTFont(BytesIO(data), lazy=True) as font:
            bits = int(font["OS/2"].fsType) if "OS/2" in font else 0
            letters = frozenset(font.getBestCmap() or ())
        typeface = measure_typeface(BytesIO(data), kerned=True)
    except Exception:
        # The library raises whatever a broken table leads it to.
        return OwnFont(name)
    usage = bits & (_RESTRICTED | _PREVIEW | _EDITABLE)
    # Of several of these bits the least restrictive holds (OpenType 1.9).
    may_print = usage != _RESTRICTED and not bits & (_NO_PARTS | _BITMAPS)
    return OwnFont(name, typeface, may_print, may_print and usage == 0, letters)
