"""The plan of a room: the demo table and the sink in front, the benches in rows, and on each bench who watches it. Not to scale.

An eyewash is drawn only where a rule of the class asks for one: nobody is to run to one that is not there.
"""

from collections.abc import Iterable

from builder.compose.punctuation import labelled
from builder.compose.recipe.wording import sentence
from builder.compose.teaching.supervision_words import adult, asks_for_eyewash, in_groups, numbers, people_of, place_kind, watch_rows
from builder.compose.views.running import PlanBox, PlanText, SeatingView
from builder.model.dates.studio_class import Format
from builder.model.teaching.class_plan import ClassPlan
from builder.words.say import say

WIDTH, FRONT, SINK, GAP, ROW, LINE = 660, 30, 200, 10, 42, 17
# Benches in a row: few while two rows hold them all, so that their words are large.
IN_A_ROW, IN_A_LONG_ROW = 4, 6


def view_seating(plan: ClassPlan) -> SeatingView | None:
    """Draw the plan; a demonstration has chairs and no benches, and nobody needs a drawing of them."""
    if not plan.groups or plan.format is Format.DEMO:
        return None
    columns = min(IN_A_ROW if plan.groups <= IN_A_ROW * 2 else IN_A_LONG_ROW, plan.groups)
    width = (WIDTH - GAP * (columns - 1)) // columns
    sink = say("Sink and eyewash") if asks_for_eyewash(plan) else say("Sink")
    tables: list[tuple[PlanBox, tuple[str, ...]]] = [
        (PlanBox(0, 0, WIDTH - GAP - SINK, FRONT, True), (say("Demo table"),)),
        (PlanBox(WIDTH - SINK, 0, SINK, FRONT, True), (sink,)),
    ]
    for index in range(plan.groups):
        row, column = divmod(index, columns)
        box = PlanBox(column * (width + GAP), FRONT + GAP * 2 + row * (ROW + GAP), width, ROW, False)
        tables.append((box, _lines(plan, index + 1)))
    said = "; ".join(labelled(row.who, row.watches) for row in watch_rows(plan))
    bottom = max(box.y + box.height for box, _ in tables)
    return SeatingView(
        key=f"{plan.studio_class.key}-plan",
        view_box=f"-1 -1 {WIDTH + 2} {bottom + 2}",
        boxes=tuple(box for box, _ in tables),
        texts=tuple(text for box, lines in tables for text in _texts(box, lines)),
        description=" ".join((say("Plan of the room, not to scale."), f"{said}.", *_for_all(plan), _way(plan))),
    )


def _way(plan: ClassPlan) -> str:
    if asks_for_eyewash(plan):
        return say("Keep the way to the sink and eyewash free.")
    return say("Keep the way to the sink free.")


def _for_all(plan: ClassPlan) -> tuple[str, ...]:
    """Return in words which groups weigh for everybody, since their benches need what stands on the demo table."""
    groups = plan.weighing.groups_that_weigh_for_all() if plan.groups > 1 else ()
    if in_groups(plan):
        return tuple(say("Group {number} weighs for all, at the demo table.", number=number) for number in groups)
    return tuple(say("Place {number} weighs for all, at the demo table.", number=number) for number in groups)


def _texts(box: PlanBox, lines: tuple[str, ...]) -> Iterable[PlanText]:
    first = box.y + (box.height - LINE * len(lines)) // 2 + LINE - 4
    for number, words in enumerate(lines):
        yield PlanText(box.x + box.width // 2, first + number * LINE, words, bold=number == 0)


def _lines(plan: ClassPlan, number: int) -> tuple[str, ...]:
    people = plan.last_group if number == plan.groups else plan.studio_class.group_size
    name = sentence(numbers((number,), place_kind(plan)))
    first = labelled(name, people_of(people)) if in_groups(plan) else name
    watching = [adult(one) for one in plan.supervision.watchers if number in one.groups]
    return (first, watching[0] if watching else say("nobody"))
