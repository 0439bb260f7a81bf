"""Parts of a take-home sheet that follow one another under the same cautions, which stand before the first of them.

The PDF engine repeats what stands there at the head of each page onto which the parts run (`take-home.css`), so that a caution is on the
page of each step that it is about, wherever a page ends.

Decided: parts share no caution of more than `MOST` letters. Why: what is repeated on page after page has to be short.

Decided: a caution holds to the end of its part. Why: which later step it is about, words do not tell for certain ("Sprinkle it over"), and
one too many on a page harms nobody.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import takewhile

from builder.compose.views.caution import CautionView
from builder.compose.views.lesson import FlowPart, StepRun, Under

MOST = 400  # Six lines of a caution.


def under_one(parts: Sequence[FlowPart]) -> tuple[FlowPart | Under, ...]:
    """Return the parts, neighbours that share cautions together, and among these again those that share more of them."""
    return tuple(_found(parts))


def _found(parts: Sequence[FlowPart]) -> Iterator[FlowPart | Under]:
    begin = 0
    while begin < len(parts):
        run, shared = _run(parts[begin:])
        begin += len(run)
        if len(run) == 1:
            yield from run
        else:
            yield Under(shared, under_one([_without(part, shared) for part in run]))


def _run(parts: Sequence[FlowPart]) -> tuple[Sequence[FlowPart], tuple[CautionView, ...]]:
    """Return as many parts as share a caution that stands before the first step of the first, and what all of these share."""
    before = takewhile(lambda block: not isinstance(block, StepRun), parts[0].blocks)
    boxes = [block for block in before if isinstance(block, CautionView)]
    shared = tuple(_standing(boxes, [box for box in boxes if not box.is_said and _is_short(box)]))
    for number, part in enumerate(parts[1:], start=1):
        common = tuple(_standing(shared, [box for box in shared if set(box.names) <= _names(part)]))
        if not common:
            return parts[:number], shared
        shared = common
    return parts, shared


def _standing(boxes: Sequence[CautionView], wanted: Sequence[CautionView]) -> Iterator[CautionView]:
    """Yield of some boxes those that are wanted; one that leaves something to the box above it, only where that stands above it still."""
    stands = True
    for box in boxes:
        stands = box.is_said or (box in wanted and (stands or not box.leans))
        if stands and not box.is_said:
            yield box


def _without(part: FlowPart, shared: Sequence[CautionView]) -> FlowPart:
    """Return a part in which what stands before it already is marked as said."""
    said = {name for box in shared for name in box.names}
    blocks = (
        replace(one, is_said=set(one.names) <= said) if isinstance(one, CautionView) and not one.is_said else one for one in part.blocks
    )
    return replace(part, blocks=tuple(blocks))


def _is_short(box: CautionView) -> bool:
    return sum(map(len, (*box.dangers, *box.aid_here))) <= MOST


def _names(part: FlowPart) -> set[str]:
    return {name for block in part.blocks if isinstance(block, CautionView) for name in block.names}
