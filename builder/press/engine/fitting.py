"""What has to fit: pieces that ask for one page, a whole that asks for so many, and boxes that have to hold their text.

A piece that wants one page has the class `one-page`; one that wants it in some sizes alone names those in `data-in`. A body may name the
most pages that it wants in `data-most`. Which size of type all that gets is decided in `sizes`.
A box that has to hold its text, as those of a label, has a width of its own and the class `holds`. The library tells of no overflow, so
that each is compared with what it holds.

Decided: a piece that wants one page (`one-page`) gets smaller type until it fits, and no height: a box of fixed height drops what runs
over. Why: an amount that is missing is worse than a second page.
"""

from typing import Any

from builder.press.engine.private_names import boxes_of

TOLERANCE = 0.01


def pieces_for_a_page(body: Any, size: str) -> list[Any]:
    """Return what wants one page in a size of type."""
    return [element for element in body.iter() if _wants_one_page(element, size)]


def most_pages(body: Any) -> int | None:
    """Return how many pages a sheet wants at the most; None where it names no number."""
    return int(body.get("data-most")) if body.get("data-most") else None


def piece_runs_on(rendered: Any, size: str) -> bool:
    """Tell whether a piece that wants one page takes more."""
    pages: dict[Any, set[int]] = {}
    for number, page in enumerate(rendered.pages):
        for box in boxes_of(page):
            if box.element is not None and box.element_tag == box.element.tag and _wants_one_page(box.element, size):
                pages.setdefault(box.element, set()).add(number)
    return any(len(numbers) > 1 for numbers in pages.values())


def _wants_one_page(element: Any, size: str) -> bool:
    sizes = (element.get("data-in") or "").split()
    return "one-page" in (element.get("class") or "").split() and (not sizes or size in sizes)


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
