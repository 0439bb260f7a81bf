"""The names of the PDF library that are not public and that this stage rests on, apart from those of `drawn_once`.

They are three: `_page_box`, the boxes of a page as they were laid out, its text before its margins; `is_column`, what a box of several
columns is made of; and `mark`, what a box has become in the tags of the PDF. No other module writes them;
`tests/press/test_private_names.py` tells when a version of the library has them otherwise.
"""

from collections.abc import Iterator
from typing import Any


def boxes_of(page: Any, *, placeholders: bool = False) -> Iterator[Any]:
    """Yield all boxes of a page that has been laid out; with placeholders also the ones that are placed by themselves."""
    yield from page._page_box.descendants(placeholders=placeholders)


def room_below(page: Any) -> float:
    """Return which share of a page's height is empty beneath its text."""
    whole = page._page_box
    pieces = whole.children[0].children[0].children
    end = pieces[-1].position_y + pieces[-1].margin_height() if pieces else whole.content_box_y()
    return float(1 - (end - whole.content_box_y()) / whole.height)


def in_columns(rendered: Any) -> bool:
    """Tell whether anything of a sheet stands in columns."""
    return any(box.is_column for page in rendered.pages for box in boxes_of(page))


def set_scope(box: Any, scope: str) -> None:
    """Mark in the tags whether a header cell heads its row or its column; a box that is in no tag has nothing to say it in."""
    mark = getattr(box, "mark", None)
    if mark is not None:
        mark["A"]["Scope"] = f"/{scope}"
