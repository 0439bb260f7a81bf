"""Leaves of the form of a recipe's petals: sprays behind a mark, and a garland around a label. Lengths in millimetres."""

from collections.abc import Iterator
from itertools import pairwise
from math import atan2, cos, pi, sin, sqrt

from builder.compose.label_front.space import Space
from builder.compose.ornament.flower import petal_of
from builder.compose.ornament.portrait import Portrait
from builder.compose.ornament.svg import INK, mm
from builder.compose.ornament.tints import paler, tint_of

STEM = 0.22
# A spray: the length of its largest leaf to the side of the mark, how slim leaves are, how much smaller each is, and how they stand off.
SPRAY_LEAF, SLIM, SMALLER, SPREAD, UPWARDS = 0.36, 0.4, 0.84, 0.62, 0.12
LEAST_PAIRS, MOST_PAIRS = 2, 5
# A garland: its leaves, how far apart they stand, how far off the edge the stem runs, how round its corners are.
LEAF, EVERY, STEM_AT, CORNER = 3.5, 2.4, 3.05, 4.5

Point = tuple[float, float]


def sprays(portrait: Portrait, middle: Point, start: float, reach: float, side: float) -> str:
    """Draw a spray to the left and one to the right of a mark, from `start` off its middle as far as `reach`; none where that is little."""
    pairs = list(_pairs(start, reach, SPRAY_LEAF * side))
    if len(pairs) < LEAST_PAIRS:
        return ""
    tint, outline, (x, y) = tint_of(portrait), leaf_of(portrait), middle
    tip, last = pairs[-1][0] + 0.62 * pairs[-1][1], pairs[-1][1] * SMALLER
    sag = 0.1 * (tip - start)
    stem, leaves = [], []
    for way in (1, -1):
        bend = f"{mm(x + way * (start + (tip - start) * 0.4))} {mm(y + sag)}"
        stem.append(f"M{mm(x + way * start * 0.8)} {mm(y + sag)}Q{bend} {mm(x + way * tip)} {mm(y - sag)}")
        for at, long in pairs:
            point = x + way * at, y + sag * (1 - 2 * (at - start) / (tip - start))
            leaves += [leaf(outline, point, turn - UPWARDS if way > 0 else pi - turn + UPWARDS, long) for turn in (-SPREAD, SPREAD)]
        leaves.append(leaf(outline, (x + way * tip, y - sag), -UPWARDS if way > 0 else pi + UPWARDS, last))
    fills = "".join(f'<path d="{"".join(leaves[first::2])}" fill="{paler(tint, pale)}"/>' for first, pale in ((0, 0.4), (1, 0.0)))
    return f'<path d="{"".join(stem)}" fill="none" stroke="{INK}" stroke-width="{STEM}"/><g stroke="{INK}" stroke-width="0.16">{fills}</g>'


def _pairs(start: float, reach: float, long: float) -> Iterator[tuple[float, float]]:
    """Yield where each pair of leaves stands and how long it is, ever smaller, as far as the last leaf ends within reach."""
    at = start
    for _ in range(MOST_PAIRS):
        if at + 0.62 * long + SMALLER * long > reach:
            return
        yield at, long
        at += 0.62 * long
        long *= SMALLER


def garland(portrait: Portrait, label: Space, scale: float, crown: float) -> str:
    """Draw a garland: two stems from the middle of the lowest edge up both sides to the mark at the top, whose side is `crown`."""
    tint, outline, long = tint_of(portrait), leaf_of(portrait), scale * LEAF
    path = _Way(label, scale * STEM_AT, 0.0 if label.is_round else scale * CORNER)
    begin, end = 0.004, 1 - (0.62 * crown / 2 + 0.3 * long) / path.length if crown else 0.99
    count = max(3, round((end - begin) * path.length / (scale * EVERY)))
    dark: list[str] = []
    pale: list[str] = []
    for number in range(count):
        (x, y), along = path.at(begin + (end - begin) * number / count)
        inner = number % 2
        turned = along + (0.6 if inner else -0.6)
        for way in (1, -1):
            point, angle = ((x, y), turned) if way > 0 else ((2 * label.middle - x, y), pi - turned)
            (dark if inner else pale).append(leaf(outline, point, angle, long * (0.76 if inner else 0.94)))
    stems = "".join(path.drawn(begin, end, way) for way in (1, -1))
    return (
        f'<path d="{stems}" fill="none" stroke="{INK}" stroke-width="{STEM}"/><g stroke="{INK}" stroke-width="0.14">'
        f'<path d="{"".join(pale)}" fill="{paler(tint, 0.5)}"/><path d="{"".join(dark)}" fill="{tint}"/></g>'
    )


def leaf_of(portrait: Portrait) -> tuple[Point, ...]:
    """Return a leaf of the form of the petals of a portrait, one long, from the origin to the right."""
    outline = petal_of(portrait, 1.0, SLIM).outline
    far = max(x for x, _ in outline)
    return tuple((x / far, y / far) for x, y in outline)


def leaf(outline: tuple[Point, ...], at: Point, angle: float, long: float) -> str:
    """Return the path of a leaf that grows from a point in a direction."""
    along, over = long * cos(angle), long * sin(angle)
    first, *rest = (f"{mm(at[0] + u * along - v * over)} {mm(at[1] + u * over + v * along)}" for u, v in outline)
    return f"M{first}C{' '.join(rest)}Z"


class _Way:
    """The right half of the line along which a garland grows, from the middle of the lowest edge to that of the highest, as points."""

    def __init__(self, label: Space, off: float, corner: float) -> None:
        inner = label.inside(off)
        self._middle = label.middle
        if label.is_round:
            radius, y = inner.width / 2, inner.y + inner.height / 2
            self._points = [(label.middle + radius * sin(pi * step / 90), y + radius * cos(pi * step / 90)) for step in range(91)]
        else:
            right, lowest = inner.x + inner.width, inner.below
            turns = [pi / 2 * step / 10 for step in range(11)]
            lower = [(right - corner + corner * sin(turn), lowest - corner + corner * cos(turn)) for turn in turns]
            upper = [(right - corner + corner * cos(turn), inner.y + corner - corner * sin(turn)) for turn in turns]
            self._points = [(label.middle, lowest), *lower, *upper, (label.middle, inner.y)]
        self._steps = [sqrt((u - x) ** 2 + (v - y) ** 2) for (x, y), (u, v) in pairwise(self._points)]
        self.length = sum(self._steps)

    def at(self, part: float) -> tuple[Point, float]:
        """Return a point at a part of the way, and the direction there."""
        left = part * self.length
        for number, step in enumerate(self._steps):
            if left <= step or number == len(self._steps) - 1:
                (x, y), (u, v) = self._points[number], self._points[number + 1]
                share = left / step if step else 0.0
                return (x + (u - x) * share, y + (v - y) * share), atan2(v - y, u - x)
            left -= step
        return self._points[-1], 0.0

    def drawn(self, begin: float, end: float, way: int) -> str:
        """Return a part of the way as a path, mirrored where `way` is -1."""
        parts = [begin + (end - begin) * step / 60 for step in range(61)]
        points = [self.at(part)[0] for part in parts]
        return "M" + " ".join(f"{mm(x if way > 0 else 2 * self._middle - x)} {mm(y)}" for x, y in points)
