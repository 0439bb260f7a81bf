"""A table before anybody knows what stands in it, and what is wrong with it, all at once."""

from collections.abc import Iterable
from dataclasses import dataclass


class NotebookError(Exception):
    """What keeps a table from being read: every problem found, each with its line and what to do."""

    def __init__(self, problems: Iterable[str]) -> None:
        """Keep the problems."""
        self.problems = tuple(problems)
        super().__init__("\n".join(self.problems))


@dataclass(frozen=True)
class Unclear:
    """What in a table is not as its author sees it: its line, from 1, its column, from 0 (None: the whole line), and what to do."""

    line: int
    column: int | None
    text: str


@dataclass(frozen=True)
class Table:
    """The lines of a table, each with its number in the file, from 1.

    `numbers` are the cells, by line and column, that hold a number and no text: their decimal mark is a point. `hidden` are columns that
    its author does not see. `unclear` counts only where somebody reads.
    """

    lines: tuple[tuple[int, tuple[str, ...]], ...]
    numbers: frozenset[tuple[int, int]] = frozenset()
    hidden: frozenset[int] = frozenset()
    unclear: tuple[Unclear, ...] = ()


def without_empty(lines: Iterable[tuple[int, Iterable[str]]]) -> tuple[tuple[int, tuple[str, ...]], ...]:
    """Leave out lines in which nothing stands, and the room around each text."""
    tidied = ((number, tuple(" ".join(cell.split()) for cell in cells)) for number, cells in lines)
    return tuple((number, cells) for number, cells in tidied if any(cells))
