"""How long what is hot takes to cool, said where one waits for it: after the steps that make lye, before what heat would spoil is added."""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from functools import partial
from html import escape

from builder.compose.formula.heat_words import cools_in
from builder.compose.home.first_weighed import first_weighed
from builder.compose.views.lesson import FlowBlock, FlowPart, LessonFlow, ProseView, StepRun
from builder.model.formula.warmth import Cools, CoolsTo
from builder.model.recipe.column import Role, Weighed
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.model.teaching.lesson import Part


def cooling_at_its_step(flow: LessonFlow, studio: Studio, parts: Sequence[Part], batch: WorkedBatch) -> LessonFlow:
    """Return the flow of some parts, each time of cooling a paragraph of it; at its end where no step weighs what is waited for."""
    shown = list(flow.parts)
    for one in batch.cools if shown else ():
        place, step = first_weighed(studio, parts, batch, partial(_waits, one)) or (len(parts) - 1, 0)
        shown[place] = _said_in(shown[place], one, step)
    return replace(flow, parts=tuple(shown))


def _waits(one: CoolsTo, weighed: Weighed) -> bool:
    below = weighed.line.ingredient.figure("add below")
    return weighed.line.role is Role.ALKALI if one.what is Cools.LYE else below is not None and below.low == one.in_air.ends


def _said_in(part: FlowPart, one: CoolsTo, step: int) -> FlowPart:
    line = ProseView(f"<p>{escape(cools_in(one))}</p>")
    if one.what is Cools.LYE or not step:
        return replace(part, blocks=(*part.blocks, line))
    return replace(part, blocks=tuple(_before(part.blocks, step, line)))


def _before(blocks: Sequence[FlowBlock], step: int, line: ProseView) -> Iterable[FlowBlock]:
    for block in blocks:
        if isinstance(block, StepRun) and block.start <= step < block.start + len(block.html):
            yield line
        yield block
