"""The labels that a measured container has room for, each size with how many of them: around its side, on lid and base, on its two faces.

They are cut by hand from plain paper, as many on a page as it holds. All lengths in millimetres.

Decided: a studio that names no sheet gets labels of the size of its containers. Why: a label that sits is part of the thing, and plain
paper is everywhere; who has die-cut sheets names them.
"""

from collections.abc import Iterator
from fractions import Fraction

from builder.model.label.label_sheet import LabelSheet, Paper
from builder.model.recipe.container import Container
from builder.model.recipe.container_form import ContainerForm
from builder.model.recipe.quantity import Length
from builder.model.remembered import remembered

# The paper between two labels, where corner marks stand and a knife may be off, and the unprinted edge of the paper (a printer leaves up
# to 6.35 mm).
BETWEEN, EDGE = Fraction(6), Fraction(13, 2)
# What stays free on both sides of a label on its container together, and between two on one side.
FREE = Fraction(2)
# The widest and the highest label that anybody reads as one face; less than the smallest holds no word;
# the width of a band around a bar of soap.
WIDEST, HIGHEST, SMALLEST, BAND = Fraction(130), Fraction(110), Fraction(14), Fraction(50)
# Labels that hold no more by being larger are not made larger than these parts of the room that there is.
PARTS = (Fraction(7, 10), Fraction(17, 20), Fraction(1))


@remembered(128)
def labels_for(container: Container, paper: Paper) -> tuple[tuple[LabelSheet, int], ...]:
    """Return sheets of labels of the sizes that a container has room for, the smaller first, each with how many belong together."""
    return tuple(_labels_for(container, paper))


def _labels_for(container: Container, paper: Paper) -> Iterator[tuple[LabelSheet, int]]:
    for what, width, height, is_round, labels in _rooms(container):
        for wide, high in _sizes(width, height, is_round=is_round, labels=labels):
            if min(wide, high) >= SMALLEST:
                sheet = _sheet(f"{container.name}, {what}", paper, _whole(wide), _whole(high), is_round=is_round)
                if sheet:
                    yield sheet, labels


def _sizes(width: Fraction, height: Fraction, *, is_round: bool, labels: int) -> Iterator[tuple[Fraction, Fraction]]:
    """Yield the sizes of the labels of one room, the smaller first: one that goes around is as long as its room, one of two a face."""
    if is_round:
        across = min(width, HIGHEST)
        yield across, across
        return
    for part in PARTS:
        yield (min(width, WIDEST) * part if labels == 2 else width), min(height, HIGHEST) * part


def lid_of(container: Container, paper: Paper) -> LabelSheet | None:
    """Return a sheet of round labels for the lid of a container that has one."""
    lids = (sheet for sheet, _ in labels_for(container, paper) if sheet.is_round)
    return next(lids, None)


def fronts_for(container: Container, paper: Paper) -> Iterator[LabelSheet]:
    """Yield sheets of labels for the front alone, as large as there is room for, then smaller: on the lid, on the side or on a face."""
    fronts = [sheet for sheet, labels in labels_for(container, paper) if labels == 2]
    yield from sorted(fronts, key=lambda sheet: (not sheet.is_round, -sheet.width.millimetres * sheet.height.millimetres))


def bands_of(container: Container, paper: Paper) -> Iterator[LabelSheet]:
    """Yield sheets of labels that go all the way around the side of a container, the lower first."""
    yield from (sheet for sheet, labels in labels_for(container, paper) if labels == 1)


def _rooms(container: Container) -> Iterator[tuple[str, Fraction, Fraction, bool, int]]:
    """Yield each room with its name, width, height, whether it is round, and how many labels lie in it."""
    outside, form = container.outside, container.shape
    height, around, width, lid = (
        length.millimetres if length else None for length in (outside.height, outside.around, outside.width, outside.lid)
    )
    if height is not None and around is not None and form in (ContainerForm.CYLINDER, ContainerForm.TUBE, ContainerForm.ROUND_LID):
        yield "front and back", around / 2 - FREE, height - FREE, False, 2
        yield "around", around - FREE, height - FREE, False, 1
    if form is ContainerForm.ROUND_LID and lid is not None:
        across = lid - FREE
        yield "lid and base", across, across, True, 2
    if form is ContainerForm.CAVITY and around is not None and width is not None:
        yield "band", around - FREE, min(width - 4 * FREE, BAND), False, 1
    if width is not None and height is not None and form in (ContainerForm.BAG, ContainerForm.CAVITY, ContainerForm.RECTANGLE):
        yield "front and back", width - 2 * FREE, height - 2 * FREE, False, 2


def _whole(length: Fraction) -> Fraction:
    """Cut a length to half millimetres, as a ruler has them."""
    return Fraction(int(length * 2), 2)


def _sheet(name: str, paper: Paper, width: Fraction, height: Fraction, *, is_round: bool) -> LabelSheet | None:
    """Return a sheet of plain paper with as many labels as it holds, in its middle; None where it holds none."""
    page_width, page_height = paper.size
    columns, rows = (int((page - 2 * EDGE + BETWEEN) / (size + BETWEEN)) for page, size in ((page_width, width), (page_height, height)))
    if not columns or not rows:
        return None
    left = (page_width - columns * width - (columns - 1) * BETWEEN) / 2
    top = (page_height - rows * height - (rows - 1) * BETWEEN) / 2
    return LabelSheet(
        name=name,
        paper=paper,
        columns=columns,
        rows=rows,
        width=Length(width),
        height=Length(height),
        left=Length(left),
        top=Length(top),
        across=Length(BETWEEN),
        down=Length(BETWEEN),
        corner=Length(Fraction(0)),
        is_round=is_round,
        is_cut=True,
    )
