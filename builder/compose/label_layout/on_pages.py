"""Items of any size flow on pages: side by side in lines, lines below each other in groups that stand together. Lengths in millimetres."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from builder.compose.label_layout.label_pages import place
from builder.compose.views.labels import PositionView

EDGE, GAP, WORDS = 9.0, 5.0, 6.0  # The edge of the pages, the gap between items, the height of a line of words.


@dataclass(frozen=True)
class Item:
    """Something that takes a place on a page, with its size; `bears` is what lies on it, from its corner, cut off at its own edges."""

    position: PositionView
    width: float
    height: float
    bears: "Item | None" = None
    at: tuple[float, float] = (0.0, 0.0)


Line = tuple[Item, ...]
Group = tuple[Line, ...]
Page = tuple[float, float]


def wide_of(page: Page) -> float:
    """Return how wide a line may be."""
    return page[0] - 2 * EDGE


def in_lines(items: Iterable[Item], wide: float) -> Iterator[Line]:
    """Break items into lines where they are wider together."""
    row: list[Item] = []
    for item in items:
        if row and sum(one.width + GAP for one in row) + item.width > wide:
            yield tuple(row)
            row = []
        row.append(item)
    if row:
        yield tuple(row)


def on_pages(groups: Iterable[Group], page: Page) -> Iterator[tuple[PositionView, ...]]:
    """Lay groups one below the other, a group that does not fit on what is left of a page on the next one."""
    positions: list[PositionView] = []
    y = EDGE
    for group in groups:
        lines = [line for one in group for line in in_lines(one, wide_of(page))]
        high = sum(max(item.height for item in line) + GAP for line in lines) - GAP
        if positions and y + high > page[1] - EDGE:
            yield tuple(positions)
            positions, y = [], EDGE
        for line in lines:
            tallest = max(item.height for item in line)
            if positions and y + tallest > page[1] - EDGE:
                yield tuple(positions)
                positions, y = [], EDGE
            positions += _placed(line, y)
            y += tallest + (GAP if tallest > WORDS else 1.0)
    if positions:
        yield tuple(positions)


def _placed(line: Line, y: float) -> Iterator[PositionView]:
    """Lay a line of items side by side, with what they bear on them."""
    x = EDGE
    for item in line:
        yield replace(item.position, style=place(x, y, item.width, item.height))
        if item.bears:
            on = place(x + item.at[0], y + item.at[1], item.bears.width, item.bears.height)
            yield replace(item.bears.position, style=f"{on};overflow:hidden")
        x += item.width + GAP
