"""Draws the picture that stands for a page where somebody passes it on: the sign at the foot, the title, the name, the mark of a recipe.

It is drawn larger and made smaller, so that edges are smooth; colours are those of the site by day. The same words and the same recipe give
the same bytes.
"""

import io
from collections.abc import Iterator
from functools import cache
from itertools import islice
from pathlib import Path

from PIL import Image, ImageDraw, ImageFont

from builder.model.sharing import HEIGHT, WIDTH, SharingPicture

# As in layouts/styles/tokens.css.
PAPER, INK, SOFT, LEAF, WHITE = "#f6f8f7", "#12252b", "#394c53", "#0d4f5d", "#ffffff"
_LARGER = 2
_EDGE, _TEXT, _MARK, _SIGN = 64, 640, 400, 84
_SIZES = range(88, 39, -4)
_MOST_LINES, _MOST_NOTES = 3, 3
_LEADING, _NOTE = 1.12, 46
_LOGO_WIDE, _LOGO_HIGH, _LOGO_AT = 420, 96, 44  # The most that a logo takes, and where it begins.


def draw_sharing(picture: SharingPicture, regular: Path, bold: Path, logo: bytes = b"") -> bytes:
    """Draw a picture as a PNG; `regular` and `bold` are files of fonts, `logo` is a photograph of the logo, where there is one."""
    image = Image.new("RGB", (WIDTH * _LARGER, HEIGHT * _LARGER), PAPER)
    pen = ImageDraw.Draw(image)
    _draw_mark(pen, picture)
    _draw_sign(pen)
    begin = _draw_logo(image, logo) if logo else 0.0
    heading, below = (picture.title, picture.studio) if picture.title else (picture.studio, picture.tagline)
    small = _font(regular, 36)
    notes = list(islice(_lines(small, below), _MOST_NOTES))
    room = HEIGHT - _SIGN - begin - len(notes) * _NOTE - 20
    size, lines = _fitted(bold, heading, room)
    top = begin + (room - len(lines) * size * _LEADING) / 2
    for line in lines:
        pen.text((_EDGE * _LARGER, round(top * _LARGER)), line, fill=INK, font=_font(bold, size))
        top += size * _LEADING
    top += 20
    for line in notes:
        pen.text((_EDGE * _LARGER, round(top * _LARGER)), line, fill=SOFT, font=small)
        top += _NOTE
    written = io.BytesIO()
    shown = image.reduce(_LARGER)
    shown.quantize(128, Image.Quantize.MEDIANCUT, dither=Image.Dither.NONE).save(written, "PNG", compress_level=6)
    return written.getvalue()


def _draw_logo(image: Image.Image, logo: bytes) -> float:
    """Draw a logo above the words, and return where it ends."""
    with Image.open(io.BytesIO(logo)) as opened:
        shown = opened.convert("RGBA")
    scale = min(_LOGO_WIDE / shown.width, _LOGO_HIGH / shown.height) * _LARGER
    shown = shown.resize((max(1, round(shown.width * scale)), max(1, round(shown.height * scale))), Image.Resampling.LANCZOS)
    image.paste(shown, (_EDGE * _LARGER, _LOGO_AT * _LARGER), shown)
    return _LOGO_AT + shown.height / _LARGER


def _draw_mark(pen: ImageDraw.ImageDraw, picture: SharingPicture) -> None:
    left, top = WIDTH - _EDGE - _MARK, (HEIGHT - _SIGN - _MARK) / 2
    for shape in picture.mark:
        points = [((left + x * _MARK) * _LARGER, (top + y * _MARK) * _LARGER) for x, y in shape.points]
        pen.polygon(points, fill=shape.fill)
        pen.line([*points, points[0], points[1]], fill=INK, width=3 * _LARGER, joint="curve")
    if picture.heart:
        x, y, radius = picture.heart
        middle = ((left + x * _MARK) * _LARGER, (top + y * _MARK) * _LARGER)
        pen.circle(middle, radius * _MARK * _LARGER, fill=WHITE, outline=INK, width=3 * _LARGER)


def _draw_sign(pen: ImageDraw.ImageDraw) -> None:
    """Draw the sign of the studio along the foot: time that is watched (hatched), shared (dotted), and one's own (filled)."""
    top, bottom = (HEIGHT - _SIGN) * _LARGER, HEIGHT * _LARGER
    watched, shared = WIDTH * _LARGER // 3, WIDTH * _LARGER * 7 // 12
    step = 16 * _LARGER
    for x in range(-(bottom - top), watched, step):
        run = min(bottom - top, watched - x)
        begin = max(0, -x)
        pen.line([(x + begin, bottom - begin), (x + run, bottom - run)], fill=INK, width=3 * _LARGER)
    pen.rectangle([(watched, top), (shared, bottom)], fill=PAPER)
    for row, y in enumerate(range(top + step // 2, bottom, step)):
        for x in range(watched + step // 2 * (1 + row % 2), shared, step):
            pen.circle((x, y), 3 * _LARGER, fill=INK)
    pen.rectangle([(shared, top), (WIDTH * _LARGER, bottom)], fill=LEAF)
    for x in (watched, shared):
        pen.line([(x, top), (x, bottom)], fill=INK, width=3 * _LARGER)
    pen.line([(0, top), (WIDTH * _LARGER, top)], fill=INK, width=3 * _LARGER)


def _fitted(bold: Path, text: str, room: float) -> tuple[int, list[str]]:
    """Return the largest size at which a text takes few lines and no more than the room, and its lines; at the smallest the rest is left
    out."""
    for size in _SIZES:
        lines = list(islice(_lines(_font(bold, size), text), _MOST_LINES + 1))
        if len(lines) <= _MOST_LINES and len(lines) * size * _LEADING <= room:
            return size, lines
    return size, lines[:_MOST_LINES]


def _lines(font: ImageFont.FreeTypeFont, text: str) -> Iterator[str]:
    """Break a text into lines, and a word only where it is longer than one."""
    line = ""
    for word in text.split():
        together = f"{line} {word}".strip()
        if font.getlength(together) <= _TEXT * _LARGER:
            line = together
            continue
        if line:
            yield line
        line = word
        while font.getlength(line) > _TEXT * _LARGER:
            fits = next(end for end in range(1, len(line)) if font.getlength(line[: end + 1]) > _TEXT * _LARGER)
            yield line[:fits]
            line = line[fits:]
    if line:
        yield line


@cache
def _font(file: Path, size: int) -> ImageFont.FreeTypeFont:
    return ImageFont.truetype(str(file), size * _LARGER, layout_engine=ImageFont.Layout.BASIC)
