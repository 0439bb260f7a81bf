"""What is drawn around a label to colour in. Lengths in millimetres.

Decided: nothing that is coloured in lies nearer to the cut than 4 mm, and every leaf holds a disc of 4 mm. Why: scissors of a child go
astray by that, and a crayon is as thick.
"""

from collections.abc import Iterator, Sequence
from math import asin, cos, pi, sin

from builder.compose.label_front.space import Space
from builder.compose.ornament.colouring import to_colour
from builder.compose.ornament.flower import petal_of
from builder.compose.ornament.portrait import Portrait
from builder.compose.ornament.svg import INK, OUTLINE, WHITE, mm

CLEAR = 4.2
LEAF, BROAD, BETWEEN = 9.0, 5.6, 0.7
# How much of each edge a wreath takes, and a seam.
WREATH, SEAM = CLEAR + BROAD, CLEAR + 2 * OUTLINE
# The width of a bar of fields, the height of a woven band, and the least length of a field in them: 4 mm and what the line takes.
BAR, WOVEN, LEAST = 4.7, 4.7, 4.7
# How much of its square two leaves take from a mark.
LEAVES, FOOT, RISING = 7.2, 1.9, 0.28

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


def leaves_to_colour(portrait: Portrait, side: float) -> Iterator[str]:
    """Lay two leaves below a mark, in its square of a side."""
    outline = petal_of(portrait, LEAF, BROAD).outline
    turns = [(way, cos(RISING), sin(RISING)) for way in (1, -1)]
    y = side - FOOT
    yield f'<g fill="{WHITE}" stroke="{INK}" stroke-width="{OUTLINE}" stroke-linejoin="round">'
    for way, along, up in turns:
        first, *rest = ((side / 2 + way * (BETWEEN + u * along + v * up), y - u * up + v * along) for u, v in outline)
        yield f'<path d="M{_at(first)}C{" ".join(map(_at, rest))}Z"/>'
    yield "</g>"


def bar_to_colour(portrait: Portrait, label: Space) -> Iterator[str]:
    """Stand a bar along the left edge: a field for each ingredient, from the foot up, the longer the more there is of it."""
    long = label.height - 2 * CLEAR
    parts = to_colour(portrait, long).parts
    while len(parts) * LEAST > 0.75 * long:
        parts = parts[:-1]
    free, total = long - len(parts) * LEAST, float(sum(part.share for part in parts))
    below = label.below - CLEAR
    for part in parts:
        high = LEAST + free * float(part.share) / total
        yield _cell(label.x + CLEAR, below - high, BAR, high)
        below -= high


def woven_to_colour(label: Space, y: float) -> Iterator[str]:
    """Lay a woven band across a label: short and long fields in turn."""
    wide = label.width - 2 * CLEAR
    pairs = int((wide - LEAST) / (3 * LEAST))
    short = wide / (3 * pairs + 1)
    x = label.x + CLEAR
    for number in range(2 * pairs + 1):
        each = 2 * short if number % 2 else short
        yield _cell(x, y, each, WOVEN)
        x += each


def _cell(x: float, y: float, width: float, height: float) -> str:
    size = f'width="{mm(width)}" height="{mm(height)}"'
    return f'<rect x="{mm(x)}" y="{mm(y)}" {size} fill="{WHITE}" stroke="{INK}" stroke-width="{OUTLINE}"/>'


def _along_edges(inner: Space, long: float, edges: Sequence[int]) -> Iterator[tuple[Point, float]]:
    """Yield where each leaf begins and how it is turned: along an edge as many as fit, the first clear of the last of the edge before."""
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
    """Yield the same on a circle: each leaf is a chord of it."""
    radius, middle = inner.width / 2, inner.y + inner.height / 2
    count = int(2 * pi / (2 * asin((long + BETWEEN) / 2 / radius)))
    chord = 2 * asin(long / 2 / radius)
    for number in range(count):
        angle = 2 * pi * number / count - pi / 2
        yield (inner.middle + radius * cos(angle), middle + radius * sin(angle)), angle + pi / 2 + chord / 2


def _at(point: Point) -> str:
    return f"{mm(point[0])} {mm(point[1])}"
