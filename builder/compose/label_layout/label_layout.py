"""The text of a label laid out in its position, in the largest type that lets everything stand, and never below what the law asks for.

A label has a front (what it is, how much) and a back (everything else). On one label they stand beside or above each other, whichever gives
the larger type; on two labels each has its own. The net contents stand at the bottom with clear space around them.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import inf

from builder.compose.label.label_texts import LabelText, Paragraph, Run
from builder.compose.label_front.drawing import Drawing
from builder.compose.label_layout.label_lines import Block, Setter, line_height
from builder.compose.label_layout.rules import LabelRules, clear_above
from builder.model.label.label_sheet import LabelSheet

LARGEST, STEP, NAME_LARGEST = 10.0, 0.25, 14.0
SHARES = (0.26, 0.3, 0.33, 0.36, 0.4, 0.44, 0.48, 0.52, 0.56, 0.6)
GAP, GUTTER = 0.7, 2.0
SQUARE_IN_CIRCLE = 0.7071
# Where the hole of a tag begins, and the clear space below it, in millimetres.
HOLE_AT, BELOW_THE_HOLE = 9.0, 4.0


@dataclass(frozen=True)
class Box:
    """A place for text, in millimetres from the corner of the position."""

    x: float
    y: float
    width: float
    height: float


@dataclass(frozen=True)
class LaidPosition:
    """What stands on one position of a sheet: its text in blocks, and what a composed front draws behind its words."""

    blocks: tuple[Block, ...]
    drawing: Drawing | None = None


@dataclass(frozen=True)
class LaidOut:
    """Labels laid out: for each text one position, or two where front and back are apart. `points` is the text's size.

    `back` are the backs where they lie on a sheet of their own.
    """

    sheet: LabelSheet
    points: float
    labels: tuple[tuple[LaidPosition, ...], ...]
    back: "LaidOut | None" = None

    @property
    def count(self) -> int:
        """Return how many labels one text takes."""
        return len(self.labels[0]) if self.labels else 1

    @property
    def is_composed(self) -> bool:
        """Tell whether the fronts are composed."""
        return bool(self.labels) and self.labels[0][0].drawing is not None

    @property
    def has_fields(self) -> bool:
        """Tell whether each composed front has something to colour in; without composed fronts a label of fields lies beside each."""
        fronts = (label[0].drawing for label in self.labels)
        return not self.is_composed or all(front and front.has_fields for front in fronts)

    def labels_each(self, *, to_colour: bool) -> int:
        """Return how many labels of the sheet one container takes: where it has no composed front, one more that is coloured in."""
        return self.count + (to_colour and not self.is_composed)


def lay_out(texts: Sequence[LabelText], sheet: LabelSheet, panels: int, rules: LabelRules, setter: Setter) -> LaidOut | None:
    """Lay out labels of one product alike; None where one of them does not fit at a lawful size."""
    box = box_of(sheet, rules.inset)
    best = _laid(texts, sheet, box, panels, rules.text, rules, setter)
    # What does not fit at the least size fits at no other.
    for points in _sizes(rules.text) if best else ():
        larger = _laid(texts, sheet, box, panels, points, rules, setter)
        if larger:
            return larger
    return best


def _laid(
    texts: Sequence[LabelText], sheet: LabelSheet, box: Box, panels: int, points: float, rules: LabelRules, setter: Setter
) -> LaidOut | None:
    done: dict[LabelText, tuple[LaidPosition, ...]] = {}
    for text in texts:
        if text not in done:
            positions = _positions(text, box, panels, points, rules, setter)
            if positions is None:
                return None
            done[text] = tuple(map(LaidPosition, positions))
    return LaidOut(sheet, points, tuple(done[text] for text in texts))


def box_of(sheet: LabelSheet, inset: float) -> Box:
    """Return the place for text in a position: its inset rectangle, what is below the hole of a tag, or the square in a circle."""
    width, height = float(sheet.width.millimetres), float(sheet.height.millimetres)
    if sheet.hole is not None:
        top = HOLE_AT + float(sheet.hole.millimetres) + BELOW_THE_HOLE
        return Box(inset, top, width - 2 * inset, height - top - inset)
    if sheet.is_round:
        side = width * SQUARE_IN_CIRCLE - inset / 2
        return Box((width - side) / 2, (height - side) / 2, side, side)
    return Box(inset, inset, width - 2 * inset, height - 2 * inset)


def _sizes(least: float) -> Iterator[float]:
    """Yield the sizes above the least one, the largest first."""
    size = LARGEST
    while size > least:
        yield size
        size -= STEP


def _positions(
    text: LabelText, box: Box, panels: int, points: float, rules: LabelRules, setter: Setter
) -> tuple[tuple[Block, ...], ...] | None:
    if panels == 2:
        front = _front(text, box, box, points, rules, setter)
        back = _back(text, box, points, rules, setter)
        return (front, back) if front and back else None
    ways = (_beside, _over_net, _above)
    one = next((laid for way in ways if (laid := way(text, box, points, rules, setter))), None)
    return (one,) if one else None


def _beside(text: LabelText, box: Box, points: float, rules: LabelRules, setter: Setter) -> tuple[Block, ...] | None:
    for share in SHARES:
        width = box.width * share
        back_box = Box(box.x + width + GUTTER, box.y, box.width - width - GUTTER, box.height)
        back = _back(text, back_box, points, rules, setter)
        if back is None:
            continue
        front = _front(text, Box(box.x, box.y, width, box.height), back_box, points, rules, setter)
        if front:
            return front + back
    return None


def _over_net(text: LabelText, box: Box, points: float, rules: LabelRules, setter: Setter) -> tuple[Block, ...] | None:
    """Set the net contents along the whole bottom, and the rest in two columns over them."""
    net = _net(text, box, box, rules, setter)
    if net is None:
        return None
    height = net.y - clear_above(rules) - box.y
    for share in SHARES:
        width = box.width * share
        back = _back(text, Box(box.x + width + GUTTER, box.y, box.width - width - GUTTER, height), points, rules, setter)
        for head in _heads(text, Box(box.x, box.y, width, height), points, setter, box.y + height) if back else ():
            if back:
                return (*head, *back, net)
    return None


def _above(text: LabelText, box: Box, points: float, rules: LabelRules, setter: Setter) -> tuple[Block, ...] | None:
    net = _net(text, box, box, rules, setter)
    if net is None:
        return None
    for head in _heads(text, box, points, setter):
        bottom = net.y - clear_above(rules)
        back = setter.stack(_sized(text, points, rules), box.x, head[-1].below + 2 * GAP, box.width, GAP, bottom)
        if back:
            return (*head, *back, net)
    return None


def _sized(text: LabelText, points: float, rules: LabelRules) -> list[tuple[Paragraph, float]]:
    """Return each paragraph of the back its size: the ingredient list, which is the first, may be smaller."""
    return [(one, points if number else points * rules.ingredients) for number, one in enumerate(text.back)]


def _back(text: LabelText, box: Box, points: float, rules: LabelRules, setter: Setter) -> tuple[Block, ...] | None:
    return setter.stack(_sized(text, points, rules), box.x, box.y, box.width, GAP, box.y + box.height) or None


def _front(text: LabelText, box: Box, beside: Box, points: float, rules: LabelRules, setter: Setter) -> tuple[Block, ...] | None:
    net = _net(text, box, beside, rules, setter)
    if net is None:
        return None
    return next(((*head, net) for head in _heads(text, box, points, setter, net.y - clear_above(rules))), None)


def _heads(text: LabelText, box: Box, points: float, setter: Setter, bottom: float = inf) -> Iterator[tuple[Block, ...]]:
    """Yield the top of the front, its name in ever smaller type."""
    for larger in (1.5, 1.3, 1.15, 1.0):
        name, other = min(points * larger, NAME_LARGEST), points * min(larger, 1.15)
        head: list[tuple[Paragraph, float]] = [((Run(text.identity, bold=True),), other)]
        head += [((Run(one, bold=True, locale=locale),), name) for one, locale in text.named]
        head += [((Run(text.variant),), other)] if text.variant else []
        blocks = setter.stack([*head, *((line, points) for line in text.lines)], box.x, box.y, box.width, GAP, bottom)
        if blocks:
            yield blocks


def _net(text: LabelText, box: Box, beside: Box, rules: LabelRules, setter: Setter) -> Block | None:
    """Set the net contents at the bottom of a front; nothing stands within the clear space to their right."""
    clear = rules.clear_beside * setter.width("N", True, rules.net)
    right = beside.x - clear if beside.x > box.x else box.x + box.width
    width = min(right - box.x, box.width)
    lines = setter.lines_in(text.net, rules.net, lambda _: width)
    if lines is None:
        return None
    height = len(lines) * line_height(rules.net)
    if rules.net_part is not None and height > rules.net_part * (box.height + 2 * box.y) - box.y:
        return None
    return Block(box.x, box.y + box.height - height, width, rules.net, lines)
