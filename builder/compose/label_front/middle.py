"""The middle of a front: the name as large as fits, with its other names and the variant beneath it; or lines to write a title on."""

from dataclasses import dataclass
from math import ceil, floor

from builder.compose.label.label_texts import Run
from builder.compose.label_front.ground import Ground
from builder.compose.label_front.names import STEP, block_of_row, row_height, rows_of
from builder.compose.label_front.space import Space
from builder.compose.label_layout.label_lines import Block, line_height
from builder.model.label.typeface import POINT

OF_NAME_VARIANT, MOST_VARIANT, OF_NAME_OTHER = 0.46, 16.0, 0.6
BELOW_NAME = 0.6
BLANK_NAME = 24.0  # The line height of a title that is written by hand, in points.


@dataclass(frozen=True)
class Middle:
    """The name with what goes with it: its blocks, the size of the name, where it ends."""

    blocks: tuple[Block, ...]
    points: float
    below: float


@dataclass(frozen=True)
class _Below:
    """A line beneath the name: what it says, its size, its face (that of the design, or that of all text)."""

    run: Run
    points: float
    face: str


def middle_of(ground: Ground, space: Space, top: float, bottom: float) -> Middle | None:
    """Set the name as large as fits between two heights, with its other names and the variant beneath it."""
    if ground.to_fill_in:
        return _title_to_fill_in(space, top, bottom)
    least = ground.least_name
    low, high = ceil(least / STEP), floor(min(max(ground.design.most, least + STEP), (bottom - top) / POINT) / STEP)
    best = _named(ground, space, top, bottom, low * STEP) if low <= high else None
    while best and low < high:
        tried = (low + high + 1) // 2
        laid = _named(ground, space, top, bottom, tried * STEP)
        if laid:
            low, best = tried, laid
        else:
            high = tried - 1
    return best


def _title_to_fill_in(space: Space, top: float, bottom: float) -> Middle | None:
    high = line_height(BLANK_NAME, 1.0)
    x, width = space.across(top, top + 2 * high)
    if bottom - top < 1.4 * high or width < 20:
        return None
    lines = 2 if bottom - top >= 2.1 * high else 1
    blocks = tuple(
        Block(x, top + number * high, width, BLANK_NAME, ((Run("", blank=width - 0.2),),), leading=1.0) for number in range(lines)
    )
    return Middle(blocks, BLANK_NAME, blocks[-1].below)


def _named(ground: Ground, space: Space, top: float, bottom: float, points: float) -> Middle | None:
    setter, lettering, text = ground.setter, ground.lettering, ground.text
    below = _under_name(ground, points)
    extra = sum(line_height(one.points) for one in below) + (BELOW_NAME if below else 0)
    high = row_height(lettering, points)

    def start(count: int) -> float:
        free = bottom - top - extra - count * high
        return top + (free / 2 if ground.is_centred else min(free, 0.5))

    def width_of(number: int, count: int) -> float:
        begin = start(count) + number * high
        return space.across(begin, begin + high)[1] if begin >= top - 1e-6 else 0.0

    rows = rows_of(setter, *text.named[0], lettering, points, width_of)
    if rows is None:
        return None
    y = start(len(rows))
    blocks = []
    for row in rows:
        x, width = space.across(y, y + high)
        blocks.append(block_of_row(ground.setter, row, lettering, points, x, y, width, edge=ground.edge, is_centred=ground.is_centred))
        y += high
    y += BELOW_NAME
    for one in below:
        x, width = space.across(y, y + line_height(one.points))
        if one.face:
            if setter.faces[one.face].width(one.run.text, one.points) > width:
                return None
            blocks.append(Block(x, y, width, one.points, ((one.run,),), one.face, is_centred=ground.is_centred))
        else:
            lines = setter.lines((one.run,), one.points, width)
            if lines is None or len(lines) > 2:
                return None
            blocks.append(Block(x, y, width, one.points, lines, is_centred=ground.is_centred))
        y = blocks[-1].below
    return Middle(tuple(blocks), points, y) if y <= bottom + 1e-6 else None


def _under_name(ground: Ground, points: float) -> list[_Below]:
    """Return what stands beneath the name: the name in the other languages, then the variant, in the face of the design if it has one."""
    least, text = ground.rules.text, ground.text
    below = [_Below(Run(one, bold=True, locale=locale), max(least, OF_NAME_OTHER * points), "") for one, locale in text.named[1:]]
    if text.variant:
        face = _variant_face(ground)
        # As high as other text has to be, whatever the face.
        high = ground.setter.faces["regular"].small_o / ground.setter.faces[face].small_o if face else 1.0
        below.append(_Below(Run(text.variant), max(least * high, min(OF_NAME_VARIANT * points, MOST_VARIANT)), face))
    return below


def _variant_face(ground: Ground) -> str:
    """Return the face of the variant; the one of all text for a design without, where letters lack, and where it would be too wide."""
    face, variant = ground.setter.faces.get(ground.design.variant_face), ground.text.variant
    if face is None or any(ord(letter) not in face.widths for letter in variant):
        return ""
    least = ground.rules.text * ground.setter.faces["regular"].small_o / face.small_o
    return ground.design.variant_face if face.width(variant, least) <= 0.8 * ground.space.width else ""
