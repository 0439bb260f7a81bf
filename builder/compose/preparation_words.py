"""What to get ready, in words: cups and bottles, what is printed, and the check list in the order of doing."""

from collections.abc import Iterable

from builder.compose.class_facts import staff
from builder.compose.edition import Edition
from builder.compose.label_counts import label_totals
from builder.compose.label_stocks import wished
from builder.compose.staff_words import after_rows, ahead_rows
from builder.compose.supervision_words import asks_for_eyewash, group_word, numbers, watch_rows
from builder.compose.views.running import CheckGroup, CupRow, StaffRow
from builder.compose.wording import counted, grams, keep_together, listed, sentence, within
from builder.model.class_sheet import ClassSheet
from builder.model.lesson import Who
from builder.model.preparation import CupLine
from builder.model.studio import Studio
from builder.model.studio_class import Format

WHO = {
    Who.AHEAD: "ahead",
    Who.TEACHER: "the teacher",
    Who.STUDENTS: "students",
    Who.TOGETHER: "together",
    Who.AFTER: "staff, after the class",
}
OF_BATCH = {"class": "", "group": ", for each group", "student": ", for each student", "teacher": ", the teacher's own"}
# What a bottle of lye has to say; its hazard statement is that of H314.
LYE_MARK = "Danger: causes severe skin burns and eye damage"


def cup_rows(sheet: ClassSheet) -> tuple[CupRow, ...]:
    """Say of every weighing who does it in which part, and how often."""
    rows: dict[tuple[str, str, str], list[str]] = {}
    for line in sheet.preparation.cups:
        often = "once" if line.cups == 1 else counted(line.cups, "time", "times")
        rows.setdefault((f"{line.recipe}{OF_BATCH[line.purpose]}", _where(line), often), []).append(f"{line.ingredient} {grams(line.each)}")
    return tuple(CupRow(recipe, where, often, "; ".join(what)) for (recipe, where, often), what in rows.items())


def _where(line: CupLine) -> str:
    if line.bottled:
        return "ahead, into marked bottles"
    if line.part is None:
        return "ahead: no part of the lesson names it"
    who = "staff" if line.purpose == "teacher" and line.part.by_hand else WHO[line.part.who]
    return f"{who}: {line.part.title}"


def check_groups(edition: Edition, sheet: ClassSheet) -> tuple[CheckGroup, ...]:
    """Give everything to tick, in the order of doing; headings without a line are left out."""
    ready = sheet.preparation
    ahead = tuple(zip(ahead_rows(sheet, edition.locale), sheet.ahead, strict=True))
    before = [row for row, one in ahead if one.begins is None]
    that_day = [row for row, one in ahead if one.begins is not None]
    groups = [
        CheckGroup("Days before", tuple(_staff_line(row) for row in before)),
        CheckGroup("Print", tuple(_printing(edition.studio, sheet))),
        CheckGroup("Before the class, on the clock", tuple(_staff_line(row) for row in that_day)),
        CheckGroup("Weigh ahead, and mark", (*_bottles(sheet), *_cups(sheet))),
        CheckGroup(_benches(sheet), ready.at_benches if sheet.format is not Format.DEMO else ()),
        CheckGroup("On the demo table", ready.at_demo),
        CheckGroup("At the sink", ready.at_sink),
        CheckGroup("For each person", tuple(f"{worn.people} × {worn.item}" for worn in ready.worn)),
        CheckGroup("Safety, in reach", ready.kit),
        CheckGroup("Before the doors open", tuple(_doors(sheet))),
        CheckGroup("When all have gone", ("Heat off, plugs out", "Gear washed, counted and hung up", "Lye and concentrates locked away")),
        CheckGroup("After the class", tuple(_staff_line(row) for row in after_rows(sheet, edition.locale))),
    ]
    return tuple(CheckGroup(group.title, tuple(keep_together(sentence(line)) for line in group.lines)) for group in groups if group.lines)


def _staff_line(row: StaffRow) -> str:
    return f"{row.when}: {row.title}, {row.minutes}"


def _printing(studio: Studio, sheet: ClassSheet) -> Iterable[str]:
    yield f"Teacher's sheet: {counted(sum(sheet.staff), 'copy', 'copies')}"
    if sheet.groups and sheet.format is not Format.DEMO:
        yield f"Bench cards: 1 set, a card for each of {counted(sheet.groups, group_word(sheet), f'{group_word(sheet)}s')}"
        yield f"Steps at the bench: {counted(sheet.groups, 'copy', 'copies')}"
    for made in (made for made in sheet.made if made.home):
        sizes = listed([home.size.written for home in made.home], "or")
        yield f"Take-home sheet, {within(made.batch.recipe.name)}: {counted(sheet.students, 'copy', 'copies')} ({sizes})"
    if sheet.chosen:
        yield "Scent and colour, cards for the table: 1 set for each table"
    yield from label_totals(studio, sheet)
    if sheet.students and wished(studio, sheet).tags:
        yield f"Tags: {sheet.students}"


def _bottles(sheet: ClassSheet) -> Iterable[str]:
    for made in sheet.made:
        if made.lye_ahead:
            ahead = made.lye_ahead
            yield f"Mix {grams(ahead.solution)} of lye: {grams(ahead.solid)} {within(ahead.alkali)}, {grams(ahead.water)} cold water"
    for one in sheet.preparation.bottles:
        yield (
            f"{counted(one.bottles, 'bottle', 'bottles')} of {within(one.ingredient)}, at least {grams(one.each)} in each, marked: "
            f"its name, {LYE_MARK}, {numbers(range(1, one.bottles + 1), group_word(sheet))}, the date"
        )


def _cups(sheet: ClassSheet) -> Iterable[str]:
    for line in sheet.preparation.cups:
        # One batch that staff make whole is weighed as its part says; cups are for what others find at their place.
        if line.in_a_cup and (line.part is None or line.purpose in ("group", "student")):
            cups = counted(line.cups, "cup", "cups")
            yield f"{cups} of {within(line.ingredient)}, {grams(line.each)} in each, marked with name and weight"


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
