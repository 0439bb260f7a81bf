"""A front: brand, mark, name, variant, and at the bottom what it is and how much.

The name is the largest thing: net contents are set at the height that the law asks for and never above MOST_NET of the name. The mark takes
what it can while the name keeps most of the size that it has without one. Nothing here makes lawful type smaller: what does not fit has no
composed front, and a finding says so.

Decided: a mark or a border may stand beside net contents. Why: the clear space is one from other printed information (21 CFR 701.13(f),
from memory), and an ornament informs of nothing.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from math import ceil, floor

from builder.compose.label.label_texts import LabelText, Paragraph, Run
from builder.compose.label_front.designs import Design, Ornament, border_scale
from builder.compose.label_front.names import STEP, Lettering, block_of_row, lettering_for, row_height, rows_of
from builder.compose.label_front.outlines import BAR, CLEAR, SEAM, WOVEN, WREATH
from builder.compose.label_front.space import Space
from builder.compose.label_layout.label_lines import Block, Setter, line_height
from builder.compose.label_layout.rules import Rules, clear_above
from builder.compose.ornament.colouring import SMALLEST
from builder.model.label.typeface import POINT

MOST_NET = 0.7
MARKS = (0.46, 0.4, 0.34, 0.29, 0.24, 0.19, 0.15)
MARKS_TO_COLOUR = (0.62, 0.58, 0.54, 0.5)  # Beside a title that is still to be written there is more room.
KEPT = 0.56  # The part of the size that a name has without a mark which it keeps beside one.
LEAST_NAME = 12.0
TRACKING = 0.12
GAP, LEAST_MARK = 1.2, 7.0
OF_NAME_VARIANT, OF_NAME_IDENTITY, MOST_VARIANT, MOST_IDENTITY = 0.44, 0.4, 15.0, 12.0
WIDE, WIDE_TO_COLOUR = 1.55, 1.15  # From this width to height on, the mark stands beside the words.
CUT = 1.35  # How much larger a mark beside the words is drawn that the edges cut.
THREADS = 2.0  # The height of the two threads with the paper beside them.
BLANK_NAME = 24.0  # The line height of a title that is written by hand, in points.


@dataclass(frozen=True)
class Drawing:
    """What is drawn on a label, in millimetres from its corner: the square of the mark, where the ground of the accent ends, threads.

    `on` is the part of the label that the front has: nothing is drawn beyond it. A side of 0 is no mark; `ground` is left, top, width and
    height. `leaves_along` are the edges along which leaves to colour in lie, from the top clockwise from 0. `is_rich`: what is to be
    coloured in has the fields that only its design has.
    """

    design: Design
    on: Space
    x: float = 0.0
    y: float = 0.0
    side: float = 0.0
    ground: tuple[float, float, float, float] | None = None
    threads: tuple[tuple[float, float, float], ...] = ()
    leaves_along: tuple[int, ...] = (0,)
    is_rich: bool = False

    @property
    def is_marked(self) -> bool:
        """Tell whether something that the recipe draws is seen: its mark, its petals as a wreath, its shares as a bar."""
        return self.side > 0 or self.design.ornament is Ornament.WREATH or (self.is_rich and self.design.ornament is Ornament.CORNER)

    @property
    def has_fields(self) -> bool:
        """Tell whether a front to colour in has fields that a crayon fills: those of what the recipe draws, or of a woven band."""
        return self.is_marked or (self.is_rich and bool(self.threads))


@dataclass(frozen=True)
class Front:
    """A front laid out; `name` is the size of its name in points."""

    blocks: tuple[Block, ...]
    drawing: Drawing
    name: float


@dataclass(frozen=True)
class _Ground:
    """What all tries of one front share."""

    text: LabelText
    space: Space
    label: Space
    rules: Rules
    setter: Setter
    design: Design
    lettering: Lettering
    to_fill_in: bool
    is_rich: bool

    @property
    def least_mark(self) -> float:
        """Return the least side of a mark."""
        return SMALLEST if self.to_fill_in else LEAST_MARK


@dataclass(frozen=True)
class _Middle:
    """The name with what goes with it: its blocks, the size of the name, where it ends."""

    blocks: tuple[Block, ...]
    points: float
    below: float


def front_of(
    text: LabelText, space: Space, label: Space, rules: Rules, setter: Setter, design: Design, *, to_fill_in: bool = False
) -> Front | None:
    """Compose a front in a space of its label; None where the name would be too small or something lawful does not fit.

    `label` is all of the label that the front has, to its edges. `to_fill_in`: a line to write a title on stands in place of the name.
    """
    ways = (True, False) if to_fill_in and not label.is_round and (design.stripes or design.ornament is Ornament.CORNER) else (False,)
    fronts = [_front_of(text, space, label, rules, setter, design, to_fill_in=to_fill_in, is_rich=is_rich) for is_rich in ways]
    return next((front for front in fronts if front and front.drawing.is_marked), next(filter(None, fronts), None))


def _front_of(
    text: LabelText, space: Space, label: Space, rules: Rules, setter: Setter, design: Design, *, to_fill_in: bool, is_rich: bool
) -> Front | None:
    """Compose it; `is_rich`: to colour in, with the fields that only this design has."""
    # Text stands as far from a border as it does from the edge of a label without one.
    border = border_to_colour(design) if to_fill_in else design.border * border_scale(label.width, label.height)
    inner = space.inside(max(0.0, border + GAP - rules.inset)) if border else space
    if to_fill_in and design.ornament is Ornament.WREATH and not label.is_round:
        # The leaves lie along the top alone: net contents need the width, and the lowest part of a label.
        top = label.y + WREATH + GAP
        inner = space.inside(CLEAR - rules.inset)
        inner = replace(inner, y=top, height=inner.below - top)
    if is_rich and design.ornament is Ornament.CORNER:
        inner = replace(inner, x=inner.x + BAR + 1.5 * GAP, width=inner.width - BAR - 1.5 * GAP)
    lettering = lettering_for(setter, text.name, design.face, design.leading, capitals=design.capitals)
    ground = _Ground(text, inner, label, rules, setter, design, lettering, to_fill_in, is_rich)
    foot = _foot(ground, label)
    if foot is None:
        return None
    top = min(block.y for block in foot) - GAP - (_threads(ground) if design.stripes else 0)
    tried = [found for ways in _arrangements(ground) if (found := _largest_mark(ways(ground, top)))]
    if not tried:
        return None
    middle, brand, drawing = next((one for one in tried if one[2].is_marked), tried[0])
    return Front((*brand, *middle.blocks, *foot), _dressed(drawing, ground, label, middle, foot), middle.points)


_Tried = tuple[_Middle, tuple[Block, ...], Drawing]


def _arrangements(ground: _Ground) -> tuple[Callable[[_Ground, float], Iterator[_Tried]], ...]:
    """Return where the mark is tried, the first in which it is seen is taken: beside the words of a wide label, above those of others."""
    space = ground.space
    if ground.design.ornament is Ornament.WREATH or space.is_round or space.width <= space.height:
        return (_stacked,)
    wide = space.width > (WIDE_TO_COLOUR if ground.to_fill_in else WIDE) * space.height
    return (_beside,) if wide else (_stacked, _beside)


def _largest_mark(ways: Iterator[_Tried]) -> _Tried | None:
    """Return the last of fronts with ever larger marks whose name keeps enough of the size that it has without one."""
    best: _Tried | None = None
    bare = 0.0
    for one in ways:
        points = one[0].points
        if best is None:
            bare = points
        elif points < KEPT * bare:
            break
        best = one
    return best


def border_to_colour(design: Design) -> float:
    """Return how much of each edge is kept free of words where a label is to be coloured in, in millimetres."""
    if design.ornament is Ornament.WREATH:
        return WREATH
    if design.dashes or design.ornament is Ornament.ON_GROUND:
        return SEAM
    return CLEAR - GAP


def _least(ground: _Ground) -> float:
    return max(ground.rules.net / MOST_NET, ground.rules.text * 1.4, LEAST_NAME)


def _stacked(ground: _Ground, bottom: float) -> Iterator[_Tried]:
    """Yield fronts with ever larger marks above the name, the first without one; they end where the name would be too small."""
    space, design = ground.space, ground.design
    for side in _sides(ground):
        if (design.ornament is Ornament.WREATH and side) or 0 < side < ground.least_mark:
            continue
        drawing, brand, top = _head(ground, side)
        if 0 < drawing.side < ground.least_mark:
            continue
        middle = _middle(ground, space, top, bottom)
        if middle is None:
            if side:
                return
            brand, top = (), space.y
            drawing = replace(drawing, side=0.0)
            middle = _middle(ground, space, top, bottom)
            if middle is None:
                return
        yield middle, brand, drawing


def _sides(ground: _Ground) -> list[float]:
    """Return the sides of the marks that are tried above a name, the smallest first."""
    space = ground.space
    if not ground.to_fill_in:
        return [share * space.height for share in (0.0, *reversed(MARKS))]
    larger = sorted(min(share * space.height, space.width) for share in (*MARKS_TO_COLOUR, *MARKS))
    return [0.0, ground.least_mark, *(side for side in larger if side > ground.least_mark)]


def _head(ground: _Ground, side: float) -> tuple[Drawing, tuple[Block, ...], float]:
    """Place the brand line and a mark of a side; say where the name may begin."""
    space, design = ground.space, ground.design
    y = space.y + (1.5 if space.is_round else 0.0)
    if design.ornament is Ornament.CORNER and side and not space.is_round and not ground.to_fill_in:
        drawn = 1.5 * side
        drawing = Drawing(design, ground.label, space.x + space.width - 0.62 * drawn, space.y + side - 0.92 * drawn, drawn)
        brand = _brand(ground, replace(space, width=space.width - 0.62 * drawn - GAP), y)
        return drawing, brand, space.y + side + GAP
    if design.ornament in (Ornament.BESIDE_BRAND, Ornament.ON_GROUND, Ornament.CORNER) and not space.is_round:
        brand = _brand(ground, replace(space, width=space.width - (side + GAP if side else 0)), y)
        below = max((block.below for block in brand), default=y)
        return Drawing(design, ground.label, space.x + space.width - side, y, side), brand, max(below, y + side) + GAP
    brand = _brand(ground, space, y)
    below = max((block.below for block in brand), default=y) + (GAP if brand else 0)
    side = min(side, space.across(below, below + side)[1] * 1.4 if space.is_round else space.width)
    return Drawing(design, ground.label, space.middle - side / 2, below, side), brand, below + side + (GAP if side else 0)


def _beside(ground: _Ground, bottom: float) -> Iterator[_Tried]:
    """Yield fronts with ever larger marks on the left of the words, or on their right where the design has them cut by the edge."""
    space, on_the_right = ground.space, ground.design.ornament is Ornament.CORNER
    for share in (0.0, 0.16, 0.2, 0.24, 0.28, 0.32, 0.36, 0.4, *((0.45, 0.5) if ground.to_fill_in else ())):
        side = min(share * space.width, bottom - space.y)
        taken = side + 2 * GAP if side else 0.0
        room = replace(space, x=space.x + (0.0 if on_the_right else taken), width=space.width - taken)
        brand = _brand(ground, room, space.y)
        top = max((block.below for block in brand), default=space.y) + GAP
        middle = _middle(ground, room, top, bottom) or _middle(ground, room, space.y, bottom)
        if middle is None or 0 < side < ground.least_mark:
            if side >= ground.least_mark or not side:
                return
            continue
        kept = brand if not brand or middle.blocks[0].y >= brand[-1].below else ()
        y = space.y + (bottom - space.y - side) / 2
        if on_the_right and side and not ground.to_fill_in:
            drawn = CUT * side
            yield middle, kept, Drawing(ground.design, ground.label, space.x + space.width - side, y + side - drawn, drawn)
        else:
            yield middle, kept, Drawing(ground.design, ground.label, space.x + (space.width - side if on_the_right else 0.0), y, side)


def _brand(ground: _Ground, space: Space, y: float) -> tuple[Block, ...]:
    """Set the brand line in capitals as high as other text has to be; nothing where it does not fit in two lines."""
    setter, words = ground.setter, ground.text.brand.upper()
    if not words or space.width <= 0:
        return ()
    regular = setter.faces["regular"]
    points = max(ground.rules.text * regular.small_o / regular.capital, 5.6)
    high = line_height(points)
    for count in (1, 2):
        x, width = space.across(y, y + count * high)
        lines = setter.lines_in((Run(words),), points * (1 + TRACKING / 0.5), _width_of([width]))
        fitting = lines is not None and len(lines) <= count
        if lines is not None and fitting and all(_tracked(setter, line, points) <= width for line in lines):
            return (Block(x, y, width, points, lines, is_centred=ground.design.is_centred or space.is_round, tracking=TRACKING),)
    return ()


def _tracked(setter: Setter, line: Paragraph, points: float) -> float:
    text = "".join(run.text for run in line)
    return setter.width(text, False, points) + len(text) * TRACKING * points * POINT


def _middle(ground: _Ground, space: Space, top: float, bottom: float) -> _Middle | None:
    """Set the name as large as fits between two heights, with its other names and the variant beneath it."""
    if ground.to_fill_in:
        return _title_to_fill_in(space, top, bottom)
    least = _least(ground)
    low, high = ceil(least / STEP), floor(min(max(ground.design.most, least + STEP), (bottom - top) / POINT) / STEP)
    best = _named(ground, space, top, bottom, low * STEP) if low <= high else None
    while best and low < high:
        tried = (low + high + 1) // 2
        laid = _named(ground, space, top, bottom, tried * STEP)
        if laid:
            low, best = tried, laid
        else:
            high = tried - 1
    return best


def _title_to_fill_in(space: Space, top: float, bottom: float) -> _Middle | None:
    high = line_height(BLANK_NAME, 1.0)
    x, width = space.across(top, top + 2 * high)
    if bottom - top < 1.4 * high or width < 20:
        return None
    lines = 2 if bottom - top >= 2.1 * high else 1
    blocks = tuple(
        Block(x, top + number * high, width, BLANK_NAME, ((Run("", blank=width - 0.2),),), leading=1.0) for number in range(lines)
    )
    return _Middle(blocks, BLANK_NAME, blocks[-1].below)


def _named(ground: _Ground, space: Space, top: float, bottom: float, points: float) -> _Middle | None:
    setter, lettering, text = ground.setter, ground.lettering, ground.text
    centred = ground.design.is_centred or space.is_round
    below = _under_name(ground, points)
    extra = sum(line_height(size) for _, size in below) + (0.6 if below else 0)
    high = row_height(lettering, points)

    def start(count: int) -> float:
        free = bottom - top - extra - count * high
        return top + (free / 2 if centred else min(free, 0.5))

    def width_of(number: int, count: int) -> float:
        begin = start(count) + number * high
        return space.across(begin, begin + high)[1] if begin >= top - 1e-6 else 0.0

    rows = rows_of(setter, *text.named[0], lettering, points, width_of)
    if rows is None:
        return None
    y = start(len(rows))
    blocks = []
    for row in rows:
        x, width = space.across(y, y + high)
        blocks.append(block_of_row(row, lettering, points, x, y, width, is_centred=centred))
        y += high
    y += 0.6
    for paragraph, size in below:
        x, width = space.across(y, y + line_height(size))
        lines = setter.lines(paragraph, size, width)
        if lines is None or len(lines) > 2:
            return None
        blocks.append(Block(x, y, width, size, lines, is_centred=centred))
        y = blocks[-1].below
    return _Middle(tuple(blocks), points, y) if y <= bottom + 1e-6 else None


def _under_name(ground: _Ground, points: float) -> list[tuple[Paragraph, float]]:
    """Return what stands beneath the name: the name in the other languages, then the variant."""
    least = ground.rules.text
    others: list[tuple[Paragraph, float]] = [
        ((Run(one, bold=True, locale=locale),), max(least, 0.6 * points)) for one, locale in ground.text.named[1:]
    ]
    variant = max(least, min(OF_NAME_VARIANT * points, MOST_VARIANT))
    return [*others, *([((Run(ground.text.variant),), variant)] if ground.text.variant else [])]


def _foot(ground: _Ground, label: Space) -> tuple[Block, ...] | None:
    """Set the net contents at the bottom, and what it is above them with the clear space between."""
    rules = ground.rules
    # A border below net contents is kept off by as much as other print would be.
    edge = clear_above(rules) / 2 if ground.design.border and not ground.to_fill_in else 0.0
    net = _at_bottom(ground, ground.text.net, rules.net, ground.space.below - edge)
    if net is None or (rules.net_part is not None and net.y < label.below - rules.net_part * label.height):
        return None
    size = max(rules.text, min(OF_NAME_IDENTITY * _least(ground), MOST_IDENTITY))
    if not ground.text.identity:
        return (net,)
    for points in (size, rules.text):
        identity = _at_bottom(ground, (Run(ground.text.identity, bold=True),), points, net.y - clear_above(rules))
        if identity is not None and identity.y > ground.space.y:
            return (identity, net)
    return None


def _width_of(widths: Sequence[float]) -> Callable[[int], float]:
    """Return how wide each line may be, counted from 0; what comes after the last is as wide as that."""
    return lambda number: widths[min(number, len(widths) - 1)]


def _at_bottom(ground: _Ground, paragraph: Paragraph, points: float, bottom: float) -> Block | None:
    """Set a paragraph so that it ends there, in the fewest lines that are wide enough."""
    space, high = ground.space, line_height(points)
    for raised in (0.0, 0.5, 1.0, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0) if space.is_round else (0.0,):
        for count in (1, 2, 3):
            top = bottom - raised - count * high
            widths = [space.across(top + number * high, top + (number + 1) * high)[1] for number in range(count)]
            lines = ground.setter.lines_in(paragraph, points, _width_of(widths))
            if lines is not None and len(lines) == count:
                wide = max(widths)
                centred = ground.design.is_centred or space.is_round
                return Block(space.middle - wide / 2 if space.is_round else space.x, top, wide, points, lines, is_centred=centred)
    return None


def _threads(ground: _Ground) -> float:
    """Return how high the threads are, with the paper beside them."""
    return WOVEN + GAP if ground.is_rich else THREADS


def _dressed(drawing: Drawing, ground: _Ground, label: Space, middle: _Middle, foot: tuple[Block, ...]) -> Drawing:
    """Add what the design draws behind the words."""
    drawing = replace(drawing, is_rich=ground.is_rich)
    top = min(block.y for block in foot)
    if ground.design.ornament is Ornament.ON_GROUND:
        below = min(max(middle.below, drawing.y + drawing.side) + 1.0, top - 0.8)
        return replace(drawing, ground=(label.x, label.y, label.width, below - label.y))
    if ground.design.stripes and not label.is_round:
        y = top - GAP - (WOVEN if ground.is_rich else THREADS / 2)
        return replace(drawing, threads=((label.x, y - 0.7, label.width), (label.x, y + 0.5, label.width)))
    return drawing
