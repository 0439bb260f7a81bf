"""In which size of type a sheet is set, and how closely.

A document that offers several sizes names them in `data-fits` on its body, the largest first, and the one in use in `data-fit`; its styles
do the rest. It gets the first in which every piece that wants one page takes one, and the whole no more pages than it wants. Where there is
none, pieces run on in the last, and a whole that names its pages gets the first in which it takes no more of them than in the last. Nothing
is ever cut off. What fits in one size fits in each smaller one of the same pieces: so a guess says where to begin, and what lies next to it
is tried. For that `data-holds` says, size by size, how many letters a page holds as a rule: where that is wrong it takes time, and changes
nothing.
A body may say that it can be laid out more closely (`data-closer="may"`): that is tried where so much is empty that a page could be saved,
and taken (`data-closer="is"`) where one is.
"""

from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any, Protocol

from builder.press.fitting import most_pages, piece_runs_on, pieces_for_a_page
from builder.press.private_names import in_columns, room_below


class Render(Protocol):
    """What lays a sheet out as its body says."""

    def __call__(self, *, to_be_kept: bool) -> Any:
        """Lay it out; where that is only to tell whether it fits, columns may be of any length, as it takes long to make them even."""


def laid_out(body: Any, render: Render) -> Any:
    """Lay a sheet out, by `render`, in the size that it gets, and more closely where that is offered and saves a page."""
    sizes = _Sizes(body, render)
    fitted = sizes.render(sizes.chosen())
    if body.get("data-closer") != "may" or sum(map(room_below, fitted.pages)) < 1:
        return fitted
    body.set("data-closer", "is")
    closer = render(to_be_kept=True)
    return closer if len(closer.pages) < len(fitted.pages) and not piece_runs_on(closer, body.get("data-fit") or "") else fitted


class _Sizes:
    """The sizes of one sheet, by their number, with what each has come to so far."""

    def __init__(self, body: Any, render: Render) -> None:
        self._body, self._render = body, render
        self._names = (body.get("data-fits") or body.get("data-fit") or "").split() or [""]
        self._holds = [int(letters) for letters in (body.get("data-holds") or "").split()]
        self._kept: dict[int, Any] = {}
        self._tried: dict[int, Any] = {}
        self._of_pieces: dict[int, bool] = {}

    def chosen(self) -> int:
        """Return the size that the sheet gets."""
        most = most_pages(self._body)
        last = len(self._names) - 1
        found = self._first(self._guess(most), most, pieces=True)
        if found is None and most is not None:
            pages = len(self._try(last).pages)
            found = self._first(self._guess(pages), pages, pieces=False)
        return last if found is None else found

    def render(self, size: int) -> Any:
        """Lay the sheet out in a size, which is then in use."""
        self._use(size)
        if size not in self._kept:
            as_tried = self._tried.get(size)
            self._kept[size] = self._render(to_be_kept=True) if as_tried is None or in_columns(as_tried) else as_tried
            self._tried[size] = self._kept[size]
        return self._kept[size]

    def _try(self, size: int) -> Any:
        self._use(size)
        if size not in self._tried:
            self._tried[size] = self._render(to_be_kept=False)
        return self._tried[size]

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
        return not (pieces and self._cannot_fit(size)) and self._fits(size, most, pieces)

    def _fits(self, size: int, most: int | None, pieces: bool) -> bool:
        rendered = self._try(size)
        return (most is None or len(rendered.pages) <= most) and not (pieces and piece_runs_on(rendered, self._names[size]))

    def _cannot_fit(self, size: int) -> bool:
        """Tell whether one of the two pieces with most to say takes more than a page even by itself, which is soon known."""
        if size in self._tried:
            return False
        if size not in self._of_pieces:
            pieces = [piece for piece in self._pieces(size) if _letters(piece) < _letters(self._body)]
            self._of_pieces[size] = any(self._runs_on_alone(piece, size) for piece in sorted(pieces, key=_letters)[-2:])
        return self._of_pieces[size]

    def _runs_on_alone(self, piece: Any, size: int) -> bool:
        self._use(size)
        with _alone(self._body, piece):
            return piece_runs_on(self._render(to_be_kept=False), self._names[size])

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
