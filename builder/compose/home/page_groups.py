"""Which parts of a take-home sheet stand together on one page: neighbours that speak of the same danger, where both fit.

On a page that they share, the later ones do not say again what the first has said; where it turns out that they do not fit, the sheet is
laid out with each part apart and every caution in its place (`press/fitting.py`).

Decided: a part runs on over a page before its first caution or from it, and nowhere behind it (`take-home.css`). Why: a caution holds to
the end of its part, and one that stands on the page before is missed by wet hands.

Decided: heights are estimated, and what was estimated is tried in the pressing. Why: the type decides what fits, and a caution that has
been left out where its page has been turned would be missed by wet hands.
"""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from itertools import chain

from builder.compose.home.divided import divided
from builder.compose.home.heights import PAGE, lines
from builder.compose.views.caution import CautionView
from builder.compose.views.lesson import FlowPart

NEARLY = 6  # By so many lines an estimate may be too high: a part that was divided is tried whole up to there.


def page_groups(parts: Sequence[FlowPart]) -> tuple[tuple[FlowPart, ...], ...]:
    """Return the parts, and the pieces of what no page holds, in groups, each of which stands on a page; most are groups of one."""
    groups: list[list[FlowPart]] = []
    for part in chain.from_iterable(map(divided, parts)):
        group = groups[-1] if groups else []
        near = _said_before(part, group)
        if group and near is not part and sum(map(lines, (*group, near))) <= PAGE + (NEARLY if part.continues else 0):
            group.append(near)
        else:
            groups.append([part])
    return tuple(map(tuple, groups))


def can_run_on(part: FlowPart) -> bool:
    """Tell whether a part may run on over a page: one that has no caution, or that begins with something else."""
    return not part.warns or not isinstance(part.blocks[0], CautionView)


def _said_before(part: FlowPart, group: Iterable[FlowPart]) -> FlowPart:
    """Return a part with the cautions marked that stand in the group already; the part itself where none does."""
    said = {name for other in group for block in other.blocks if isinstance(block, CautionView) for name in block.names}
    if not any(isinstance(block, CautionView) and set(block.names) <= said for block in part.blocks):
        return part
    blocks = (replace(one, when_apart=set(one.names) <= said) if isinstance(one, CautionView) else one for one in part.blocks)
    return replace(part, blocks=tuple(blocks))
