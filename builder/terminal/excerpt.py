"""A line of the studio's text becomes what is shown of it, and a mark beneath, however long the line is and whatever stands in it."""

from dataclasses import dataclass

from rich.cells import cell_len

from builder.model.place import Place
from builder.terminal.consoles import plain

_LONGEST, _BEFORE = 160, 60


@dataclass(frozen=True)
class Excerpt:
    """What is shown of a line, and the row of signs that marks the place beneath it."""

    line: str
    mark: str


def cut_excerpt(text: str, place: Place) -> Excerpt:
    """Show the part of a line that lies around a place, with `…` where it is cut."""
    begin = place.column - 1
    text = text.ljust(begin)
    first = max(0, min(begin - _BEFORE, len(text) - _LONGEST))
    last = first + _LONGEST
    end = min(begin + place.width, last)
    before = ("…" if first else "") + plain(text[first:begin])
    marked = plain(text[begin:end])
    after = plain(text[end:last]) + ("…" if last < len(text) else "")
    return Excerpt((before + marked + after).rstrip(), " " * cell_len(before) + "^" * max(1, cell_len(marked)))
