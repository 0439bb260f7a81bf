"""A batch to tables of weighings, one for each phase, in the order in which the batch lists them."""

from collections.abc import Callable, Sequence
from fractions import Fraction

from builder.compose.recipe.wording import (
    NBSP,
    amount,
    number,
    percent,
    reading,
    sentence,
    short_duration,
    temperature,
    weighed,
    weighed_together,
    whole_minutes,
)
from builder.compose.views.ingredient_table import IngredientRow, IngredientTable, PhaseTable
from builder.model.recipe.column import Role, Weighed
from builder.model.recipe.quantity import sum_masses
from builder.model.recipe.recipe import Phase
from builder.model.recipe.worked_batch import WorkedBatch
from builder.words.say import message, say, say_in

COLUMN_NAMES = {"g": message("grams"), "oz": message("ounces")}

Row = tuple[Weighed, ...]


def weighing_table(batch: WorkedBatch) -> IngredientTable:
    """Return the table of a take-home sheet: one column for each unit."""
    columns = tuple(say(COLUMN_NAMES[column.unit]) for column in batch.columns)
    units = [column.unit for column in batch.columns]

    def cells(row: Row) -> tuple[str, ...]:
        return tuple(weighed(w, unit) for w, unit in zip(row, units, strict=True))

    def total(rows: Sequence[Row]) -> tuple[str, ...]:
        return tuple(weighed_together(column, unit) for column, unit in zip(zip(*rows, strict=True), units, strict=True))

    return _table(batch, columns, cells, total)


def staff_table(batch: WorkedBatch) -> IngredientTable:
    """Return the table of a teacher's sheet: share of the batch, exact amount, amount to weigh, scale."""

    def cells(row: Row) -> tuple[str, ...]:
        w = row[0]
        scale = f"{w.scale.name}, {reading(w.scale)}" if w.fits else say("no scale holds this: weigh it in parts")
        return (percent(w.line.share, 3), number(w.line.exact.grams, 3), weighed(w, "g"), scale)

    def total(rows: Sequence[Row]) -> tuple[str, ...]:
        share = sum((row[0].line.share for row in rows), Fraction(0))
        exact = sum_masses(row[0].line.exact for row in rows)
        return (percent(share, 3), number(exact.grams, 3), weighed_together([row[0] for row in rows], "g"), "")

    return _table(batch, (say("share"), say("exact (g)"), say_in("a column of a table", "weigh"), say("scale")), cells, total)


def _table(
    batch: WorkedBatch,
    columns: tuple[str, ...],
    cells: Callable[[Row], tuple[str, ...]],
    total: Callable[[Sequence[Row]], tuple[str, ...]],
) -> IngredientTable:
    rows = batch.rows
    names = dict.fromkeys(row[0].line.phase for row in rows)
    phases = {phase.name.text: phase for phase in batch.recipe.phases}
    tables = []
    for name in names:
        mine = [row for row in rows if row[0].line.phase == name]
        printed = tuple(IngredientRow(_row_name(row[0]), cells(row)) for row in mine)
        together = IngredientRow(say("Together"), total(mine))
        tables.append(PhaseTable(sentence(say(name)), _treatment(phases.get(name)), printed, together, _top_up(batch, name)))
    return IngredientTable(columns, tuple(tables), IngredientRow(say("Whole batch"), total(rows)))


def _top_up(batch: WorkedBatch, phase: str) -> str:
    """Say to what weight a heated phase is brought back, in every unit, and how much hot water that is likely to take."""
    found = [(top_up, column.unit) for column in batch.columns for top_up in column.top_ups if top_up.phase == phase]
    if not found:
        return ""
    scales = {column.unit: [w.scale for w in column.weighed if w.line.phase == phase] for column in batch.columns}
    first, *others = [amount(top_up.weight, scales[unit], unit) for top_up, unit in found]
    weight = " ".join((first, *(f"({text})" for text in others)))
    top_up = found[0][0]
    said = say(
        "Weigh the empty pot first. What steams away is water: after heating, bring what is in the pot back to {weight} with hot water.",
        weight=weight,
    )
    if top_up.lost and len(batch.columns) == 1:  # The studio has measured its own jugs; at home others stand on the stove.
        lost = f"{number(top_up.lost.grams, 0)}{NBSP}g"
        return f"{said} {say('This is likely to take about {weight} ({how}).', weight=lost, how=top_up.measured)}"
    return said


def _row_name(weighing: Weighed) -> str:
    line = weighing.line
    name = sentence(say(str(line.name)))
    return say("{liquid} for the lye", liquid=name) if line.role is Role.LYE_WATER and line.phase == "lye" else name


def _treatment(phase: Phase | None) -> str:
    if phase is None:
        return ""
    words = [say("heat to {temperature}", temperature=temperature(phase.heat_to))] if phase.heat_to else []
    words += [say("hold {time}", time=short_duration(whole_minutes(phase.hold)))] if phase.hold else []
    words += [say("add after the cook")] if phase.after_the_cook else []
    return sentence(", ".join(words))
