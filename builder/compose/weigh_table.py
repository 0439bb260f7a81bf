"""A batch as a table for the terminal: what to weigh, on which scale, and what it comes to. All text is ready to print."""

from collections.abc import Sequence
from dataclasses import dataclass

from builder.compose.dose_words import view_choice
from builder.compose.wording import counted, grams, number, percent, reading, weighed
from builder.model.batch_sheet import BatchSheet
from builder.model.dose import Dose


@dataclass(frozen=True)
class WeighTable:
    """A title, rows of (phase, ingredient, share, exact, weigh, scale), a total row, and lines of notes beneath."""

    title: str
    rows: tuple[tuple[str, ...], ...]
    total: tuple[str, ...]
    notes: tuple[str, ...]


HEADINGS = ("phase", "ingredient", "share", "exact", "weigh", "scale")


def batch_table(sheet: BatchSheet, purpose: str, more: Sequence[str] = ()) -> WeighTable:
    """Lay out the column in grams of one batch; `more` are lines to print beneath."""
    column = sheet.grams
    rows = []
    phase = ""
    for w in column.weighed:
        line = w.line
        exact = f"{number(line.exact.grams, 4)} g"
        row = (
            "" if line.phase == phase else line.phase,
            line.name,
            percent(line.share, 3),
            exact,
            weighed(w, column.unit),
            reading(w.scale),
        )
        rows.append(row)
        phase = line.phase
    title = f"{sheet.recipe.name}, {purpose}" if purpose else sheet.recipe.name
    total = ("", "batch", "100%", "", grams(column.total), "")
    return WeighTable(title, tuple(rows), total, (*_notes(sheet), *more))


def _notes(sheet: BatchSheet) -> list[str]:
    portions = sheet.portions
    found = [
        f"Fills {counted(portions.yields, 'container', 'containers')} ({sheet.recipe.fill.container}) of {grams(portions.fill)};"
        f" {grams(portions.left)} left over."
    ]
    lye = sheet.grams.lye
    if lye:
        found.append(
            f"Superfat as weighed {percent(lye.superfat)}; with every figure and weighing at its worst {percent(lye.lowest)}"
            f" to {percent(lye.highest)}."
        )
        found.append(
            f"Lye concentration {percent(lye.concentration)} by weight as weighed; water to lye {number(lye.water_to_lye, 2)} to 1;"
            f" water {percent(lye.water_of_oils)} of the oils."
        )
        for purity in lye.purities:
            basis = f"{'assumed, ' if purity.assumed else ''}from {purity.source}" if purity.source else "as the recipe states"
            found.append(f"{purity.alkali}: {percent(purity.typical)} hydroxide by weight ({basis}).")
    found += [_dose(dose) for dose in sheet.doses]
    return found


def _dose(dose: Dose) -> str:
    return f"{dose.what.capitalize()}: {view_choice(dose).at_most}."
