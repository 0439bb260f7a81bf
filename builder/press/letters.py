"""Which letters every font of the printed sheets has."""

from functools import cache
from pathlib import Path

from builder.cache import made_once
from builder.press.fonts import FACES, PACKAGES, font_file


@cache
def letters_of_fonts() -> frozenset[int]:
    """Give the code points that all faces share."""
    return made_once(frozenset, Path(__file__).parent, _shared)


def _shared() -> frozenset[int]:
    return frozenset.intersection(*(_letters(font_file(family, cut)) for family in PACKAGES for cut, _, _ in FACES))


def _letters(file: Path) -> frozenset[int]:
    from fontTools.ttLib import TTFont

    with TTFont(file, lazy=True) as font:
        return frozenset(font.getBestCmap())
