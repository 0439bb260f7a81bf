"""What lies behind the words of a composed front, as one SVG of the size of its label with the text alternative of the mark.

Lengths in millimetres from the corner of the label. The mark is that of the recipe with what was chosen, on every sheet and page the same.
"""

import re
from collections.abc import Iterator
from enum import Enum
from html import escape
from math import atan2, cos, pi, sin, sqrt

from builder.compose.label_front.designs import USUAL, Ornament, border_scale
from builder.compose.label_front.front import Drawing
from builder.compose.label_front.outlines import CLEAR, LEAVES, bar_to_colour, leaves_to_colour, woven_to_colour, wreath_to_colour
from builder.compose.label_front.space import Space
from builder.compose.ornament.colouring import SMALLEST, to_colour
from builder.compose.ornament.flower import PetalShape, flower_of, petal_of
from builder.compose.ornament.portrait import Portrait
from builder.compose.ornament.svg import INK, OUTLINE, Look, flower_in, line_width, mm
from builder.compose.ornament.tints import paler, tint_of
from builder.compose.ornament.words import mark_in_words

THREAD, SEAM, SEAM_AT = 0.7, 0.5, 2.4
LEAF, STEM_AT, LEAF_EVERY, TURNED = 3.5, 3.3, 2.8, 0.5
# A mark above two leaves, and these, in parts of the side of its square; the angle at which they rise.
ABOVE_LEAVES, LEAF_LONG, LEAF_BROAD, LEAF_FOOT, RISING = 0.8, 0.48, 0.22, 0.87, 0.22

SQUARE_IN_CIRCLE = sqrt(0.5)

Point = tuple[float, float]

_COLOUR = re.compile("#[0-9a-f]{6}")


class Ink(Enum):
    """How a front is drawn."""

    ACCENT = "with its accent"
    GREY = "as a grey printer prints it"
    OUTLINES = "as outlines to colour in"


def drawn(drawing: Drawing, portrait: Portrait, whole: Space, ink: Ink = Ink.ACCENT, bleed: float = 0.0) -> str:
    """Give the drawing of one label; what reaches its edge goes on for the `bleed` beyond it, so that a cut that is off shows no paper."""
    on = drawing.on
    parts = "".join(_parts(drawing, portrait, ink, bleed))
    if ink is Ink.GREY:
        parts = _COLOUR.sub(_grey, parts)
    right = bleed if on.width >= whole.width else 0.0
    width, height = mm(on.width + bleed + right), mm(on.height + 2 * bleed)
    outlined = ink is Ink.OUTLINES
    flower = to_colour(portrait, drawing.side - _leaves(drawing)) if outlined and drawing.side else portrait
    corner, title = mm(-bleed), escape(mark_in_words(flower))
    return (
        f'<svg class="drawn" style="left:{corner}mm;top:{corner}mm" xmlns="http://www.w3.org/2000/svg" width="{width}mm" '
        f'height="{height}mm" viewBox="{corner} {corner} {width} {height}" role="img"><title>{title}</title>{parts}</svg>'
    )


def panel_to_colour(portrait: Portrait, whole: Space) -> str:
    """Return a label with nothing but the mark to colour in, as large as leaves the cut clear; empty where it is too small for one."""
    room = whole.inside(CLEAR)
    side = min(room.width, room.height) * (SQUARE_IN_CIRCLE if whole.is_round else 1.0)
    if side < SMALLEST:
        return ""
    at = whole.middle - side / 2, whole.y + (whole.height - side) / 2
    return drawn(Drawing(USUAL, whole, *at, side), portrait, whole, Ink.OUTLINES)


def _grey(colour: re.Match[str]) -> str:
    """Return the grey as light as a colour (its luma by Rec. ITU-R BT.601)."""
    red, green, blue = (int(colour[0][at : at + 2], 16) for at in (1, 3, 5))
    grey = round(0.299 * red + 0.587 * green + 0.114 * blue)
    return f"#{grey:02x}{grey:02x}{grey:02x}"


