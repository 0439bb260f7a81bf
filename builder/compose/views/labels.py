"""What `sheets/labels.html` shows: pages of cells, and in each cell text in its place. All styles are measures, already in words."""

from dataclasses import dataclass

from builder.compose.views.frame import SheetFrame


@dataclass(frozen=True)
class RunView:
    """A stretch of text, or a line to write on: `blank` is then its style."""

    text: str
    bold: bool = False
    blank: str = ""


@dataclass(frozen=True)
class BlockView:
    """A paragraph in its place: its style, its lines."""

    style: str
    lines: tuple[tuple[RunView, ...], ...]


@dataclass(frozen=True)
class MarkView:
    """Something drawn in a cell: a hole, a square of a code, a tick of a ruler. `kind` is its class in the stylesheet."""

    kind: str
    style: str


@dataclass(frozen=True)
class CellView:
    """One cell: its classes (`cut`, `round`, and the name of a border), its style, its text and what is drawn in it."""

    kind: str
    style: str
    blocks: tuple[BlockView, ...] = ()
    marks: tuple[MarkView, ...] = ()


@dataclass(frozen=True)
class LabelsView:
    """The sheets of labels of one product of one date; each page is a tuple of cells."""

    frame: SheetFrame
    title: str
    pages: tuple[tuple[CellView, ...], ...]
