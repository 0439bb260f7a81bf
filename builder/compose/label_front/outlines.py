"""What is drawn around a label to colour in. Lengths in millimetres.

Decided: nothing that is coloured in lies nearer to the cut than 4 mm, and every leaf holds a disc of 4 mm. Why: scissors of a child go
astray by that, and a crayon is as thick.
"""

from collections.abc import Iterator, Sequence
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


def wreath_to_colour(portrait: Portrait, label: Space, edges: Sequence[int]) -> Iterator[str]:
    """Lay leaves of the form of a recipe's petals along some edges of a label, one behind the other; around a circle all the way."""
    outline = petal_of(portrait, LEAF, BROAD).outline
    long = max(x for x, _ in outline)
    yield f'<g fill="{WHITE}" stroke="{INK}" stroke-width="{OUTLINE}" stroke-linejoin="round">'
    inner = label.inside(CLEAR + BROAD / 2)
    for (x, y), angle in _around(inner, long) if inner.is_round else _along_edges(inner, long, edges):
        first, *rest = ((x + u * cos(angle) - v * sin(angle), y + u * sin(angle) + v * cos(angle)) for u, v in outline)
        yield f'<path d="M{_at(first)}C{" ".join(map(_at, rest))}Z"/>'
    yield "</g>"


def _along_edges(inner: Space, long: float, edges: Sequence[int]) -> Iterator[tuple[Point, float]]:
    """Give where each leaf begins and how it is turned: along an edge as many as fit, the first clear of the last of the edge before."""
    corners = ((inner.x, inner.y), (inner.x + inner.width, inner.y), (inner.x + inner.width, inner.below), (inner.x, inner.below))
    for edge in edges:
        (x, y), angle = corners[edge], edge * pi / 2
        begin = BROAD / 2 + BETWEEN if (edge - 1) % 4 in edges else -BROAD / 2
        end = (inner.width, inner.height)[edge % 2] + (0.0 if (edge + 1) % 4 in edges else BROAD / 2)
        count = int((end - begin + BETWEEN) / (long + BETWEEN))
        between = (end - begin - count * long) / (count - 1) if count > 1 else 0.0
        for at in (begin + leaf * (long + between) for leaf in range(count)):
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
