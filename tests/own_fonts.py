"""Small fonts whose every letter is a box: for what a font file says of itself, with outlines whose heights are known.

`python -m tests.own_fonts` writes those of the cases in `tests/findings/`.
"""

from pathlib import Path

from fontTools.fontBuilder import FontBuilder
from fontTools.pens.ttGlyphPen import TTGlyphPen

FINDINGS = Path(__file__).parent / "findings"
LETTERS = "".join(chr(code) for code in range(0x20, 0x7F))
_WHEN = 3_800_000_000  # Seconds since 1904, as fonts count: a day in 2024, always the same.
EM, CAPITAL, SMALL, WIDE = 1000, 700, 480, 600


def write_font(file: Path, fs_type: int = 0, letters: str = LETTERS) -> None:
    """Write a font with these letters; `fs_type` are the bits of OS/2 fsType."""
    names = [".notdef", *(f"letter{ord(letter)}" for letter in letters)]
    builder = FontBuilder(EM, isTTF=True)
    builder.setupGlyphOrder(names)
    builder.setupCharacterMap({ord(letter): f"letter{ord(letter)}" for letter in letters})
    glyphs = {".notdef": _box(CAPITAL)} | {f"letter{ord(one)}": _box(SMALL if one.islower() else CAPITAL) for one in letters}
    builder.setupGlyf(glyphs)
    builder.setupHorizontalMetrics(dict.fromkeys(names, (WIDE, 0)))
    builder.setupHorizontalHeader(ascent=800, descent=-200)
    builder.setupNameTable({"familyName": "Boxes", "styleName": "Regular"}, mac=False)
    builder.setupOS2(sTypoAscender=800, sTypoDescender=-200, usWinAscent=800, usWinDescent=200, fsType=fs_type)
    builder.setupPost()
    builder.updateHead(created=_WHEN, modified=_WHEN)
    builder.font.recalcTimestamp = False
    file.parent.mkdir(parents=True, exist_ok=True)
    builder.save(file)


def _box(high: int) -> object:
    pen = TTGlyphPen(None)
    for at, point in enumerate(((50, 0), (50, high), (550, high), (550, 0))):
        (pen.lineTo if at else pen.moveTo)(point)
    pen.closePath()
    return pen.glyph()


if __name__ == "__main__":
    write_font(FINDINGS / "font-not-to-embed" / "ours.ttf", fs_type=0x0002)
    write_font(FINDINGS / "font-not-for-the-web" / "ours.ttf", fs_type=0x0004)
    write_font(FINDINGS / "font-lacks-letters" / "ours.ttf", letters="Plain brtusdoTeIgm")
