"""The plan of a room: the demo table and the sink in front, the benches in rows, and on each bench who watches it. Not to scale.

An eyewash is drawn only where a rule of the class asks for one: nobody is to run to one that is not there.
"""

from collections.abc import Iterable

from builder.compose.supervision_words import adults, asks_for_eyewash, group_word, watch_rows
from builder.compose.views.running import PlanBox, PlanText, SeatingView
from builder.compose.wording import counted, sentence, within
from builder.model.class_sheet import ClassSheet
from builder.model.studio_class import Format

WIDTH, FRONT, SINK, GAP, ROW, LINE = 660, 30, 200, 10, 42, 17
# Benches in a row: few while two rows hold them all, so that their words are large.
IN_A_ROW, IN_A_LONG_ROW = 4, 6


def view_seating(sheet: ClassSheet) -> SeatingView | None:
    """Draw the plan; a demonstration has chairs and no benches, and nobody needs a drawing of them."""
    if not sheet.groups or sheet.format is Format.DEMO:
        return None
    columns = min(IN_A_ROW if sheet.groups <= IN_A_ROW * 2 else IN_A_LONG_ROW, sheet.groups)
    width = (WIDTH - GAP * (columns - 1)) // columns
    sink = "Sink and eyewash" if asks_for_eyewash(sheet) else "Sink"
    tables: list[tuple[PlanBox, tuple[str, ...]]] = [
        (PlanBox(0, 0, WIDTH - GAP - SINK, FRONT, True), ("Demo table",)),
        (PlanBox(WIDTH - SINK, 0, SINK, FRONT, True), (sink,)),
    ]
    for index in range(sheet.groups):
        row, column = divmod(index, columns)
        box = PlanBox(column * (width + GAP), FRONT + GAP * 2 + row * (ROW + GAP), width, ROW, False)
        tables.append((box, _lines(sheet, index + 1)))
    said = "; ".join(f"{row.who}: {row.watches}" for row in watch_rows(sheet))
    bottom = max(box.y + box.height for box, _ in tables)
    return SeatingView(
        key=f"{sheet.studio_class.key}-plan",
        view_box=f"-1 -1 {WIDTH + 2} {bottom + 2}",
        boxes=tuple(box for box, _ in tables),
        texts=tuple(text for box, lines in tables for text in _texts(box, lines)),
        description=f"Plan of the room, not to scale. {said}. {_for_all(sheet)}Keep the way to the {within(sink)} free.",
    )


def _for_all(sheet: ClassSheet) -> str:
    """Say which groups weigh for everybody, since their benches need what stands on the demo table."""
    groups = sheet.weighing.groups_that_weigh_for_all() if sheet.groups > 1 else ()
    return "".join(f"{sentence(group_word(sheet))} {number} weighs for all, at the demo table. " for number in groups)


def _texts(box: PlanBox, lines: tuple[str, ...]) -> Iterable[PlanText]:
    first = box.y + (box.height - LINE * len(lines)) // 2 + LINE - 4
    for number, words in enumerate(lines):
        yield PlanText(box.x + box.width // 2, first + number * LINE, words, bold=number == 0)


def _lines(sheet: ClassSheet, number: int) -> tuple[str, ...]:
    people = sheet.last_group if number == sheet.groups else sheet.studio_class.group_size
    word = sentence(group_word(sheet))
    first = f"{word} {number}: {counted(people, 'person', 'people')}" if sheet.studio_class.group_size > 1 else f"{word} {number}"
    watching = [name for name, groups in zip(adults(sheet), sheet.supervision.watched, strict=True) if number in groups]
    return (first, watching[0] if watching else "nobody")
