"""In which part of a take-home sheet, at which step, something is weighed first; what there is to know of lye stands before it."""

from collections.abc import Callable, Sequence
from dataclasses import replace

from builder.compose.views.lesson import LessonFlow
from builder.model.recipe.column import Weighed
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.model.teaching.lesson import Part
from builder.rules.hands.named_amounts import weighed_as


def first_weighed(studio: Studio, parts: Sequence[Part], batch: WorkedBatch, wanted: Callable[[Weighed], bool]) -> tuple[int, int] | None:
    """Return the place of the part, from 0, and the number of the step, from 1, in which what is wanted is first weighed."""
    for place, part in enumerate(parts):
        for number, step in enumerate(part.steps, start=1):
            if any(map(wanted, weighed_as(studio, batch, step.mentions))):
                return place, number
    return None


def lye_opened(flow: LessonFlow, studio: Studio, parts: Sequence[Part], batch: WorkedBatch) -> LessonFlow:
    """Return the flow of some parts, that marked before which stands what there is to know of lye: the first that weighs anything."""
    if batch.grams.lye is None or not flow.parts:
        return flow
    place, _ = first_weighed(studio, parts, batch, lambda _: True) or (0, 0)
    return replace(flow, parts=tuple(replace(part, opens_lye=number == place) for number, part in enumerate(flow.parts)))
