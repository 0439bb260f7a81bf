"""What lies behind the words of a composed front, as one SVG of the size of its label with the text alternative of the mark.

Lengths in millimetres from the corner of the label. The mark is that of the recipe with what was chosen, on every sheet and page the same.
"""

import re
from collections.abc import Iterator
from enum import Enum
from html import escape
from math import pi, sqrt

from builder.compose.label_front.cloth import cloth, disc
from builder.compose.label_front.designs import USUAL, Ornament, border_scale
from builder.compose.label_front.drawing import Drawing
from builder.compose.label_front.outlines import CLEAR, LEAVES, bar_to_colour, leaves_to_colour, woven_to_colour, wreath_to_colour
from builder.compose.label_front.space import Space
from builder.compose.label_front.sprays import garland, leaf, leaf_of, sprays
from builder.compose.label_front.stitches import stitched
from builder.compose.ornament.colouring import SMALLEST, to_colour
from builder.compose.ornament.portrait import Portrait
from builder.compose.ornament.svg import INK, OUTLINE, Look, flower_in, line_width, mm
from builder.compose.ornament.tints import paler, tint_of
from builder.compose.ornament.words import mark_in_words

THREAD, SEAM, SEAM_AT = 0.7, 0.5, 2.4
# How far sprays reach from the middle of their mark at the most, in parts of its side, and how far they stay off the edge; how large a mark
# is that has leaves behind it, and how far these reach, in parts of the side of its square; the white around a mark on a cloth.
REACH, CLEAR_OF_EDGE, BEFORE_LEAVES, BEHIND, PATCH = 1.9, 4.0, 0.84, 0.52, 0.57
# How far apart marks on a ground stand at the least, in parts of their side.
APART = 1.7
SQUARE_IN_CIRCLE = sqrt(0.5)

Point = tuple[float, float]

_COLOUR = re.compile("#[0-9a-f]{6}")


class Ink(Enum):
    """How a front is drawn."""

    ACCENT = "with its accent"
    GREY = "as a grey printer prints it"
    OUTLINES = "as outlines to colour in"


