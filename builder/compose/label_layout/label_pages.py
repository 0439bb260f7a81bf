"""Positions with text become pages of a sheet: where each position lies on the paper, in CSS measures."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from itertools import islice

from builder.compose.edition import Edition
from builder.compose.frames import sheet_frame
from builder.compose.label.label_texts import Paragraph
from builder.compose.label_layout.label_layout import HOLE_AT
from builder.compose.label_layout.label_lines import Block
from builder.compose.views.labels import BlockView, LabelsView, MarkView, PositionView, RunView
from builder.model.label.label_sheet import LabelSheet, LabelWishes
from builder.model.recipe.quantity import Length

# Corner marks: their length, how far they stay off the label so that none is left on it, and their width, in millimetres.
LONG, OFF, HAIR = 2.0, 0.5, 0.1


def labels_view(edition: Edition, title: str, sheet: LabelSheet, positions: Sequence[PositionView], first: int = 1) -> LabelsView:
    """Lay positions on sheets of a sheet, from the position of that number (counted from 1) on; a printer that is off is made up for."""
    frame = replace(sheet_frame(edition, title, title), paper=sheet.paper.casefold())
    shift = shift_of(edition.studio.profile.labels)
    left = iter(positions)
    pages = []
    start = first - 1
    while page := tuple(islice(left, sheet.positions - start)):
        pages.append(tuple(_placed(sheet, start + number, position, shift) for number, position in enumerate(page)))
        start = 0
    return LabelsView(frame, title, tuple(pages))


def shift_of(wishes: LabelWishes) -> tuple[float, float]:
    """Return how far everything is moved on the page, right and down, in millimetres."""
    return _millimetres(wishes.right), _millimetres(wishes.down)


def position_of(blocks: Iterable[Block], marks: tuple[MarkView, ...] = ()) -> PositionView:
    """Make a position of text that has been laid out."""
    return PositionView("", tuple(_block(block) for block in blocks), marks)


def hole_of(sheet: LabelSheet) -> tuple[MarkView, ...]:
    """Draw the hole of a tag; a label has none."""
    if sheet.hole is None:
        return ()
    across = float(sheet.hole.millimetres)
    return (MarkView("hole", place((float(sheet.width.millimetres) - across) / 2, HOLE_AT, across, across)),)


def place(x: float, y: float, width: float, height: float) -> str:
    """Write a rectangle as a style, from the corner of what holds it."""
    return f"left:{x:.4f}mm;top:{y:.4f}mm;width:{width:.4f}mm;height:{height:.4f}mm"


def _placed(sheet: LabelSheet, number: int, position: PositionView, shift: tuple[float, float]) -> PositionView:
    x, y = sheet.position(number)
    width, height = float(sheet.width.millimetres), float(sheet.height.millimetres)
    corner = width / 2 if sheet.is_round else float(sheet.corner.millimetres)
    whole = f"{place(0, 0, width, height)};border-radius:{corner:.4f}mm"
    has_corners = (
        sheet.is_cut and not sheet.is_round and sheet.hole is None and min(sheet.across.millimetres, sheet.down.millimetres) > 2 * LONG
    )
    kinds = [*(["cut"] if sheet.is_cut and not has_corners else []), *([position.art] if position.art else [])]
    marks = (*(MarkView(kind, whole) for kind in kinds), *(_corners(width, height) if has_corners else ()), *position.marks)
    return replace(position, style=place(x + shift[0], y + shift[1], width, height), marks=marks)


def _corners(width: float, height: float) -> Iterator[MarkView]:
    """Draw the marks between which a label is cut out by hand, outside of it."""
    for x, right in ((0.0, -1), (width, 1)):
        for y, down in ((0.0, -1), (height, 1)):
            yield MarkView("tick", place(x - HAIR / 2, y + (OFF if down > 0 else -OFF - LONG), HAIR, LONG))
            yield MarkView("tick", place(x + (OFF if right > 0 else -OFF - LONG), y - HAIR / 2, LONG, HAIR))


def _block(block: Block) -> BlockView:
    if block.picture:
        return BlockView(place(block.x, block.y, block.width, block.high), tuple(map(_line, block.lines)), block.picture)
    style = (
        f"left:{block.x:.4f}mm;top:{block.y:.4f}mm;width:{block.width:.4f}mm;font-size:{block.points:.2f}pt;line-height:{block.leading:g}"
    )
    style += f";font-family:'{block.face}';font-kerning:normal" if block.face else ""
    style += ";text-align:center" if block.is_centred else ""
    style += f";letter-spacing:{block.tracking:g}em" if block.tracking else ""
    return BlockView(style, tuple(_line(line) for line in block.lines))


def _line(line: Paragraph) -> tuple[RunView, ...]:
    return tuple(RunView(run.text, run.bold, f"width:{run.blank:.2f}mm" if run.blank else "", run.sign or "blank") for run in line)


def _millimetres(length: Length | None) -> float:
    return float(length.millimetres) if length is not None else 0.0
