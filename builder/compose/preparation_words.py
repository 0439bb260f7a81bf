"""What to get ready, in words: what is printed, and the check list in the order of doing."""

from collections.abc import Iterable
from functools import partial

from builder.compose.class_facts import staff
from builder.compose.edition import Edition
from builder.compose.label_counts import label_totals
from builder.compose.label_stocks import wished
from builder.compose.mentions import class_amount
from builder.compose.staff_words import after_rows, ahead_rows
from builder.compose.supervision_words import asks_for_eyewash, group_word, numbers, watch_rows
from builder.compose.tool_words import batch_with, tool_words
from builder.compose.views.running import CheckGroup, StaffRow
from builder.compose.weighing_words import cup_lines, mixing_lines
from builder.compose.wording import counted, keep_together, listed, sentence, within
from builder.model.class_sheet import ClassSheet
from builder.model.studio import Studio
from builder.model.studio_class import Format


def check_groups(edition: Edition, sheet: ClassSheet) -> tuple[CheckGroup, ...]:
    """Give everything to tick, in the order of doing; headings without a line are left out."""
    ready = sheet.preparation
    ahead = tuple(zip(ahead_rows(sheet, edition.locale), sheet.ahead, strict=True))
    before = [row for row, one in ahead if one.begins is None]
    that_day = [row for row, one in ahead if one.begins is not None]
    groups = [
        CheckGroup("Days before", tuple(_staff_line(row) for row in before)),
        CheckGroup("Print", tuple(_printing(edition, sheet))),
        CheckGroup("Before the class, on the clock", tuple(_staff_line(row) for row in that_day)),
        CheckGroup("Weigh ahead, and mark", (*mixing_lines(sheet), *cup_lines(sheet))),
        CheckGroup(_benches(sheet), _tools(edition.studio, sheet, ready.at_benches) if sheet.format is not Format.DEMO else ()),
        CheckGroup("On the demo table", _tools(edition.studio, sheet, ready.at_demo)),
        CheckGroup("At the sink", ready.at_sink),
        CheckGroup("For each person", tuple(f"{worn.people} × {worn.item}" for worn in ready.worn)),
        CheckGroup("Safety, in reach", ready.kit),
        CheckGroup("Before the doors open", tuple(_doors(sheet))),
        CheckGroup("When all have gone", ("Heat off, plugs out", "Gear washed, counted and hung up", "Lye and concentrates locked away")),
        CheckGroup("After the class", tuple(_staff_line(row) for row in after_rows(sheet, edition.locale))),
    ]
    return tuple(CheckGroup(group.title, tuple(keep_together(sentence(line)) for line in group.lines)) for group in groups if group.lines)


def _tools(studio: Studio, sheet: ClassSheet, tools: Iterable[str]) -> tuple[str, ...]:
    return tuple(tool_words(tool, partial(class_amount, studio, batch_with(tool, sheet.made))) for tool in tools)


def _staff_line(row: StaffRow) -> str:
    return f"{row.when}: {row.title}, {row.minutes}"


def _printing(edition: Edition, sheet: ClassSheet) -> Iterable[str]:
    yield f"Teacher's sheet: {counted(sum(sheet.staff), 'copy', 'copies')}"
    if sheet.groups and sheet.format is not Format.DEMO:
        yield f"Bench cards: 1 set, a card for each of {counted(sheet.groups, group_word(sheet), f'{group_word(sheet)}s')}"
        yield f"Steps at the bench: {counted(sheet.groups, 'copy', 'copies')}"
    for made in (made for made in sheet.made if made.home):
        sizes = listed([home.size.written for home in made.home], "or")
        yield f"Take-home sheet, {within(made.batch.recipe.name)}: {counted(sheet.students, 'copy', 'copies')} ({sizes})"
    if sheet.chosen:
        yield "Scent and colour, cards for the table: 1 set for each table"
    yield from label_totals(edition, sheet)
    if sheet.students and wished(edition.studio, sheet).tags:
        yield f"Tags: {sheet.students}"


def _benches(sheet: ClassSheet) -> str:
    return f"On each bench ({numbers(range(1, sheet.groups + 1), group_word(sheet))})"


def _doors(sheet: ClassSheet) -> Iterable[str]:
    watching = "; ".join(f"{within(row.who)}: {row.watches}" for row in watch_rows(sheet)) if sheet.groups else ""
    yield f"Everybody knows whom they watch ({watching})" if watching else "Everybody knows their place"
    if asks_for_eyewash(sheet):
        yield "Eyewash run and the way to it walked: 10 seconds from every bench"
    yield "Ways free, cords to the wall, bags and coats away"
    yield "First-aid kit, telephone and emergency numbers in sight"


def summary(sheet: ClassSheet) -> tuple[str, ...]:
    """Say who comes, on one line."""
    return (counted(sheet.students, "student", "students"), staff(*sheet.staff), f"taught as {sheet.format}")
