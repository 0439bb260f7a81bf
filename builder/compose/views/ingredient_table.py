"""What `parts/ingredient-table.html` shows: one table for each phase of a batch."""

from dataclasses import dataclass


@dataclass(frozen=True)
class IngredientRow:
    """One ingredient and its cells, in the order of the columns."""

    name: str
    cells: tuple[str, ...]


@dataclass(frozen=True)
class PhaseTable:
    """One phase: its heading, what is done with it in words (empty where nothing is), its rows, its total, what follows below it."""

    title: str
    treatment: str
    rows: tuple[IngredientRow, ...]
    total: IngredientRow
    note: str = ""


@dataclass(frozen=True)
class IngredientTable:
    """All phases of a batch under the same column headings, and the total of the batch."""

    columns: tuple[str, ...]
    phases: tuple[PhaseTable, ...]
    total: IngredientRow
