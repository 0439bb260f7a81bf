"""What is drawn around a label to colour in. Lengths in millimetres.

Decided: nothing that is coloured in lies nearer to the cut than 4 mm, and every leaf holds a disc of 4 mm. Why: scissors of a child go
astray by that, and a crayon is as thick.
"""

from collections.abc import Iterator
from math import asin, cos, pi, sin

from builder.compose.label_front.space import Space
from builder.compose.ornament.flower import petal_of
from builder.compose.ornament.portrait import Portrait
from builder.compose.ornament.svg import INK, OUTLINE, WHITE, mm

CLEAR = 4.2
LEAF, BROAD, BETWEEN = 9.0, 5.6, 0.7
# How much of each edge a wreath takes, and a seam.
WREATH, SEAM = CLEAR + BROAD, CLEAR + 2 * OUTLINE

Point = tuple[float, float]


def wreath_to_colour(portrait: Portrait, label: Space) -> Iterator[str]:
    """Lay leaves of the form of a recipe's petals around a label, one behind the other."""
    outline = petal_of(portrait, LEAF, BROAD).outline
    long = max(x for x, _ in outline)
    yield f'<g fill="{WHITE}" stroke="{INK}" stroke-width="{OUTLINE}" stroke-linejoin="round">'
    inner = label.inside(CLEAR + BROAD / 2)
    for (x, y), angle in _around(inner, long) if inner.is_round else _along_sides(inner, long):
        first, *rest = ((x + u * cos(angle) - v * sin(angle), y + u * sin(angle) + v * cos(angle)) for u, v in outline)
        yield f'<path d="M{_at(first)}C{" ".join(map(_at, rest))}Z"/>'
    yield "</g>"


def _along_sides(inner: Space, long: float) -> Iterator[tuple[Point, float]]:
    """Give where each leaf begins and how it is turned: along a side as many as fit, the first clear of the last of the side before."""
    corners = ((inner.x, inner.y), (inner.x + inner.width, inner.y), (inner.x + inner.width, inner.below), (inner.x, inner.below))
    for number, (x, y) in enumerate(corners):
        side, angle = (inner.width, inner.height)[number % 2], number * pi / 2
        room = side - BROAD / 2 - BETWEEN
        count = int((room + BETWEEN) / (long + BETWEEN))
        every = long + (room - count * long) / max(1, count - 1) if count > 1 else 0.0
        begin = BROAD / 2 + BETWEEN + (0.0 if count > 1 else (room - long) / 2)
        for at in (begin + leaf * every for leaf in range(count)):
            yield (x + at * cos(angle), y + at * sin(angle)), angle


def _around(inner: Space, long: float) -> Iterator[tuple[Point, float]]:
    """Give the same on a circle: each leaf is a chord of it."""
    radius, middle = inner.width / 2, inner.y + inner.height / 2
    count = int(2 * pi / (2 * asin((long + BETWEEN) / 2 / radius)))
    chord = 2 * asin(long / 2 / radius)
    for number in range(count):
        angle = 2 * pi * number / count - pi / 2
        yield (inner.middle + radius * cos(angle), middle + radius * sin(angle)), angle + pi / 2 + chord / 2


def _at(point: Point) -> str:
    return f"{mm(point[0])} {mm(point[1])}"
