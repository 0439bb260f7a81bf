"""Which parts of a take-home sheet stand together on one page: neighbours that speak of the same danger, where both fit.

On a page that they share, the later ones do not say again what the first has said; where it turns out that they do not fit, the sheet is
laid out with each part apart and every caution in its place (`press/fitting.py`).

Decided: heights are estimated, and what was estimated is tried in the pressing. Why: the type decides what fits, and a caution that has
been left out where its page has been turned would be missed by wet hands.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import replace

from builder.compose.views.caution import CautionView
from builder.compose.views.lesson import FlowBlock, FlowPart, ProseView, StepRun
from builder.words.html_text import told_in

# As `take-home.css` sets them at 14 pt on the lower of the two sheets of paper: lines of a page, letters to a line.
PAGE, HEAD, FRAME, DRAWINGS, PARAGRAPH = 44.6, 2.0, 0.4, 1.0, 0.2
OF_TEXT, OF_CAUTION, OF_STEP = 62, 65, 61
CAUTION_LINE, STEP_GAP, DRAWN_STEP = 0.92, 0.06, 1.25


def page_groups(parts: Sequence[FlowPart]) -> tuple[tuple[FlowPart, ...], ...]:
    """Return the parts in groups, each of which stands on a page; most are groups of one."""
    groups: list[list[FlowPart]] = []
    for part in parts:
        group = groups[-1] if groups else []
        near = _said_before(part, group)
        if group and near is not part and sum(map(_lines, (*group, near))) <= PAGE:
            group.append(near)
        else:
            groups.append([part])
    return tuple(map(tuple, groups))


def can_run_on(part: FlowPart) -> bool:
    """Tell whether a part has a place from which it can run on over a page under cautions of its own: a caution behind steps."""
    kinds = [type(block) for block in part.blocks]
    return StepRun in kinds and CautionView in kinds[kinds.index(StepRun) :]


def _said_before(part: FlowPart, group: Iterable[FlowPart]) -> FlowPart:
    """Return a part with the cautions marked that stand in the group already; the part itself where none does."""
    said = {name for other in group for block in other.blocks if isinstance(block, CautionView) for name in block.names}
    if not any(isinstance(block, CautionView) and set(block.names) <= said for block in part.blocks):
        return part
    blocks = (replace(one, when_apart=set(one.names) <= said) if isinstance(one, CautionView) else one for one in part.blocks)
    return replace(part, blocks=tuple(blocks))


def _lines(part: FlowPart) -> float:
    """Estimate the height of a part, in lines of its text."""
    return HEAD + sum(map(_lines_of, part.blocks))


def _lines_of(block: FlowBlock) -> float:
    match block:
        case ProseView(html):
            text = told_in(html)
            return (math.ceil(len(text) / OF_TEXT) + PARAGRAPH if text else 0) + (DRAWINGS if "<figure" in html else 0)
        case StepRun():
            return sum(_of_step(html) for html in block.html)
        case CautionView():
            said = (*(f"{block.word} {danger}" for danger in block.dangers), " ".join(block.if_it_happens))
            return 0.0 if block.when_apart else FRAME + CAUTION_LINE * sum(math.ceil(len(text) / OF_CAUTION) for text in said)


def _of_step(html: str) -> float:
    text, drawn = told_in(html), "<figure" in html
    return math.ceil(len(text) * (DRAWN_STEP if drawn else 1) / OF_STEP) + STEP_GAP
