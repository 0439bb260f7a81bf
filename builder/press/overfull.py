"""Boxes that have to hold their text, such as those of a label, and do not.

Such a box has a width of its own and the class `holds`. The library tells of no overflow, so that each is compared with what it holds.
"""

from typing import Any

from builder.press.private_names import boxes_of

TOLERANCE = 0.01


def overfull(rendered: Any) -> list[str]:
    """Return the boxes that hold text, by page and place on it, whose text runs over an edge; boxes placed by themselves count too."""
    found = []
    for number, page in enumerate(rendered.pages, start=1):
        # The first box of an element is its own; the ones inside are its lines.
        holders = {box.element: box for box in reversed(list(boxes_of(page, placeholders=True))) if _holds(box)}
        found += [f"page {number}, box {place}" for place, box in enumerate(reversed(holders.values()), start=1) if _runs_over(box)]
    return found


def _holds(box: Any) -> bool:
    return box.element is not None and box.element_tag == box.element.tag and "holds" in box.element.get("class", "").split()


def _runs_over(holder: Any) -> bool:
    right = holder.content_box_x() + holder.width + TOLERANCE
    bottom = holder.content_box_y() + holder.height + TOLERANCE
    return any(_edge(box, "y") > bottom or _edge(box, "x") > right for box in holder.descendants() if box is not holder)


def _edge(box: Any, axis: str) -> float:
    """Return the far edge of a box; a box without a size of its own has none."""
    size = getattr(box, "height" if axis == "y" else "width", None)
    if not isinstance(size, (int, float)):
        return 0.0
    start = box.position_y if axis == "y" else box.position_x
    return float(start + (box.margin_height() if axis == "y" else box.margin_width()))
