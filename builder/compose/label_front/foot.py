"""The lowest part of a front: what it is and how much, net contents at the height that the law asks, with the clear space above them.

Decided: a mark or a border may stand beside net contents. Why: the clear space is one from other printed information (21 CFR 701.13(f),
from memory), and an ornament informs of nothing.

Decided: what it is stands in nearly half the size of the least name, larger on a wide label, where there is room. Why: its size is to be
reasonably related to the most prominent print (21 CFR 701.11, from memory), and on a lid or a tag it was the smallest thing.
"""

from collections.abc import Callable, Sequence

from builder.compose.label.label_texts import Paragraph, Run
from builder.compose.label_front.ground import Ground
from builder.compose.label_layout.label_lines import Block, line_height
from builder.compose.label_layout.rules import clear_above

OF_NAME, OF_NAME_AT_LEAST, MOST_IDENTITY, ROOMIER = 0.48, 0.4, 13.0, 1.2
OF_WIDTH = 0.17  # Points of what it is, where there is room, to a millimetre of the width: the wider a label is, the larger is its name.


def foot_of(ground: Ground) -> tuple[Block, ...] | None:
    """Set the net contents at the bottom, and what it is above them with the clear space between."""
    rules = ground.rules
    # A border below net contents is kept off by as much as other print would be.
    edge = clear_above(rules) / 2 if ground.design.border and not ground.to_fill_in else 0.0
    net = _at_bottom(ground, ground.text.net, rules.net, ground.space.below - edge)
    if net is None or (rules.net_part is not None and net.y < ground.label.below - rules.net_part * ground.label.height):
        return None
    least = ROOMIER * rules.text if ground.is_roomy else rules.text
    wanted = max(OF_NAME * ground.least_name, OF_WIDTH * ground.space.width) if ground.is_roomy else OF_NAME_AT_LEAST * ground.least_name
    size = max(least, min(wanted, MOST_IDENTITY))
    if not ground.text.identity:
        return (net,)
    for points in (size, rules.text):
        identity = _at_bottom(ground, (Run(ground.text.identity, bold=True),), points, net.y - clear_above(rules))
        if identity is not None and identity.y > ground.space.y:
            return (identity, net)
    return None


def width_of(widths: Sequence[float]) -> Callable[[int], float]:
    """Return how wide each line may be, counted from 0; what comes after the last is as wide as that."""
    return lambda number: widths[min(number, len(widths) - 1)]


def _at_bottom(ground: Ground, paragraph: Paragraph, points: float, bottom: float) -> Block | None:
    """Set a paragraph so that it ends there, in the fewest lines that are wide enough."""
    space, high = ground.space, line_height(points)
    for raised in (0.0, 0.5, 1.0, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0) if space.is_round else (0.0,):
        for count in (1, 2, 3):
            top = bottom - raised - count * high
            widths = [space.across(top + number * high, top + (number + 1) * high)[1] for number in range(count)]
            lines = ground.setter.lines_in(paragraph, points, width_of(widths))
            if lines is not None and len(lines) == count:
                wide = max(widths)
                x = space.middle - wide / 2 if space.is_round else space.x
                return Block(x, top, wide, points, lines, is_centred=ground.is_centred)
    return None
