"""A front: brand, mark, name, variant, and at the bottom what it is and how much.

The name is the largest thing: net contents are set at the height that the law asks for and never above a part of the size of the name.
Nothing here makes lawful type smaller: what does not fit has no composed front, and a finding says so.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from builder.compose.label.label_texts import LabelText
from builder.compose.label_front.designs import Design, Ornament, border_scale
from builder.compose.label_front.drawing import Drawing
from builder.compose.label_front.ground import GAP, Ground
from builder.compose.label_front.marks import best_of, dressed
from builder.compose.label_front.names import lettering_for
from builder.compose.label_front.outlines import BAR, CLEAR, SEAM, WREATH
from builder.compose.label_front.space import Space
from builder.compose.label_layout.label_lines import Block, Setter
from builder.compose.label_layout.rules import LabelRules

AIR = 1.2  # How much more paper than it must have a label without a border leaves at its edges, where there is room.


@dataclass(frozen=True)
class Front:
    """A front laid out; `name` is the size of its name in points; `is_branded`: whose it is stands on it."""

    blocks: tuple[Block, ...]
    drawing: Drawing
    name: float
    is_branded: bool = False


def front_of(
    text: LabelText, space: Space, label: Space, rules: LabelRules, setter: Setter, design: Design, *, to_fill_in: bool = False
) -> Front | None:
    """Compose a front in a space of its label; None where the name would be too small or something lawful does not fit.

    `label` is all of the label that the front has, to its edges. `to_fill_in`: a line to write a title on stands in place of the name.
    """
    front = _first_marked(text, space, label, rules, setter, design, to_fill_in=to_fill_in)
    if text.logo and front and not front.is_branded:
        # A name in capitals takes less room than a logo.
        named = _first_marked(replace(text, logo=None), space, label, rules, setter, design, to_fill_in=to_fill_in)
        front = named if named and named.is_branded else front
    if not to_fill_in or front is None or front.drawing.has_fields:
        return front
    # Too little room for a mark with fields in this design: leaves along an edge need less, and so does a mark without a seam.
    plain = (replace(design, ornament=one, stripes=False, dashes=False, leaves=False) for one in (Ornament.WREATH, Ornament.ABOVE))
    others = (_first_marked(text, space, label, rules, setter, one, to_fill_in=True) for one in plain)
    return next((one for one in others if one and one.drawing.has_fields), front)


def _first_marked(
    text: LabelText, space: Space, label: Space, rules: LabelRules, setter: Setter, design: Design, *, to_fill_in: bool
) -> Front | None:
    """Compose a front in the first way in which what the recipe draws is seen, from the roomiest on; else in the first that does."""
    lettering = lettering_for(setter, text.name, design.face, design.leading, capitals=design.capitals)
    bare: Front | None = None
    for inner, is_rich, is_roomy in _ways(space, label, rules, design, to_fill_in=to_fill_in):
        ground = Ground(text, inner, label, rules, setter, design, lettering, to_fill_in, is_rich, is_roomy)
        found = best_of(ground)
        if found is None:
            continue
        blocks = (*found.brand, *found.middle.blocks, *found.foot)
        front = Front(blocks, dressed(ground, found), found.middle.points, is_branded=bool(found.brand))
        if front.drawing.is_marked:
            return front
        bare = bare or front
    return bare


def _ways(space: Space, label: Space, rules: LabelRules, design: Design, *, to_fill_in: bool) -> Iterator[tuple[Space, bool, bool]]:
    """Yield where words may stand, whether fields are drawn that only this design has, and whether what it is has larger type."""
    if not to_fill_in:
        # Text stands as far from a border as it does from the edge of a label without one.
        border = design.border * border_scale(label.width, label.height)
        inner = space.inside(max(0.0, border + GAP - rules.inset)) if border else space
        if not border and not label.is_round:
            yield inner.inside(AIR), False, True
        yield inner, False, True
        yield inner, False, False
        return
    if not label.is_round and (design.stripes or design.ornament is Ornament.CORNER):
        yield _to_colour(space, label, rules, design, is_rich=True), True, False
    yield _to_colour(space, label, rules, design, is_rich=False), False, False


def _to_colour(space: Space, label: Space, rules: LabelRules, design: Design, *, is_rich: bool) -> Space:
    """Return where words may stand on a label to colour in."""
    inner = space.inside(max(0.0, border_to_colour(design) + GAP - rules.inset))
    if design.ornament is Ornament.WREATH and not label.is_round:
        # The leaves lie along the top alone: net contents need the width, and the lowest part of a label.
        top = label.y + WREATH + GAP
        inner = space.inside(CLEAR - rules.inset)
        inner = replace(inner, y=top, height=inner.below - top)
    if is_rich and design.ornament is Ornament.CORNER:
        inner = replace(inner, x=inner.x + BAR + 1.5 * GAP, width=inner.width - BAR - 1.5 * GAP)
    return inner


def border_to_colour(design: Design) -> float:
    """Return how much of each edge is kept free of words where a label is to be coloured in, in millimetres."""
    if design.ornament is Ornament.WREATH:
        return WREATH
    if design.dashes or design.ornament is Ornament.ON_GROUND:
        return SEAM
    return CLEAR - GAP