def _parts(drawing: Drawing, portrait: Portrait, ink: Ink, bleed: float) -> Iterator[str]:
    if ink is Ink.OUTLINES:
        yield from _outlines(drawing, portrait)
        return
    tint, design, label = tint_of(portrait), drawing.design, drawing.on
    if drawing.ground:
        yield _ground(drawing.ground, label, tint, bleed)
    for x, y, width in drawing.threads:
        long = width + 2 * bleed
        yield f'<path d="M{mm(x - bleed)} {mm(y)}h{mm(long)}v{THREAD}h-{mm(long)}z" fill="{tint}"/>'
    if design.dashes:
        yield _seam(label, tint, SEAM, SEAM_AT * border_scale(label.width, label.height))
    if design.ornament is Ornament.WREATH:
        yield from _wreath(portrait, label)
    if drawing.side:
        yield _mark(drawing, portrait, Look.LINES if drawing.ground else Look.TINTED)


def _outlines(drawing: Drawing, portrait: Portrait) -> Iterator[str]:
    """Draw what is coloured in: lines of one width, fields that a crayon fills, nothing nearer to the cut than CLEAR."""
    design, label = drawing.design, drawing.on
    if drawing.ground and not label.is_round:
        yield _frame(drawing.ground, label)
    if drawing.is_rich and design.ornament is Ornament.CORNER:
        yield from bar_to_colour(portrait, label)
    for x, y, width in drawing.threads[:1]:
        if drawing.is_rich:
            yield from woven_to_colour(label, y + 0.7)
            continue
        yield f'<path d="M{mm(x + CLEAR)} {mm(y)}h{mm(width - 2 * CLEAR)}" fill="none" stroke="{INK}" stroke-width="{OUTLINE}"/>'
    if design.dashes:
        yield _seam(label, INK, OUTLINE, CLEAR + OUTLINE)
    if design.ornament is Ornament.WREATH:
        yield from wreath_to_colour(portrait, label, drawing.leaves_along)
    if drawing.side:
        yield _mark(drawing, portrait, Look.TO_COLOUR_IN)


def _ground(ground: tuple[float, float, float, float], label: Space, tint: str, bleed: float) -> str:
    x, y, width, height = ground
    if not label.is_round:
        wide, high = mm(width + 2 * bleed), mm(height + bleed)
        return f'<path d="M{mm(x - bleed)} {mm(y - bleed)}h{wide}v{high}h-{wide}z" fill="{tint}"/>'
    # The part of the circle, with its bleed, above the line.
    radius, off = label.width / 2 + bleed, y + height - label.height / 2
    half = sqrt(radius**2 - off**2)
    left, right, below = mm(label.middle - half), mm(label.middle + half), mm(y + height)
    return f'<path d="M{left} {below}A{mm(radius)} {mm(radius)} 0 {1 if off > 0 else 0} 1 {right} {below}z" fill="{tint}"/>'


def _frame(ground: tuple[float, float, float, float], label: Space) -> str:
    """Draw the edge of a ground that is coloured in, clear of the cut."""
    x, y, width, height = ground
    left, top = max(x, label.x + CLEAR + OUTLINE), max(y, label.y + CLEAR + OUTLINE)
    right, below = min(x + width, label.x + label.width - CLEAR - OUTLINE), min(y + height, label.below - CLEAR - OUTLINE)
    size = f'width="{mm(right - left)}" height="{mm(below - top)}"'
    return f'<rect x="{mm(left)}" y="{mm(top)}" {size} fill="none" stroke="{INK}" stroke-width="{OUTLINE}"/>'


def _seam(label: Space, colour: str, wide: float, at: float) -> str:
    line = f'fill="none" stroke="{colour}" stroke-width="{wide}" stroke-dasharray="2.2 1.4" stroke-linecap="round"'
    if label.is_round:
        return f'<circle cx="{mm(label.width / 2)}" cy="{mm(label.height / 2)}" r="{mm(label.width / 2 - at)}" {line}/>'
    return f'<rect x="{mm(at)}" y="{mm(at)}" width="{mm(label.width - 2 * at)}" height="{mm(label.height - 2 * at)}" rx="2.5" {line}/>'


def _mark(drawing: Drawing, portrait: Portrait, look: Look) -> str:
    side, leaves = drawing.side, ""
    if look is Look.TO_COLOUR_IN:
        side -= _leaves(drawing)
        leaves = "".join(leaves_to_colour(portrait, drawing.side)) if side < drawing.side else ""
    elif drawing.design.leaves:
        side *= ABOVE_LEAVES
        leaves = _leaves_below(portrait, drawing.side)
    at = f"{mm(drawing.x)} {mm(drawing.y)}"
    right = f' transform="translate({mm((drawing.side - side) / 2)} 0)"' if leaves else ""
    return f'<g transform="translate({at})">{leaves}<g{right}>{flower_in(portrait, side, look)}</g></g>'


