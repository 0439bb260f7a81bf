"""In which size of type a sheet is set, and how closely.

A document that offers several sizes names them in `data-fits` on its body, the largest first, and the one in use in `data-fit`; its styles
do the rest. It gets the first in which every piece that wants one page takes one, and the whole no more pages than it wants. Where there is
none, pieces run on in the last, and a whole that names its pages gets the first in which it takes no more of them than in the last. Nothing
is ever cut off. What fits in one size fits in each smaller one of the same pieces: so a guess says where to begin, and what lies next to it
is tried. For that `data-holds` says, size by size, how many letters a page holds as a rule. By these figures the height that a text takes
in one size also says what it takes in another: a size in which that is clearly too much is not tried.
A body may name ways in which it can be laid out more closely (`data-closers`), the one that parts least first: where so much is empty that
a page could be saved, the first that saves as many as the last is taken (`data-closer`).
"""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from math import ceil
from typing import Any

from builder.press.engine.fitting import most_pages, piece_runs_on, pieces_for_a_page
from builder.press.engine.private_names import room_below

# What a text takes in another size is known this closely by what it takes in one: more than so much of a page does not fit on it.
CLEARLY_TOO_MUCH = 1.03

# What lays a sheet out as its body says.
Render = Callable[[], Any]


def laid_out(body: Any, render: Render) -> Any:
    """Lay a sheet out, by `render`, in the size that it gets, and more closely where that is offered and saves a page."""
    sizes = _Sizes(body, render)
    best = sizes.render(sizes.chosen())
    ways = (body.get("data-closers") or "").split()
    if not ways or sum(map(room_below, best.pages)) < 1:
        return best

    def closer(way: str) -> Any:
        body.set("data-closer", way)
        return render()

    # What the last way does not save none of them does.
    closest = closer(ways[-1])
    if len(closest.pages) == len(best.pages) or piece_runs_on(closest, body.get("data-fit") or ""):
        return best
    parting_less = (one for one in map(closer, ways[:-1]) if len(one.pages) == len(closest.pages))
    return next(parting_less, closest)


class _Sizes:
    """The sizes of one sheet, by their number, with what each has come to so far."""

    def __init__(self, body: Any, render: Render) -> None:
        self._body, self._render = body, render
        self._names = (body.get("data-fits") or body.get("data-fit") or "").split() or [""]
        self._holds = [int(letters) for letters in (body.get("data-holds") or "").split()]
        self._laid_out: dict[int, Any] = {}
        self._of_pieces: dict[int, bool] = {}

    def chosen(self) -> int:
        """Return the size that the sheet gets."""
        most = most_pages(self._body)
        last = len(self._names) - 1
        needed = self._pages_needed(most)
        found = None if needed else self._first(self._guess(most), most, pieces=True)
        if found is None and most is not None:
            pages = needed or len(self.render(last).pages)
            found = self._first(self._guess(pages), pages, pieces=False)
        return last if found is None else found

    def _pages_needed(self, most: int | None) -> int | None:
        """Return how many pages a sheet takes in the last size where these are clearly more than it wants; None where they may not be."""
        if most is None or len(self._holds) < len(self._names) or 0 in self._holds:
            return None
        expected = ceil(_letters(self._body) / self._holds[-1])
        if expected <= most:
            return None
        at = self._guess(expected)
        pages = len(self.render(at).pages)
        clearly = self._height(at, len(self._names) - 1) / CLEARLY_TOO_MUCH
        return pages if most < pages == ceil(clearly) else None

    def render(self, size: int) -> Any:
        """Lay the sheet out in a size, which is then in use."""
        self._use(size)
        if size not in self._laid_out:
            self._laid_out[size] = self._render()
        return self._laid_out[size]

    def _first(self, at: int, most: int | None, *, pieces: bool) -> int | None:
        """Return the first size in which all fits, tried from one of them on; None where it does in none."""
        self.render(at)
        while not self._fits(at, most, pieces):
            at = next((size for size in range(at + 1, len(self._names)) if not (pieces and self._cannot_fit(size))), len(self._names))
            if at == len(self._names):
                return None
        of_other_pieces = (size for size in range(at) if self._pieces(size) != self._pieces(size + 1))
        at = next((size for size in of_other_pieces if self._fits_too(size, most, pieces)), at)
        while at > 0 and self._fits_too(at - 1, most, pieces):
            at -= 1
        return at

    def _fits_too(self, size: int, most: int | None, pieces: bool) -> bool:
        return not self._clearly_too_large(size, most) and not (pieces and self._cannot_fit(size)) and self._fits(size, most, pieces)

    def _fits(self, size: int, most: int | None, pieces: bool) -> bool:
        rendered = self.render(size)
        return (most is None or len(rendered.pages) <= most) and not (pieces and piece_runs_on(rendered, self._names[size]))

    def _clearly_too_large(self, size: int, most: int | None) -> bool:
        """Tell by how the next smaller size was laid out, where it was, that all of a sheet takes more pages than it may in this one."""
        if size + 1 not in self._laid_out or size + 1 >= len(self._holds) or not self._holds[size]:
            return False
        pieces = self._pieces(size)
        may_take = 1 if len(pieces) == 1 and _letters(pieces[0]) == _letters(self._body) else most
        return may_take is not None and self._height(size + 1, size) > may_take * CLEARLY_TOO_MUCH

    def _height(self, laid_out: int, size: int) -> float:
        """Return how many pages a sheet should fill in a size, by what it fills in another, in which it was laid out."""
        filled = sum(1 - room_below(page) for page in self._laid_out[laid_out].pages)
        return filled * self._holds[laid_out] / self._holds[size]

    def _cannot_fit(self, size: int) -> bool:
        """Tell whether one of the two pieces with most to say takes more than a page even by itself, which is soon known."""
        if size in self._laid_out:
            return False
        if size not in self._of_pieces:
            pieces = [piece for piece in self._pieces(size) if _letters(piece) < _letters(self._body)]
            self._of_pieces[size] = any(self._runs_on_alone(piece, size) for piece in sorted(pieces, key=_letters)[-2:])
        return self._of_pieces[size]

    def _runs_on_alone(self, piece: Any, size: int) -> bool:
        self._use(size)
        with _alone(self._body, piece):
            return piece_runs_on(self._render(), self._names[size])

    def _guess(self, most: int | None) -> int:
        """Return the size in which each piece should take its page, and the rest no more than the other pages."""
        for size, held in zip(range(len(self._names)), self._holds, strict=False):  # a studio's own sheet may name more
            pieces = [_letters(piece) for piece in self._pieces(size)]
            others = most - len(pieces) if most else 0
            rest = (_letters(self._body) - sum(pieces)) / others if others > 0 else 0
            if max((rest, *pieces)) <= held:
                return size
        return len(self._names) - 1 if self._holds else 0

    def _pieces(self, size: int) -> list[Any]:
        return pieces_for_a_page(self._body, self._names[size])

    def _use(self, size: int) -> None:
        if self._names[size]:
            self._body.set("data-fit", self._names[size])


def _letters(element: Any) -> int:
    return len(" ".join("".join(element.itertext()).split()))


@contextmanager
def _alone(body: Any, piece: Any) -> Iterator[None]:
    """Take out of a body all but one piece in it, for as long as this lasts."""
    parents = {child: parent for parent in body.iter() for child in parent}
    before = []
    child = piece
    while child is not body:
        parent = parents[child]
        before.append((parent, list(parent)))
        parent[:] = [child]
        child = parent
    try:
        yield
    finally:
        for parent, children in before:
            parent[:] = children
