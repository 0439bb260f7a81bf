"""A batch as a table for the terminal: what to weigh, on which scale, and what it comes to. All text is ready to print.

Ounces stand beside the grams: as weighed on the studio's own scales that read in ounces, or, where it has none, the same weight in ounces.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from builder.compose.dose.dose_words import view_choice
from builder.compose.recipe.wording import counted, finely_in_ounces, grams, listed, number, percent, reading, sentence, weighed
from builder.model.recipe.column import Weighed
from builder.model.recipe.quantity import Mass
from builder.model.recipe.worked_batch import WorkedBatch


@dataclass(frozen=True)
class WeighTable:
    """A title, rows in the order of HEADINGS, a total row, and lines of notes beneath."""

    title: str
    rows: tuple[tuple[str, ...], ...]
    total: tuple[str, ...]
    notes: tuple[str, ...]


HEADINGS = ("phase", "ingredient", "share", "exact", "weigh", "scale", "in ounces")


def batch_table(batch: WorkedBatch, purpose: str, more: Sequence[str] = ()) -> WeighTable:
    """Lay out the columns of one batch; `more` are lines to print beneath."""
    column = batch.grams
    rows = []
    phase = ""
    for row in batch.rows:
        w, line = row[0], row[0].line
        exact = f"{number(line.exact.grams, 4)} g"
        cells = (
            "" if line.phase == phase else line.phase,
            line.name,
            percent(line.share, 3),
            exact,
            weighed(w, column.unit),
            reading(w.scale),
            _in_ounces(batch, row),
        )
        rows.append(cells)
        phase = line.phase
    title = f"{batch.recipe.name}, {purpose}" if purpose else batch.recipe.name
    total = ("", "batch", "100%", "", grams(column.total), "", finely_in_ounces(batch.columns[-1].total))
    return WeighTable(title, tuple(rows), total, (*_one_at_a_time(batch), _fills(batch), *_notes(batch), *_doses(batch), *more))


def _one_at_a_time(batch: WorkedBatch) -> list[str]:
    phases = dict.fromkeys((phase, scale.name) for column in batch.columns for phase, scale in column.one_at_a_time)
    return [
        f"{sentence(phase)}: weigh each in a cup of its own; all that is weighed on the {scale} is more than it holds at once."
        for phase, scale in phases
    ]


def _in_ounces(batch: WorkedBatch, row: tuple[Weighed, ...]) -> str:
    if len(row) == 1:
        return finely_in_ounces(row[0].mass)
    return f"{weighed(row[1], batch.columns[1].unit)}, {reading(row[1].scale)}"


def _fills(batch: WorkedBatch) -> str:
    each = [
        f"{counted(one.portions.yields, 'container', 'containers')} ({one.fill.container}) of {_both(one.read.fill)}"
        for one in batch.fillings
    ]
    return f"Fills {listed(each)}; {_both(batch.own.read.left)} left over."


def _both(mass: Mass) -> str:
    return f"{grams(mass)} ({finely_in_ounces(mass)})"


def _notes(batch: WorkedBatch) -> list[str]:
    found = []
    lye = batch.grams.lye
    if lye:
        for column in batch.columns:
            if column.lye:
                scales = f" in {column.unit}" if len(batch.columns) > 1 else ""
                found.append(
                    f"Superfat as weighed{scales} {percent(column.lye.superfat)}; with every figure and weighing at its worst "
                    f"{percent(column.lye.lowest)} to {percent(column.lye.highest)}."
                )
        found.append(
            f"Lye concentration {percent(lye.concentration)} by weight as weighed; water to lye {number(lye.water_to_lye, 2)} to 1;"
            f" water {percent(lye.water_of_oils)} of the oils."
        )
        for purity in lye.purities:
            basis = f"{'assumed, ' if purity.assumed else ''}from {purity.source}" if purity.source else "as the recipe states"
            low, typical, high = purity.hydroxide
            ends = f", {percent(low)} to {percent(high)}" if low != high else ""
            what = f"{purity.alkali}, bought as a solution" if purity.strength else purity.alkali
            found.append(f"{what}: {percent(typical)} hydroxide by weight{ends} ({basis}).")
    return found


def _doses(batch: WorkedBatch) -> list[str]:
    several = len(batch.fillings) > 1
    views = ((view_choice(dose), f" in the {one.fill.container}" if several else "") for one in batch.fillings for dose in one.doses)
    return [f"{view.what}{where}: {view.options}: {view.at_most}." for view, where in views]
