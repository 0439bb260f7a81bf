"""A mark worked in cross-stitch: a flower to small crosses on a grid. Lengths in millimetres, from the corner of the square of the mark."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import count, pairwise
from math import hypot

from builder.compose.ornament.flower import Flower, along, flower_of
from builder.compose.ornament.portrait import Portrait
from builder.compose.ornament.svg import INK, mm
from builder.compose.ornament.tints import paler, tint_of

# So many stitches on the side of a mark, none finer or coarser than these; how much of its cell one takes, and how thick its thread is.
STITCHES, FINEST, COARSEST, FILLED, THREAD = 26, 0.72, 1.15, 0.78, 0.3
TONES = (0.0, 0.3, 0.52)  # How much paler neighbouring petals are, in turn.
BACKSTITCH, EYE = 0.17, 0.62  # How thick the line between petals is, and how much of the radius of the heart is stitched.

Cell = tuple[int, int]
Point = tuple[float, float]


def stitched(portrait: Portrait, side: float) -> str:
    """Draw the mark in crosses: each petal in one of three tones of its colour, its edge in backstitch, the middle of the heart in ink."""
    cell = min(COARSEST, max(FINEST, side / STITCHES))
    flower, tint = flower_of(portrait, side), tint_of(portrait)
    cells = _cells(flower, cell, int(side / cell))
    drawn = []
    for number, tone in enumerate(TONES):
        at = [place for place, petal in cells.items() if petal >= 0 and petal % len(TONES) == number]
        drawn.append(f'<path d="{_crosses(at, cell)}" stroke="{paler(tint, tone)}"/>' if at else "")
    drawn.append(f'<path d="{_crosses(_eye(flower, cell), cell)}" stroke="{INK}"/>')
    drawn.append(f'<path d="{_backstitch(cells, cell)}" stroke="{INK}" stroke-width="{BACKSTITCH}"/>')
    return f'<g fill="none" stroke-width="{THREAD}" stroke-linecap="round">{"".join(drawn)}</g>'


def _crosses(cells: Iterable[Cell], cell: float) -> str:
    return "".join(_cross(column, row, cell) for column, row in cells)


def _backstitch(cells: Mapping[Cell, int], cell: float) -> str:
    """Return the lines between cells of different petals, and around all of them, as long as they run on."""
    runs: list[str] = []
    for down in (False, True):
        edges = {(column, row) for column, row in cells} | {(column + (not down), row + down) for column, row in cells}
        lines = {at for at in edges if cells.get(at) != cells.get((at[0] - (not down), at[1] - down))}
        along = (1, 0) if down else (0, 1)
        for column, row in sorted(lines):
            if (column - along[0], row - along[1]) not in lines:
                long = next(steps for steps in count(1) if (column + steps * along[0], row + steps * along[1]) not in lines)
                runs.append(f"M{mm(column * cell)} {mm(row * cell)}{'h' if down else 'v'}{mm(long * cell)}")
    return "".join(runs)


def _eye(flower: Flower, cell: float) -> Iterator[Cell]:
    """Yield the cells in the middle of the heart."""
    (x, y), radius = flower.heart.at, flower.heart.radius * EYE
    whole = range(int(flower.side / cell))
    yield from ((a, b) for a in whole for b in whole if hypot((a + 0.5) * cell - x, (b + 0.5) * cell - y) <= radius)


def _cross(column: int, row: int, cell: float) -> str:
    long, off = mm(FILLED * cell), (1 - FILLED) / 2 * cell
    return f"M{mm(column * cell + off)} {mm(row * cell + off)}l{long} {long}m-{long} 0l{long} -{long}"


def _cells(flower: Flower, cell: float, most: int) -> dict[Cell, int]:
    """Return which cells are stitched, each with the number of its petal from 0; those of the heart, which stay bare, with -1."""
    found: dict[Cell, int] = {}
    for number, petal in enumerate(flower.petals):
        points = along(petal.outline)
        edge = [*points, points[0]]
        for row in range(most):
            for left, right in _spans(edge, (row + 0.5) * cell):
                found |= {(column, row): number for column in range(most) if left <= (column + 0.5) * cell <= right}
    x, y = flower.heart.at
    return {
        (column, row): -1 if hypot((column + 0.5) * cell - x, (row + 0.5) * cell - y) <= flower.heart.radius else number
        for (column, row), number in found.items()
    }


def _spans(edge: Sequence[Point], y: float) -> list[tuple[float, float]]:
    """Return where a line at a height lies within a closed outline, from its left to its right."""
    crossed = sorted(x1 + (y - y1) / (y2 - y1) * (x2 - x1) for (x1, y1), (x2, y2) in pairwise(edge) if (y1 <= y < y2) or (y2 <= y < y1))
    return [(crossed[at], crossed[at + 1]) for at in range(0, len(crossed) - 1, 2)]
