"""How long what is hot takes to cool, said where one waits for it: after the steps that make lye, before what heat would spoil is added."""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from html import escape

from builder.compose.formula.heat_words import cools_in
from builder.compose.views.lesson import FlowBlock, FlowPart, LessonFlow, ProseView, StepRun
from builder.model.formula.warmth import CoolsTo
from builder.model.recipe.column import Role, Weighed
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.model.teaching.lesson import Part
from builder.rules.naming import meaning_of, weighings


def cooling_at_its_step(flow: LessonFlow, studio: Studio, parts: Sequence[Part], batch: WorkedBatch) -> LessonFlow:
    """Return the flow of some parts, each time of cooling a paragraph of it; at its end where no step weighs what is waited for."""
    shown = list(flow.parts)
    for one in batch.cools if shown else ():
        place, step = _weighed_at(studio, parts, batch, one)
        shown[place] = _said_in(shown[place], one, step)
    return replace(flow, parts=tuple(shown))


def _weighed_at(studio: Studio, parts: Sequence[Part], batch: WorkedBatch, one: CoolsTo) -> tuple[int, int]:
    """Return in which part and at which of its steps what is waited for is first weighed; of none the end of the last part."""
    for place, part in enumerate(parts):
        for number, step in enumerate(part.steps, start=1):
            named = (weighings(batch.grams, meaning_of(mention.name, batch.recipe, studio)) for mention in step.mentions)
            if any(_waits(w, one) for these in named for w in these):
                return place, number
    return len(parts) - 1, 0


def _waits(weighed: Weighed, one: CoolsTo) -> bool:
    below = weighed.line.ingredient.figure("add below")
    return weighed.line.role is Role.ALKALI if one.what == "lye" else below is not None and below.low == one.in_air.ends


def _said_in(part: FlowPart, one: CoolsTo, step: int) -> FlowPart:
    line = ProseView(f"<p>{escape(cools_in(one))}</p>")
    if one.what == "lye" or not step:
        return replace(part, blocks=(*part.blocks, line))
    return replace(part, blocks=tuple(_before(part.blocks, step, line)))


def _before(blocks: Sequence[FlowBlock], step: int, line: ProseView) -> Iterable[FlowBlock]:
    for block in blocks:
        if isinstance(block, StepRun) and block.start <= step < block.start + len(block.html):
            yield line
        yield block
