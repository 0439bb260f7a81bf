"""Which column of a table holds the names, and which the amounts: told by their heads, and never by what looks like it.

Decided: of several columns with amounts, weights come before percentages, and what reads in the smallest unit first; two of one kind are
asked about, and prices are none. Why: a percentage has been rounded from the weight, and which of two batches is meant nobody can tell.
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass

from builder.read.notebook.amounts import PERCENT, UNITS
from builder.read.notebook.table import NotebookError, Table
from builder.units import MASS_UNIT_OF
from builder.words.fold import fold
from builder.words.nearest import did_you_mean

# How notebooks head the column of names, and one of amounts without a unit. Common practice, no source.
_NAMES = {
    *("ingredient", "ingredients", "material", "materials", "raw material", "raw materials", "item", "name", "oil", "oils", "component"),
    *("herb", "herbs", "botanical", "botanicals"),
}
_AMOUNTS = {"amount", "amounts", "weight", "quantity", "qty", "weigh"}
# What makes a column with a unit one of something else: what an ounce costs, how much lye a gram takes.
_OF_ELSE = {"price", "cost", "costs", "per", "sap", "value", "density", "left", "stock"}
_SIGNS_OF_ELSE = "$€£/"
_BEFORE = (*dict.fromkeys(MASS_UNIT_OF.values()), "", PERCENT)


@dataclass(frozen=True)
class Columns:
    """Where names and amounts stand (from 0), in which unit these are (empty: in each cell), and after which line of the file they begin.

    `not_read` says which columns are not read.
    """

    names: int
    amounts: int
    unit: str
    head: int
    head_of_amounts: str
    not_read: tuple[str, ...]


def columns_of(table: Table, column: str | None) -> Columns:
    """Find the columns by the first line that heads them; `column` is the one for amounts, where somebody said so. Raises NotebookError."""
    for number, cells in table.lines:
        seen = [(at, cell) for at, cell in enumerate(cells) if at not in table.hidden]
        names = [at for at, cell in seen if fold(cell) in _NAMES]
        amounts = {at: unit for at, cell in seen if at not in names and (unit := _unit_of(cell)) is not None}
        if names and (amounts or column):
            at, unit = _named(column, cells) if column else _first(amounts, cells)
            others = [here for here, cell in enumerate(cells) if cell and here not in (names[0], at)]
            told = tuple(f'the {"hidden " if here in table.hidden else ""}column "{cells[here]}"' for here in others)
            return Columns(names[0], at, unit, number, fold(cells[at]), told)
    hidden = "; hidden columns are not read" if table.hidden else ""
    raise NotebookError(
        [f'no line heads the columns: write "ingredient" over the names, and "weight (g)", "weight (oz)" or "%" over the amounts{hidden}']
    )


def _unit_of(head: str) -> str | None:
    """Return the unit of a column by its head; empty where the cells have it, None where it is no column of amounts."""
    words = re.findall(r"[a-z]+|%", fold(head))
    if _OF_ELSE.intersection(words) or any(sign in head for sign in _SIGNS_OF_ELSE):
        return None
    units = [UNITS[word] for word in words if word in UNITS]
    if PERCENT in units:
        return PERCENT
    if units:
        return units[0]
    return "" if words and words[0] in _AMOUNTS else None


def _named(column: str, cells: Sequence[str]) -> tuple[int, str]:
    found = [at for at, cell in enumerate(cells) if fold(cell) == fold(column)]
    if len(found) != 1:
        near = did_you_mean(column, [cell for cell in cells if cell])
        raise NotebookError([f'{"no column is" if not found else "several columns are"} headed "{column}".{near}'])
    return found[0], _unit_of(cells[found[0]]) or ""


def _first(amounts: dict[int, str], cells: Sequence[str]) -> tuple[int, str]:
    first = min(amounts.values(), key=_BEFORE.index)
    # A weight whose unit stands in its cells may be any of them.
    found = [at for at, unit in amounts.items() if unit == first or (first != PERCENT and unit == "")]
    if len(found) > 1:
        heads = ", ".join(f'"{cells[at]}"' for at in found)
        raise NotebookError([f"several columns hold amounts of one kind: say which with --column: {heads}"])
    return found[0], first
