"""A batch to its phases with their weighings in every unit, and to the table of all of them for staff."""

from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import NamedTuple

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
from builder.model.recipe.column import LYE_PHASE, Role, Weighed
from builder.model.recipe.quantity import sum_masses
from builder.model.recipe.recipe import Phase
from builder.model.recipe.worked_batch import WorkedBatch
from builder.words.say import message, say, say_in

IN_PARTS = message("no scale holds this: weigh it in parts")

Row = tuple[Weighed, ...]


class PhaseRows(NamedTuple):
    """One phase of a batch: its heading, what is done with it in words (empty where nothing is), its rows, what follows below it.

    `apart` is how its rows are weighed where a scale does not hold all of them at once, in the column of scales beside their sum.
    """

    title: str
    treatment: str
    rows: tuple[Row, ...]
    note: str
    apart: str


def phases_of(batch: WorkedBatch) -> Iterator[PhaseRows]:
    """Yield the phases of a batch, in the order in which it lists them."""
    phases = {phase.name.text: phase for phase in batch.recipe.phases}
    for name in dict.fromkeys(row[0].line.phase for row in batch.rows):
        mine = tuple(row for row in batch.rows if row[0].line.phase == name)
        yield PhaseRows(sentence(say(name)), _treatment(phases.get(name)), mine, _top_up(batch, name), one_at_a_time(batch, name))


def staff_table(batch: WorkedBatch) -> IngredientTable:
    """Return the table of the workings: share of the batch, exact amount, amount to weigh, scale."""
    columns = (say("share"), say("exact (g)"), say_in("a column of a table", "weigh"), say("scale"))
    phases = (
        PhaseTable(one.title, one.treatment, tuple(map(_staff_row, one.rows)), _together(say("Together"), one.rows, one.apart), one.note)
        for one in phases_of(batch)
    )
    return IngredientTable(columns, tuple(phases), _together(say("Whole batch"), batch.rows))


def one_at_a_time(batch: WorkedBatch, phase: str) -> str:
    """Return how a phase is weighed of which a scale does not hold at once all that is weighed on it; empty where all of them do."""
    told = any(of == phase for column in batch.columns for of, _ in column.one_at_a_time)
    return say("a cup each") if told else ""


def _staff_row(row: Row) -> IngredientRow:
    w = row[0]
    scale = f"{w.scale.name}, {reading(w.scale)}" if w.fits else say(IN_PARTS)
    return IngredientRow(row_name(w), (percent(w.line.share, 3), number(w.line.exact.grams, 3), weighed(w, "g"), scale))


def _together(name: str, rows: Sequence[Row], scale: str = "") -> IngredientRow:
    mine = [row[0] for row in rows]
    share, exact = sum((w.line.share for w in mine), Fraction(0)), sum_masses(w.line.exact for w in mine)
    return IngredientRow(name, (percent(share, 3), number(exact.grams, 3), weighed_together(mine, "g"), scale))


def _top_up(batch: WorkedBatch, phase: str) -> str:
    """Return in words to what weight a heated phase is brought back, in every unit, and how much hot water that is likely to take."""
    found = [(top_up, column.unit) for column in batch.columns for top_up in column.top_ups if top_up.phase == phase]
    if not found:
        return ""
    scales = {column.unit: [w.scale for w in column.weighed if w.line.phase == phase] for column in batch.columns}
    first, *others = [amount(top_up.weight, scales[unit], unit) for top_up, unit in found]
    weight = " ".join((first, *(f"({text})" for text in others)))
    top_up = found[0][0]
    said = say(
        "What steams away is water. Weigh the pot with all that is in it before you heat it, and again after: make up with hot water, so "
        "that it holds {weight} again.",
        weight=weight,
    )
    if top_up.lost and len(batch.columns) == 1:  # The studio has measured its own jugs; at home others stand on the stove.
        lost = f"{number(top_up.lost.grams, 0)}{NBSP}g"
        return f"{said} {say('This is likely to take about {weight} ({how}).', weight=lost, how=top_up.measured)}"
    return said


def row_name(weighing: Weighed) -> str:
    """Name what is weighed; a liquid for the lye, as what it is there for."""
    line = weighing.line
    name = sentence(say(str(line.name)))
    return say("{liquid} for the lye", liquid=name) if line.role is Role.LYE_WATER and line.phase == LYE_PHASE else name


def _treatment(phase: Phase | None) -> str:
    if phase is None:
        return ""
    words = [say("heat to {temperature}", temperature=temperature(phase.heat_to))] if phase.heat_to else []
    words += [say("hold {time}", time=short_duration(whole_minutes(phase.hold)))] if phase.hold else []
    words += [say("add after the cook")] if phase.after_the_cook else []
    return sentence(", ".join(words))
