"""A batch as a table for the terminal: what to weigh, on which scale, and what it comes to. All text is ready to print."""

from collections.abc import Sequence
from dataclasses import dataclass

from builder.compose.dose_words import view_choice
from builder.compose.wording import counted, grams, listed, number, percent, reading, weighed
from builder.model.batch_sheet import BatchSheet


@dataclass(frozen=True)
class WeighTable:
    """A title, rows of (phase, ingredient, share, exact, weigh, scale), a total row, and lines of notes beneath."""

    title: str
    rows: tuple[tuple[str, ...], ...]
    total: tuple[str, ...]
    notes: tuple[str, ...]


HEADINGS = ("phase", "ingredient", "share", "exact", "weigh", "scale")


def batch_table(sheet: BatchSheet, purpose: str, more: Sequence[str] = (), also: Sequence[BatchSheet] = ()) -> WeighTable:
    """Lay out the column in grams of one batch; `more` are lines to print beneath, `also` the batch for its other containers."""
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
    return WeighTable(title, tuple(rows), total, (*_fills([sheet, *also]), *_notes(sheet), *_doses([sheet, *also]), *more))


def _fills(sheets: Sequence[BatchSheet]) -> list[str]:
    each = [
        f"{counted(one.portions.yields, 'container', 'containers')} ({one.recipe.fill.container}) of {grams(one.portions.fill)}"
        for one in sheets
    ]
    return [f"Fills {listed(each)}; {grams(sheets[-1].portions.left)} left over."]


def _notes(sheet: BatchSheet) -> list[str]:
    found = []
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
    return found


def _doses(sheets: Sequence[BatchSheet]) -> list[str]:
    of = [f" in the {one.recipe.fill.container}" if len(sheets) > 1 else "" for one in sheets]
    views = ((view_choice(dose), where) for one, where in zip(sheets, of, strict=True) for dose in one.doses)
    return [f"{view.what}{where}: {view.options}: {view.at_most}." for view, where in views]
