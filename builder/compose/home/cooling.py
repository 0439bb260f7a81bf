"""How long what is hot takes to cool, said where one waits for it: after the steps that make lye; before the step that cools the batch, and
where no step does, before what heat would spoil is added.
"""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from functools import partial
from html import escape

from builder.compose.formula.heat_words import between, cools_in
from builder.compose.home.first_weighed import first_weighed
from builder.compose.recipe.wording import short_duration
from builder.compose.views.lesson import FlowBlock, FlowPart, LessonFlow, ProseView, StepRun
from builder.model.formula.warmth import Cools, CoolsTo
from builder.model.recipe.column import Role, Weighed
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.model.teaching.lesson import Part
from builder.model.teaching.prose import Sentence
from builder.rules.degrees import all_degrees_in, is_bound
from builder.words.say import say


def cooling_at_its_step(flow: LessonFlow, studio: Studio, parts: Sequence[Part], batch: WorkedBatch) -> LessonFlow:
    """Return the flow of some parts, each time of cooling a paragraph of it; at its end where no step weighs what is waited for."""
    shown = list(flow.parts)
    for one in batch.cools if shown else ():
        weighed = first_weighed(studio, parts, batch, partial(_waits, one)) or (len(parts) - 1, 0)
        named = None if one.what is Cools.LYE else _cooled(parts, one, weighed)
        place, step = named or weighed
        said = say("To cool: {time}; in cold water perhaps a tenth.", time=between(one.in_air, short_duration)) if named else cools_in(one)
        line = ProseView(f"<p>{escape(said)}</p>")
        shown[place] = _said_in(shown[place], line, 0 if one.what is Cools.LYE else step)
    return replace(flow, parts=tuple(shown))


def _waits(one: CoolsTo, weighed: Weighed) -> bool:
    below = weighed.line.ingredient.figure("add below")
    return weighed.line.role is Role.ALKALI if one.what is Cools.LYE else below is not None and below.low == one.in_air.ends


def _cooled(parts: Sequence[Part], one: CoolsTo, weighed: tuple[int, int]) -> tuple[int, int] | None:
    """Return the place of the last step before another at which the batch is to come below its end, as `first_weighed` does."""
    steps = ((place, number, step) for place, part in enumerate(parts) for number, step in enumerate(part.steps, start=1))
    cooled = [at for *at, step in steps if tuple(at) < weighed and any(_is_below(one, sentence) for sentence in step.sentences)]
    return (cooled[-1][0], cooled[-1][1]) if cooled else None


def _is_below(one: CoolsTo, sentence: Sentence) -> bool:
    return any(degrees.high == one.in_air.ends and is_bound(sentence, degrees) for degrees in all_degrees_in(sentence))


def _said_in(part: FlowPart, line: ProseView, step: int) -> FlowPart:
    return replace(part, blocks=tuple(_before(part.blocks, step, line)) if step else (*part.blocks, line))


def _before(blocks: Sequence[FlowBlock], step: int, line: ProseView) -> Iterable[FlowBlock]:
    for block in blocks:
        if not isinstance(block, StepRun) or not block.start <= step < block.start + len(block.html):
            yield block
            continue
        here = step - block.start
        if here:
            yield replace(block, html=block.html[:here])
        yield line
        yield replace(block, start=step, html=block.html[here:])
