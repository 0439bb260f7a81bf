"""What to get ready, in words: what is printed, and the check list in the order of doing."""

from collections.abc import Iterable
from functools import partial

from builder.compose.edition import Edition
from builder.compose.recipe.wording import counted, keep_together, sentence, within
from builder.compose.teaching.class_facts import staff
from builder.compose.teaching.mentions import class_amount
from builder.compose.teaching.staff_words import after_rows, ahead_rows
from builder.compose.teaching.supervision_words import asks_for_eyewash, group_word, numbers, watch_rows
from builder.compose.teaching.tool_words import batch_with, tool_words
from builder.compose.teaching.weighing_words import cup_lines, mixing_lines
from builder.compose.views.running import CheckGroup, StaffRow
from builder.model.dates.studio_class import Format
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan


def check_groups(edition: Edition, plan: ClassPlan, printing: Iterable[str]) -> tuple[CheckGroup, ...]:
    """Give everything to tick, `printing` among it, in the order of doing; headings without a line are left out."""
    ready = plan.preparation
    ahead = tuple(zip(ahead_rows(plan, edition.locale), plan.ahead, strict=True))
    before = [row for row, one in ahead if one.begins is None]
    that_day = [row for row, one in ahead if one.begins is not None]
    groups = [
        CheckGroup("Days before", tuple(_staff_line(row) for row in before)),
        CheckGroup("Print", tuple(printing)),
        CheckGroup("Before the class, on the clock", tuple(_staff_line(row) for row in that_day)),
        CheckGroup("Weigh ahead, and mark", (*mixing_lines(plan), *cup_lines(plan))),
        CheckGroup(_benches(plan), _tools(edition.studio, plan, ready.at_benches) if plan.format is not Format.DEMO else ()),
        CheckGroup("On the demo table", _tools(edition.studio, plan, ready.at_demo)),
        CheckGroup("At the sink", ready.at_sink),
        CheckGroup("For each person", tuple(f"{worn.people} × {worn.item}" for worn in ready.worn)),
        CheckGroup("Safety, in reach", ready.kit),
        CheckGroup("Before the doors open", tuple(_doors(plan))),
        CheckGroup("When all have gone", ("Heat off, plugs out", "Gear washed, counted and hung up", "Lye and concentrates locked away")),
        CheckGroup("After the class", tuple(_staff_line(row) for row in after_rows(plan, edition.locale))),
    ]
    return tuple(CheckGroup(group.title, tuple(keep_together(sentence(line)) for line in group.lines)) for group in groups if group.lines)


def _tools(studio: Studio, plan: ClassPlan, tools: Iterable[str]) -> tuple[str, ...]:
    return tuple(tool_words(tool, partial(class_amount, studio, batch_with(tool, plan.made))) for tool in tools)


def _staff_line(row: StaffRow) -> str:
    return f"{row.when}: {row.title}, {row.minutes}"


def _benches(plan: ClassPlan) -> str:
    return f"On each bench ({numbers(range(1, plan.groups + 1), group_word(plan))})"


def _doors(plan: ClassPlan) -> Iterable[str]:
    watching = "; ".join(f"{within(row.who)}: {row.watches}" for row in watch_rows(plan)) if plan.groups else ""
    yield f"Everybody knows whom they watch ({watching})" if watching else "Everybody knows their place"
    if asks_for_eyewash(plan):
        yield "Eyewash run and the way to it walked: 10 seconds from every bench"
    yield "Ways free, cords to the wall, bags and coats away"
    yield "First-aid kit, telephone and emergency numbers in sight"


def summary(plan: ClassPlan) -> tuple[str, ...]:
    """Say who comes, on one line."""
    return (counted(plan.students, "student", "students"), staff(*plan.staff), f"taught as {plan.format}")