def drawn(drawing: Drawing, portrait: Portrait, whole: Space, ink: Ink = Ink.ACCENT, bleed: float = 0.0) -> str:
    """Return the drawing of one label; what reaches its edge goes on for the `bleed` beyond it, so a cut that is off shows no paper."""
    on = drawing.on
    parts = "".join(_parts(drawing, portrait, ink, bleed))
    if ink is Ink.GREY:
        parts = _COLOUR.sub(_grey, parts)
    right = bleed if on.width >= whole.width else 0.0
    width, height = mm(on.width + bleed + right), mm(on.height + 2 * bleed)
    outlined = ink is Ink.OUTLINES
    flower = to_colour(portrait, drawing.side - _leaves(drawing)) if outlined and drawing.side >= SMALLEST else portrait
    corner, title = mm(-bleed), escape(mark_in_words(flower))
    cut = f";border-radius:{mm(on.width / 2 + bleed)}mm" if whole.is_round else ""
    return (
        f'<svg class="drawn" style="left:{corner}mm;top:{corner}mm{cut}" xmlns="http://www.w3.org/2000/svg" width="{width}mm" '
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
    if drawing.ground and design.ornament is Ornament.ON_CLOTH:
        yield _cloth(drawing, portrait, bleed)
    elif drawing.ground:
        yield _ground(drawing.ground, label, tint, bleed)
    for x, y, width in drawing.threads:
        long = width + 2 * bleed
        yield f'<path d="M{mm(x - bleed)} {mm(y)}h{mm(long)}v{THREAD}h-{mm(long)}z" fill="{tint}"/>'
    if design.dashes:
        yield _seam(label, tint, SEAM, SEAM_AT * border_scale(label.width, label.height))
    if design.ornament is Ornament.WREATH:
        yield garland(portrait, label, border_scale(label.width, label.height), drawing.side)
    if drawing.side:
        yield from _printed(drawing, portrait)


def _printed(drawing: Drawing, portrait: Portrait) -> Iterator[str]:
    """Draw the mark as its design has it: stitched, again and again on a ground, before sprays or leaves, or alone."""
    design, side, x, y = drawing.design, drawing.side, drawing.x, drawing.y
    if design.dashes:
        yield _at(x, y, stitched(portrait, side))
    elif design.ornament is Ornament.ON_GROUND:
        yield _at(x, y, flower_in(portrait, side, Look.LINES))
        beside = flower_in(portrait, side, Look.LINES, has_veins=False)
        yield from (_at(left, y, beside) for left in _frieze(drawing))
    elif design.leaves:
        yield from _before_leaves(drawing, portrait)
    else:
        yield _at(x, y, flower_in(portrait, side, Look.TINTED))


def _before_leaves(drawing: Drawing, portrait: Portrait) -> Iterator[str]:
    """Draw a mark in the middle of a label before sprays, another before leaves that look out behind it."""
    side, middle = drawing.side, (drawing.x + drawing.side / 2, drawing.y + drawing.side / 2)
    found = sprays(portrait, (middle[0], middle[1] + 0.06 * side), 0.4 * side, _reach(drawing), side) if _is_centred(drawing) else ""
    if found:
        yield found
        yield _at(drawing.x, drawing.y, flower_in(portrait, side, Look.TINTED))
        return
    off = side * (1 - BEFORE_LEAVES) / 2
    yield _at(drawing.x, drawing.y, _corsage(portrait, side))
    yield _at(drawing.x + off, drawing.y, flower_in(portrait, side * BEFORE_LEAVES, Look.TINTED))


def _is_centred(drawing: Drawing) -> bool:
    return abs(drawing.x + drawing.side / 2 - drawing.on.middle) < 0.1


def _reach(drawing: Drawing) -> float:
    """Return how far from the middle of a label sprays reach at the height of its mark."""
    on = drawing.on
    free = on.across(drawing.y + 0.25 * drawing.side, drawing.y + 0.8 * drawing.side)[1] / 2 - CLEAR_OF_EDGE
    return min(free, REACH * drawing.side)


def _frieze(drawing: Drawing) -> Iterator[float]:
    """Yield where marks begin to the left and right of one in the middle, the last ones halved by the edges; none where it stands aside."""
    half = drawing.on.width / 2
    if not _is_centred(drawing):
        return
    step = max(drawing.side * 0.96, half / max(1, int(half / (APART * drawing.side))))
    count = int((half + drawing.side * 0.45) / step)
    yield from (drawing.x + number * step for number in range(-count, count + 1) if number)


def _cloth(drawing: Drawing, portrait: Portrait, bleed: float) -> str:
    """Draw the cloth from the edges of the label, and the white patch of the mark."""
    x, y, width, height = drawing.ground or (0.0, 0.0, 0.0, 0.0)
    right = bleed if width >= drawing.on.width else 0.0
    woven = cloth(portrait, x - bleed, y - bleed, width + bleed + right, height + bleed)
    return woven + disc(drawing.x + drawing.side / 2, drawing.y + drawing.side / 2, PATCH * drawing.side)


def _at(x: float, y: float, drawing: str) -> str:
    return f'<g transform="translate({mm(x)} {mm(y)})">{drawing}</g>'


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
    if drawing.side >= SMALLEST:
        yield _mark_to_colour(drawing, portrait)


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


def _mark_to_colour(drawing: Drawing, portrait: Portrait) -> str:
    side = drawing.side - _leaves(drawing)
    leaves = "".join(leaves_to_colour(portrait, drawing.side)) if side < drawing.side else ""
    at = f"{mm(drawing.x)} {mm(drawing.y)}"
    right = f' transform="translate({mm((drawing.side - side) / 2)} 0)"' if leaves else ""
    return f'<g transform="translate({at})">{leaves}<g{right}>{flower_in(portrait, side, Look.TO_COLOUR_IN)}</g></g>'


def _leaves(drawing: Drawing) -> float:
    """Return how much less high a mark to colour in is for the leaves below it; none where it would have no fields."""
    return LEAVES if drawing.design.leaves and drawing.side - LEAVES >= SMALLEST else 0.0


def _corsage(portrait: Portrait, side: float) -> str:
    """Lay leaves of the form of the petals behind a mark, so that they look out between them."""
    tint, outline, middle = paler(tint_of(portrait), 0.3), leaf_of(portrait), (side / 2, side / 2)
    each = "".join(f'<path d="{leaf(outline, middle, angle, BEHIND * side)}" fill="{tint}"/>' for angle in (0.3, 0.95, pi - 0.95, pi - 0.3))
    return f'<g stroke="{INK}" stroke-width="{mm(line_width(side))}" stroke-linejoin="round">{each}</g>'
