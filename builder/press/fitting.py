"""What has to fit: pieces that ask for one page, by the size of type that they get, and boxes that have to hold their text, as those of
a label.

A document that offers several sizes names them in `data-fits` on its body, the largest first, and the one in use in `data-fit`; its styles
do the rest. A piece that wants one page has the class `one-page`; one that wants it in some sizes alone names those in `data-in`. A body
may name the most pages that it wants in `data-most`: where it takes more, its type is as large as that number of pages allows. Nothing is
ever cut off: what fits in no size runs on. A body may say that it can be laid out more closely (`data-closer="may"`): that is tried where
so much is empty that a page could be saved, and taken (`data-closer="is"`) where one is.
A box that has to hold its text has a width of its own and the class `holds`. The library tells of no overflow, so that each is compared
with what it holds.

Decided: a piece that wants one page (`one-page`) gets smaller type until it fits, and no height: a box of fixed height drops what runs
over. Why: an amount that is missing is worse than a second page.
"""

from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

from builder.press.private_names import boxes_of, room_below

TOLERANCE = 0.01


def other_fits(body: Any) -> tuple[str, ...]:
    """Return the sizes that may be tried after the one in use, in order."""
    return tuple((body.get("data-fits") or "").split()[1:])


def set_fit(body: Any, fit: str) -> None:
    """Put a size into use."""
    body.set("data-fit", fit)


@contextmanager
def only_the_longest(body: Any) -> Iterator[bool]:
    """Leave of all pieces that want one page only the one with most to say, for as long as this lasts; say whether any was taken out.

    A size in which it does not fit need not be tried for all, which are often one card with other numbers. Where there is but one other
    size, nothing is won by that.
    """
    fit = body.get("data-fit")
    pieces = [(parent, child) for parent in body.iter() for child in parent if _wants_one_page(child, fit)]
    longest = max(pieces, key=lambda piece: len("".join(piece[1].itertext())), default=None)
    inside = set(longest[1].iter()) if longest else set()
    before = {parent: list(parent) for parent, _ in pieces}
    for parent, child in pieces:
        if child not in inside:
            parent.remove(child)
    try:
        yield len(pieces) > 1 and len(other_fits(body)) > 1
    finally:
        for parent, children in before.items():
            parent[:] = children


def wants_few_pages(body: Any) -> bool:
    """Tell whether a sheet names the most pages that it wants."""
    return bool(body.get("data-most"))


def runs_on(rendered: Any, body: Any) -> bool:
    """Tell whether a piece that wants one page takes more, or the whole more pages than it wants."""
    if len(rendered.pages) > int(body.get("data-most") or len(rendered.pages)):
        return True
    pages: dict[Any, set[int]] = {}
    for number, page in enumerate(rendered.pages):
        for box in boxes_of(page):
            if box.element is not None and box.element_tag == box.element.tag and _wants_one_page(box.element, body.get("data-fit")):
                pages.setdefault(box.element, set()).add(number)
    return any(len(numbers) > 1 for numbers in pages.values())


def _wants_one_page(element: Any, fit: str | None) -> bool:
    sizes = (element.get("data-in") or "").split()
    return "one-page" in (element.get("class") or "").split() and (not sizes or fit in sizes)


def may_be_closer(rendered: Any, body: Any) -> bool:
    """Tell whether a sheet can be laid out more closely, and leaves in all as much empty as a page holds."""
    return body.get("data-closer") == "may" and sum(map(room_below, rendered.pages)) >= 1


def set_closer(body: Any) -> None:
    """Lay out more closely from now on."""
    body.set("data-closer", "is")


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
