"""The run of a date by the clock: each part with who does it, what is weighed in it, and the cautions that stand at its steps."""

from collections.abc import Iterable, Mapping

from builder.compose.recipe.wording import grams, short_duration
from builder.compose.views.caution import CautionView
from builder.compose.views.for_staff import ClockGroup, ClockRow, StepsGroup
from builder.compose.views.lesson import FlowPart
from builder.model.teaching.class_plan import ClassPlan
from builder.model.teaching.lesson import Part
from builder.words.say import say, say_count


def clock_group(plan: ClassPlan, title: str, parts: Iterable[Part], shown: StepsGroup, words: Mapping[int, str]) -> ClockGroup:
    """Return the rows of some parts, which are shown as steps in the same order.

    `words` say, by the identity of a part of the class, who does it, and whether it fills the wait of another.
    """
    rows = (_row(plan, part, flow, words.get(id(part), flow.who_in_words)) for part, flow in zip(parts, shown.parts, strict=True))
    return ClockGroup(title, tuple(rows))


def _row(plan: ClassPlan, part: Part, flow: FlowPart, who: str) -> ClockRow:
    warns = dict.fromkeys((block.word, block.name) for block in flow.blocks if isinstance(block, CautionView))
    minutes, amounts = short_duration(part.minutes), tuple(_amounts(plan, part))
    return ClockRow(flow.clock, minutes, flow.letter, flow.title, who, amounts, tuple(warns))


def _amounts(plan: ClassPlan, part: Part) -> Iterable[str]:
    """Say what is weighed in a part, what is weighed equally often together."""
    by_pots: dict[int, list[str]] = {}
    for task in plan.weighing.in_part(part):
        by_pots.setdefault(task.pots, []).append(f"{say(task.ingredient)} {grams(task.each)}")
    for pots, amounts in by_pots.items():
        what = ", ".join(amounts)
        yield what if pots == 1 else say_count("{count}\u00a0time: {what}", "{count}\u00a0times: {what}", pots, what=what)
