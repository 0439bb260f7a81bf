"""Where sheets lie in a pack that is printed on both sides: each begins on a front page, and so does each piece of one."""

from collections.abc import Sequence
from typing import NamedTuple


class Piece(NamedTuple):
    """So many pages in a row of a pack, the first of which, counted from 1, lies on a front page."""

    first: int
    pages: int

    @property
    def last(self) -> int:
        """Give the last of its pages."""
        return self.first + self.pages - 1

    @property
    def paper(self) -> int:
        """Give the number of sheets of paper that it takes, printed on both sides."""
        return self.pages - self.pages // 2


def laid_one_after_another(sheets: Sequence[tuple[int, int]], first: int) -> tuple[tuple[Piece, ...], ...]:
    """Lay sheets from a front page on; each is the number of its pages and of its pieces. Give the pieces of each.

    A sheet whose pages are no multiple of its pieces is one piece; one without pages has none.
    """
    laid: list[tuple[Piece, ...]] = []
    for pages, pieces in sheets:
        each = pages // pieces if pages and pages % pieces == 0 else pages
        here = []
        for _ in range(pages // each if each else 0):
            here.append(Piece(first, each))
            first += each + each % 2
        laid.append(tuple(here))
    return tuple(laid)