def _leaves(drawing: Drawing) -> float:
    """Return how much less high a mark to colour in is for the leaves below it; none where it would have no fields."""
    return LEAVES if drawing.design.leaves and drawing.side - LEAVES >= SMALLEST else 0.0


def _leaves_below(portrait: Portrait, side: float) -> str:
    """Lay two leaves of the form of the petals behind the foot of a mark, rising to its sides."""
    petal, tint = petal_of(portrait, LEAF_LONG * side, LEAF_BROAD * side), paler(tint_of(portrait), 0.3)
    foot = side / 2, LEAF_FOOT * side
    both = "".join(_leaf(petal, foot, angle, 1.0, tint) for angle in (-RISING, pi + RISING))
    return f'<g stroke="{INK}" stroke-width="{mm(line_width(side))}" stroke-linejoin="round">{both}</g>'


def _wreath(portrait: Portrait, label: Space) -> Iterator[str]:
    """Lay the petals of the mark around the label, on a stem, in their order again and again."""
    scale = border_scale(label.width, label.height)
    leaf, every = scale * LEAF, scale * LEAF_EVERY
    flower, tint = flower_of(portrait, 2 * leaf), tint_of(portrait)
    petals = sorted(flower.petals, key=lambda one: -one.length)
    longest = petals[0].length
    stem = _Stem(label)
    count = max(8, round(stem.length / every))
    yield f'<g stroke="{INK}" stroke-width="0.2" stroke-linejoin="round">{stem.path}'
    for number in range(count):
        petal, (point, along) = petals[number % len(petals)], stem.at(number / count)
        turned = along + (TURNED if number % 2 else -TURNED)
        fill = tint if number % 2 else paler(tint, 0.55)
        yield _leaf(petal, point, turned, leaf * sqrt(petal.length / longest) / petal.length, fill)
    yield "</g>"


def _leaf(petal: PetalShape, at: Point, angle: float, scale: float, fill: str) -> str:
    foot, tip = petal.foot, petal.outline[6]
    turn = angle - atan2(tip[1] - foot[1], tip[0] - foot[0])

    def put(point: Point) -> str:
        x, y = point[0] - foot[0], point[1] - foot[1]
        return f"{mm(at[0] + scale * (x * cos(turn) - y * sin(turn)))} {mm(at[1] + scale * (x * sin(turn) + y * cos(turn)))}"

    first, *rest = petal.outline
    return f'<path d="M{put(first)}C{" ".join(map(put, rest))}Z" fill="{fill}"/>'


class _Stem:
    """The line along which a wreath grows: a rectangle, or a circle."""

    def __init__(self, label: Space) -> None:
        self._label = label
        inner = label.inside(STEM_AT * border_scale(label.width, label.height))
        self._round, self._x, self._y, self._w, self._h = label.is_round, inner.x, inner.y, inner.width, inner.height
        self.length = pi * self._w if self._round else 2 * (self._w + self._h)

    @property
    def path(self) -> str:
        if self._round:
            return f'<circle cx="{mm(self._x + self._w / 2)}" cy="{mm(self._y + self._h / 2)}" r="{mm(self._w / 2)}" fill="none"/>'
        return f'<path d="M{mm(self._x)} {mm(self._y)}h{mm(self._w)}v{mm(self._h)}h-{mm(self._w)}z" fill="none"/>'

    def at(self, part: float) -> tuple[Point, float]:
        """Return a point, and the direction in which the stem runs there."""
        if self._round:
            angle = 2 * pi * part - pi / 2
            radius = self._w / 2
            return (self._x + radius * (1 + cos(angle)), self._y + radius * (1 + sin(angle))), angle + pi / 2
        left = part * self.length
        corners = ((self._w, 0.0, 1, 0), (self._h, pi / 2, 0, 1), (self._w, pi, -1, 0), (self._h, -pi / 2, 0, -1))
        x, y = self._x, self._y
        for side, angle, right, down in corners:
            if left <= side:
                return (x + right * left, y + down * left), angle
            x, y, left = x + right * side, y + down * side, left - side
        return (self._x, self._y), 0.0
