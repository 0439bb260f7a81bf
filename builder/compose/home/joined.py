"""Cautions that stand together before one step, with what they share said once.

Decided: a sentence is left out only where the box directly above it says the same sentence. Why: wet hands do not turn pages, and two boxes
of the same words hide the one that differs.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import groupby

from builder.compose.formula.first_aid import in_sentences
from builder.compose.views.caution import CautionView
from builder.compose.views.lesson import FlowBlock, LessonFlow


def joined(flow: LessonFlow) -> LessonFlow:
    """Return a flow in which cautions of one place share a frame where the second has no first aid of its own."""
    return replace(flow, parts=tuple(replace(part, blocks=tuple(_joined(part.blocks))) for part in flow.parts))


def _joined(blocks: Sequence[FlowBlock]) -> Iterator[FlowBlock]:
    for are_cautions, run in groupby(blocks, lambda block: isinstance(block, CautionView)):
        here = tuple(run)
        yield from of_one_place([one for one in here if isinstance(one, CautionView)]) if are_cautions else here


def of_one_place(cautions: Sequence[CautionView]) -> list[CautionView]:
    """Return the boxes of cautions that stand one beneath the other."""
    boxes: list[CautionView] = []
    said: set[str] = set()
    for caution in cautions:
        sentences = in_sentences(caution.if_it_happens)
        own, avoid = (tuple(one for one in all_of_it if one not in said) for all_of_it in (sentences, caution.avoid))
        leans = len(own) < len(sentences) or len(avoid) < len(caution.avoid)
        said.update(sentences, caution.avoid)
        here = replace(caution, avoid=avoid, if_it_happens=own, leans=leans)
        if own or not boxes or boxes[-1].signal != here.signal:
            boxes.append(here)
        else:
            boxes[-1] = replace(boxes[-1], also=(*boxes[-1].also, here))
    return boxes
