"""Sheets that ask for one page: the size of type that they get, so that each such piece stays on one page where it can.

A document that offers several sizes names them in `data-fits` on its body, the largest first, and the one in use in `data-fit`; its styles
do the rest. A piece that wants one page has the class `one-page`. Nothing is ever cut off: what fits in no size runs on to a second page.
"""

from typing import Any


def other_fits(body: Any) -> tuple[str, ...]:
    """Give the sizes that may be tried after the one in use, in order."""
    return tuple((body.get("data-fits") or "").split()[1:])


def set_fit(body: Any, fit: str) -> None:
    """Put a size into use."""
    body.set("data-fit", fit)


def runs_on(rendered: Any) -> bool:
    """Say whether a piece that wants one page takes more."""
    pages: dict[Any, set[int]] = {}
    for number, page in enumerate(rendered.pages):
        for box in page._page_box.descendants():
            if box.element is not None and box.element_tag == box.element.tag and "one-page" in box.element.get("class", "").split():
                pages.setdefault(box.element, set()).add(number)
    return any(len(numbers) > 1 for numbers in pages.values())
