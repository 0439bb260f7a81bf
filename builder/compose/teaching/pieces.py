"""Text with holes to finished HTML: amounts, pictures and links filled in for the document at hand."""

import posixpath
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from functools import partial
from html import escape
from typing import assert_never
from urllib.parse import quote

from builder.compose.addresses import Address
from builder.compose.edition import Edition
from builder.compose.picture_files import Shown, picture_view
from builder.compose.recipe.wording import keep_together
from builder.compose.teaching.drawn import figure_html
from builder.compose.teaching.mentions import class_amount, home_amount
from builder.model.drawing import Drawing
from builder.model.place import Name
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.teaching.lesson import Block, CautionHere, DrawingHole, LinkHole, Mention, PictureHole, Piece, Prose, Steps
from builder.words.outward import outward


@dataclass(frozen=True)
class TextWriter:
    """How the holes of one document are filled."""

    amount: Callable[[Name, WorkedBatch], str]
    picture: Callable[[PictureHole], str]
    link: Callable[[LinkHole], str]
    drawing: Callable[[Name], Drawing]

    def fill(self, pieces: Iterable[Piece], batch: WorkedBatch | None) -> str:
        """Join the pieces of a block. Text that speaks of no batch has none, and no amounts to fill in."""
        pieces = tuple(pieces)
        drawings = [self.drawing(piece.name) for piece in pieces if isinstance(piece, DrawingHole)]
        named = next((piece.name for piece in pieces if isinstance(piece, Mention)), None)
        weighed = self.amount(named, batch) if drawings and named is not None and batch is not None else ""
        drawn = "".join(figure_html(drawing, weighed) for drawing in drawings)
        html = "".join(self._piece(piece, batch) for piece in pieces if not isinstance(piece, DrawingHole))
        # What shows an amount must not reach into the next step, whose amount is another.
        below = '<div class="below"></div>' if any(drawing.shows_reading for drawing in drawings) else ""
        return f'<div class="beside">{drawn}</div>{html}{below}' if drawn and html else drawn + html

    def fill_blocks(self, blocks: Iterable[Block]) -> str:
        """Return running text that speaks of no batch as finished HTML; its cautions are shown elsewhere."""
        return "\n".join(self._block(block) for block in blocks if not isinstance(block, CautionHere))

    def _block(self, block: Prose | Steps) -> str:
        if isinstance(block, Prose):
            return self.fill(block.pieces, None)
        steps = "".join(f"<li>{self.fill(step.pieces, None)}</li>" for step in block.steps)
        return f"<ol>{steps}</ol>"

    def _piece(self, piece: str | Mention | PictureHole | LinkHole, batch: WorkedBatch | None) -> str:
        match piece:
            case str():
                return keep_together(piece)
            case Mention(name):
                if batch is None:
                    raise KeyError(f"{name.text} has no batch to be read from")
                first, other, rest = self.amount(name, batch).partition(" (")  # The unit in brackets is the smaller one.
                return f'<b class="amount">{escape(first)}</b>{escape(other + rest)}'
            case PictureHole():
                return self.picture(piece)
            case LinkHole():
                return escape(self.link(piece))
        assert_never(piece)


def writer_of(edition: Edition, here: Address, folder: str, *, at_home: bool = False) -> TextWriter:
    """Return the writer of what lies at an address, a sheet or a page, whose text lies in a folder of the studio."""
    return (_paper_writer if here.is_paper else partial(_page_writer, here=here))(edition, folder=folder, at_home=at_home)


def _page_writer(edition: Edition, here: Address, folder: str, at_home: bool) -> TextWriter:
    """Return the writer of a page: relative links, pictures copied beside it."""

    def link(hole: LinkHole) -> str:
        return here.link_to(edition.target(hole))

    def picture(hole: PictureHole) -> str:
        return picture_view(edition, here, beside(folder, hole), hole.alt, Shown.IN_TEXT, hole.title).html

    return TextWriter(_amounts(edition, at_home), picture, link, _drawings(edition))


def _paper_writer(edition: Edition, folder: str, at_home: bool) -> TextWriter:
    """Return the writer of a sheet: pictures by their path in the studio folder, links to the public site or, without one, to the top.

    A picture that is decorative is not printed: it says nothing, and takes ink and room.
    """
    public = outward(edition.studio.profile.public_address.rstrip("/"))

    def link(hole: LinkHole) -> str:
        return f"{public}/{quote(edition.target(hole).path)}" if public else "#top"

    def picture(hole: PictureHole) -> str:
        if not hole.alt:
            return ""
        title = f' title="{escape(hole.title)}"' if hole.title else ""
        return f'<img src="{quote(beside(folder, hole))}" alt="{escape(hole.alt)}"{title}>'

    return TextWriter(_amounts(edition, at_home), picture, link, _drawings(edition))


def _amounts(edition: Edition, at_home: bool) -> Callable[[Name, WorkedBatch], str]:
    write = home_amount if at_home else class_amount
    return lambda name, batch: write(edition.studio, batch, name)


def _drawings(edition: Edition) -> Callable[[Name], Drawing]:
    return lambda name: edition.studio.drawings[name.key]


def beside(folder: str, hole: PictureHole) -> str:
    """Return the path in the studio folder of a picture that lies beside a text."""
    return posixpath.normpath(posixpath.join(folder, hole.file.text))


def pictures_in(blocks: Iterable[Block], folder: str) -> tuple[str, ...]:
    """Return the pictures that some text shows, as paths in the studio folder."""
    found: dict[str, None] = {}
    for block in blocks:
        runs = [block] if isinstance(block, Prose) else block.steps if isinstance(block, Steps) else ()
        found |= {beside(folder, piece): None for run in runs for piece in run.pieces if isinstance(piece, PictureHole)}
    return tuple(found)
