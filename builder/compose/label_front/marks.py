"""Where the mark of a front stands: above its words, beside them, or cut by an edge; and the brand line, which moves with it.

The mark takes what it can while the name keeps that part of the size that it has without one which its design says. Lengths in millimetres.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from functools import partial

from builder.compose.label.label_texts import Paragraph, Run
from builder.compose.label_front.designs import Ornament
from builder.compose.label_front.drawing import Drawing
from builder.compose.label_front.foot import foot_of, width_of
from builder.compose.label_front.ground import CROWN_AT, GAP, Ground
from builder.compose.label_front.logo import logo_block
from builder.compose.label_front.middle import Middle, middle_of
from builder.compose.label_front.outlines import WOVEN
from builder.compose.label_front.space import Space
from builder.compose.label_layout.label_lines import Block, Setter, line_height
from builder.model.label.typeface import POINT

MARKS = (0.46, 0.4, 0.34, 0.29, 0.24, 0.19, 0.15)
MARKS_TO_COLOUR = (0.62, 0.58, 0.54, 0.5)  # Beside a title that is still to be written there is more room.
BESIDE, BESIDE_TO_COLOUR = (0.16, 0.2, 0.24, 0.28, 0.32, 0.36, 0.4), (0.45, 0.5)
TRACKING, LEAST_BRAND = 0.12, 5.6
WIDE, WIDE_TO_COLOUR = 1.55, 1.15  # From this width to height on, the mark stands beside the words.
CORNER, CUT = 1.5, 1.35  # How much larger a mark above the words, or beside them, is drawn that the edges cut.
OFF_EDGE, LID = 0.86, 1.8  # The part of a mark on a ground that the upper edge leaves; the side of one cut by a lid to what is seen of it.
PATCH = 0.8  # The side of a mark on a cloth to the height of the cloth.
THREADS = 2.6  # The height of the two threads with the paper beside them.
LESS_ON_LID, SMALL_LID = 0.07, 50.0
BELOW_GROUND = 1.2  # The ground below the last line of words on it.


@dataclass(frozen=True)
class Tried:
    """A front as far as one way led: the name with what goes with it, the brand line, what is drawn, the foot."""

    middle: Middle
    brand: tuple[Block, ...]
    drawing: Drawing
    foot: tuple[Block, ...]


def best_of(ground: Ground) -> Tried | None:
    """Return the front of the first way in which the mark is seen, else of the first that does."""
    tried = [found for ways in _arrangements(ground) if (found := _largest_mark(ways(ground), _kept(ground)))]
    return next((one for one in tried if one.drawing.is_marked), tried[0] if tried else None)


def _kept(ground: Ground) -> float:
    """Return the part of the size that a name has without a mark which it keeps beside one; on a lid, which is small, somewhat less."""
    return ground.design.kept - (LESS_ON_LID if ground.space.is_round else 0.0)


def _arrangements(ground: Ground) -> tuple[Callable[[Ground], Iterator[Tried]], ...]:
    """Return where the mark is tried, the first in which it is seen is taken: beside the words of a wide label, above those of others.

    The brand line, which the back has too, gives way where the mark finds no room beside it, and on a small lid to a larger name.
    """
    space = ground.space
    stacked, unbranded = partial(_stacked, is_branded=True), partial(_stacked, is_branded=False)
    if space.is_round and ground.label.width < SMALL_LID:
        return (unbranded,)
    if ground.design.ornament is Ornament.WREATH or space.is_round or space.width <= space.height:
        return (stacked, unbranded)
    wide = space.width > (WIDE_TO_COLOUR if ground.to_fill_in else WIDE) * space.height
    return (_beside,) if wide else (stacked, _beside, unbranded)


def _largest_mark(ways: Iterator[Tried], kept: float) -> Tried | None:
    """Return the last of fronts with ever larger marks whose name keeps that part of the size that it has without one."""
    best: Tried | None = None
    bare = 0.0
    for one in ways:
        points = one.middle.points
        if best is None:
            bare = points
        elif points < kept * bare:
            break
        best = one
    return best


def _above(ground: Ground, foot: tuple[Block, ...]) -> float:
    """Return where the name and the mark have to end above a foot."""
    kept = _threads(ground) if ground.design.stripes else BELOW_GROUND if ground.design.ornament is Ornament.ON_GROUND else 0.0
    return min(block.y for block in foot) - GAP - (0.0 if ground.to_fill_in and not ground.design.stripes else kept)


def _threads(ground: Ground) -> float:
    """Return how high the threads are, with the paper beside them."""
    return WOVEN + GAP if ground.is_rich else 2.0 if ground.to_fill_in else THREADS


def _stacked(ground: Ground, *, is_branded: bool) -> Iterator[Tried]:
    """Yield fronts with ever larger marks above the name, the first without one; they end where the name would be too small."""
    foot = foot_of(ground)
    if foot is None:
        return
    bottom = _above(ground, foot)
    for side in _sides(ground):
        if ground.design.ornament is Ornament.WREATH and side and not ground.to_fill_in:
            return
        drawing, brand, top = _head(ground, side, is_branded=is_branded)
        if 0 < drawing.side < ground.least_mark and not ground.crown:
            continue
        middle = middle_of(ground, ground.space, top, bottom)
        if middle is not None:
            yield Tried(middle, brand, drawing, foot)
        elif side:
            return


def _sides(ground: Ground) -> list[float]:
    """Return the sides of the marks that are tried above a name, the smallest first."""
    space = ground.space
    if not ground.to_fill_in:
        return [share * space.height for share in (0.0, *reversed(MARKS))]
    larger = sorted(min(share * space.height, space.width) for share in (*MARKS_TO_COLOUR, *MARKS))
    return [0.0, ground.least_mark, *(side for side in larger if side > ground.least_mark)]


def _head(ground: Ground, side: float, *, is_branded: bool) -> tuple[Drawing, tuple[Block, ...], float]:
    """Place the brand line and a mark of a side; say where the name may begin."""
    space, design, y = ground.space, ground.design, ground.top
    if side and not ground.to_fill_in:
        if design.ornament in (Ornament.ON_CLOTH, Ornament.ON_GROUND) or (design.ornament is Ornament.CORNER and space.is_round):
            return _from_the_edge(ground, side, is_branded=is_branded)
        if design.ornament is Ornament.CORNER:
            drawn = CORNER * side
            drawing = Drawing(design, ground.label, space.x + space.width - 0.62 * drawn, space.y + side - 0.98 * drawn, drawn)
            brand = _brand(ground, replace(space, width=space.width - 0.62 * drawn - GAP), y, is_branded=is_branded)
            return drawing, brand, space.y + side + GAP
    if design.ornament in (Ornament.ON_CLOTH, Ornament.ON_GROUND, Ornament.CORNER) and not space.is_round:
        brand = _brand(ground, replace(space, width=space.width - (side + GAP if side else 0)), y, is_branded=is_branded)
        below = max((block.below for block in brand), default=y)
        return Drawing(design, ground.label, space.x + space.width - side, y, side), brand, max(below, y + side) + GAP
    brand = _brand(ground, space, y, is_branded=is_branded)
    below = max((block.below for block in brand), default=y) + (GAP if brand else 0)
    if ground.crown:
        at = ground.label.middle - ground.crown / 2, ground.label.y + CROWN_AT
        return Drawing(design, ground.label, *at, ground.crown), brand, below
    side = min(side, space.across(below, below + side)[1] * 1.4 if space.is_round else space.width)
    return Drawing(design, ground.label, space.middle - side / 2, below, side), brand, below + side + (GAP if side else 0)


def _from_the_edge(ground: Ground, side: float, *, is_branded: bool) -> tuple[Drawing, tuple[Block, ...], float]:
    """Lay a front whose drawing fills the label from its upper edge down, the brand line beneath it."""
    space, design, label = ground.space, ground.design, ground.label
    high = space.y + side - label.y
    if design.ornament is Ornament.ON_CLOTH:
        drawn = PATCH * high
        x = space.middle - drawn / 2 if space.is_round else space.x + space.width - drawn - 1.0
        drawing = Drawing(design, label, x, label.y + (high - drawn) / 2, drawn, (label.x, label.y, label.width, high))
    else:
        drawn = min(LID * high, label.width) if design.ornament is Ornament.CORNER else high / OFF_EDGE
        drawing = Drawing(design, label, label.middle - drawn / 2, label.y + high - drawn, drawn)
    brand = _brand(ground, space, label.y + high + GAP, is_branded=is_branded)
    return drawing, brand, max((block.below for block in brand), default=label.y + high) + GAP


def _beside(ground: Ground) -> Iterator[Tried]:
    """Yield fronts with ever larger marks on the left of the words, or on their right where the design has them cut by the edge.

    The foot stands beside the mark too where it has room there, else below both; lines in the middle then have one middle.
    """
    space, on_the_right = ground.space, ground.design.ornament is Ornament.CORNER
    below, beside = foot_of(ground), False
    if below is None:
        return
    gap = (3 if ground.design.ornament is Ornament.ON_CLOTH and not ground.to_fill_in else 2) * GAP
    for share in (0.0, *BESIDE, *(BESIDE_TO_COLOUR if ground.to_fill_in else ())):
        taken = share * space.width + gap if share else 0.0
        room = replace(space, x=space.x + (0.0 if on_the_right else taken), width=space.width - taken)
        aside = foot_of(replace(ground, space=room)) if share and _is_foot_aside(ground) else None
        if beside and not aside:
            return
        foot = aside or below
        bottom = _above(ground, foot)
        side = min(share * space.width, (space.below if aside else bottom) - space.y)
        brand = _brand(ground, room, space.y)
        top = max((block.below for block in brand), default=space.y) + GAP
        middle = middle_of(ground, room, top, bottom) or middle_of(ground, room, space.y, bottom)
        if middle is None or 0 < side < ground.least_mark:
            if side >= ground.least_mark or not side:
                return
            continue
        beside = aside is not None and ground.is_centred
        kept = brand if not brand or middle.blocks[0].y >= brand[-1].below else ()
        yield Tried(middle, kept, _drawn_beside(ground, side, ground.label.below if aside else bottom), foot)


def _is_foot_aside(ground: Ground) -> bool:
    """Tell whether the foot may stand beside the mark: where the mark lies on a ground or is to be coloured in, it stands below both."""
    return not ground.to_fill_in and ground.design.ornament is not Ornament.ON_GROUND


def _drawn_beside(ground: Ground, side: float, bottom: float) -> Drawing:
    """Place a mark on the left of the words or on their right; the edges cut what is printed from a corner or on a ground."""
    space, label, design = ground.space, ground.label, ground.design
    on_the_right, printed = design.ornament is Ornament.CORNER, bool(side) and not ground.to_fill_in
    y = space.y + (min(bottom, space.below) - space.y - side) / 2
    if on_the_right and printed:
        return Drawing(design, label, space.x + space.width - side, y + (side - CUT * side) / 2, CUT * side)
    if design.ornament is Ornament.ON_GROUND and printed:
        return Drawing(design, label, space.x + side - CUT * side, bottom - GAP / 2 - CUT * side, CUT * side)
    if design.ornament is Ornament.ON_CLOTH and printed:
        cloth = (label.x, label.y, space.x + side - label.x, bottom - label.y)
        drawn = PATCH * min(cloth[2], cloth[3])
        return Drawing(design, label, label.x + (cloth[2] - drawn) / 2, label.y + (cloth[3] - drawn) / 2, drawn, cloth)
    return Drawing(design, label, space.x + (space.width - side if on_the_right else 0.0), y, side)


def _brand(ground: Ground, space: Space, y: float, *, is_branded: bool = True) -> tuple[Block, ...]:
    """Set the logo, or the brand line in capitals as high as other text has to be; nothing where it does not fit in two lines."""
    setter, words = ground.setter, ground.text.brand.upper()
    if not words or space.width <= 0 or not is_branded:
        return ()
    if logo := logo_block(ground, space, y):
        return (logo,)
    regular = setter.faces["regular"]
    points = max(ground.rules.text * regular.small_o / regular.capital, LEAST_BRAND)
    high = line_height(points)
    for count in (1, 2):
        x, width = space.across(y, y + count * high)
        lines = setter.lines_in((Run(words),), points * (1 + TRACKING / 0.5), width_of([width]))
        fitting = lines is not None and len(lines) <= count
        if lines is not None and fitting and all(_tracked(setter, line, points) <= width for line in lines):
            return (Block(x, y, width, points, lines, is_centred=ground.is_centred, tracking=TRACKING),)
    return ()


def _tracked(setter: Setter, line: Paragraph, points: float) -> float:
    text = "".join(run.text for run in line)
    return setter.width(text, False, points) + len(text) * TRACKING * points * POINT


def dressed(ground: Ground, front: Tried) -> Drawing:
    """Add what the design draws behind the words."""
    label, design, drawing = ground.label, ground.design, replace(front.drawing, is_rich=ground.is_rich)
    top = min(block.y for block in front.foot)
    if design.ornament is Ornament.ON_GROUND:
        below = min(max(front.middle.below + BELOW_GROUND, drawing.y + drawing.side + GAP / 2), top - 0.8)
        return replace(drawing, ground=(label.x, label.y, label.width, below - label.y))
    stands_aside = drawing.ground is not None and drawing.ground[3] >= label.height - 0.1
    if design.stripes and not label.is_round and not stands_aside:
        y = top - GAP - (WOVEN if ground.is_rich else 1.0)
        return replace(drawing, threads=((label.x, y - 0.7, label.width), (label.x, y + 0.5, label.width)))
    return drawing
