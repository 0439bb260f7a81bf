"""What `sheets/labels.html` shows: pages of positions, and in each of them text in its place. All styles are measures, already in words."""

from dataclasses import dataclass

from builder.compose.views.frame import SheetFrame


@dataclass(frozen=True)
class RunView:
    """A stretch of text, or a line to write on: `blank` is then its style, and `kind` its class, which may draw a sign in its place."""

    text: str
    bold: bool = False
    blank: str = ""
    kind: str = "blank"


@dataclass(frozen=True)
class BlockView:
    """A paragraph in its place: its style, its lines; or a `picture` that says what they say, by its path in the studio folder."""

    style: str
    lines: tuple[tuple[RunView, ...], ...]
    picture: str = ""


@dataclass(frozen=True)
class MarkView:
    """Something drawn in a position: a hole, a tick of a ruler. `kind` is its class in the stylesheet."""

    kind: str
    style: str


@dataclass(frozen=True)
class QrView:
    """A QR code: its style, how many modules it has across with its quiet zone, its dark modules as a path, what it says."""

    style: str
    modules: int
    path: str
    says: str


@dataclass(frozen=True)
class PositionView:
    """One position: its style, its text and what is drawn in it. `art` names a border around it; placing the position makes a mark of it.

    `drawing_html` is what lies behind the text of a composed front.
    """

    style: str = ""
    blocks: tuple[BlockView, ...] = ()
    marks: tuple[MarkView, ...] = ()
    qr: QrView | None = None
    art: str = ""
    drawing_html: str = ""


@dataclass(frozen=True)
class LabelsView:
    """Sheets of labels of one size on one date; each page is a tuple of positions."""

    frame: SheetFrame
    title: str
    pages: tuple[tuple[PositionView, ...], ...]
