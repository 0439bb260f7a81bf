"""What `sheets/pack.html` shows: what a date prints, how often, and where it lies in the pack."""

from dataclasses import dataclass

from builder.compose.views.frame import Frame


@dataclass(frozen=True)
class PackRow:
    """A sheet, or a piece of one that is cut apart: its pages in the pack, how many copies, on one side or both, how much paper that is."""

    name: str
    pages: str
    copies: str
    sides: str
    paper: str


@dataclass(frozen=True)
class PackView:
    """The page of counts of one date. `in_all` sums it up, and is empty before anything has been laid out.

    `beside` is in files of its own, `looked_up` names what needs no paper.
    """

    frame: Frame
    title: str
    when: str
    facts: tuple[str, ...]
    in_all: str
    rows: tuple[PackRow, ...]
    beside: tuple[PackRow, ...]
    looked_up: str
