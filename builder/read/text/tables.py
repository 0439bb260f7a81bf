"""Tables become rows. A table is CSV: remarks that begin with #, a line of column names, one row a line.

A row is declared as a shape is (`read/makes.py`), with its columns in their order; what they mean stands at the head of each table. A cell
that cannot be read is a finding, all cells of a row at once, and the row is left out.
"""

import csv
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Any, ClassVar, Generic, TypeVar, get_type_hints

from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.place import Place
from builder.model.recipe.figure import Known, Source
from builder.read.known import NamesKnown
from builder.read.makes import Makes
from builder.read.text.placed_data import Mark, Path, PlacedData
from builder.read.text.text_error import TextError, quoted
from builder.read.text.text_files import TextFolder
from builder.read.values.numbers import parse_number
from builder.read.values.values import find_product, find_source, member_of, text_of
from builder.words.fold import fold

FINDS = (FindingKind("limit-row-wrong", STOP, "A row of a table cannot be read, so that its limit would not hold."),)

# What may stand between the cells of a table that a program exports, the one that tells most first.
BETWEEN_CELLS = ("\t", ";", ",")
M = TypeVar("M")
T = TypeVar("T")
R = TypeVar("R", bound="Row")


@dataclass(frozen=True)
class Column(Generic[T]):
    """A column: the function that reads a cell of it with what it may name, its name in the table, whether it has to be there, and whether
    it says something to whoever reads the table alone.
    """

    read: Callable[[str, Any], T]
    name: str
    is_needed: bool = True
    is_remark: bool = False


class Row:
    """A row of a table."""

    _columns: ClassVar[Mapping[str, Column[Any]]] = {}

    def __init_subclass__(cls) -> None:
        """Note the columns in their order; without a name of its own a column has that of the field."""
        own = {name: one for name, one in vars(cls).items() if isinstance(one, Column)}
        cls._columns = {name: replace(one, name=one.name or name) for name, one in own.items()}

    @classmethod
    def declared(cls) -> dict[str, tuple[str, Any]]:
        """Return each field with its column and its type."""
        hints = get_type_hints(cls)
        return {name: (one.name, hints[name]) for name, one in cls._columns.items() if not one.is_remark}

    @classmethod
    def headings(cls) -> tuple[tuple[str, ...], tuple[str, ...]]:
        """Return the columns that a table has to have, and with them those at its end that it may lack."""
        columns = cls._columns.values()
        return tuple(one.name for one in columns if one.is_needed), tuple(one.name for one in columns)

    @classmethod
    def of(cls: type[R], placed: PlacedData, known: Any, findings: list[Finding]) -> R | None:
        """Read a row; where a cell cannot be read, or some do not go together, add what is wrong and give None."""
        row, found = cls(), []
        cells: Any = placed.data
        for name, column in cls._columns.items():
            try:
                row.__dict__[name] = column.read(cells.get(column.name, ""), known)
            except TextError as error:
                found.append(placed.inside(column.name).refused(error))
        try:
            if not found:
                row.judge()
        except TextError as error:
            found.append(placed.refused(error))
        findings.extend(found)
        return None if found else row

    def judge(self) -> None:
        """Raise TextError where cells do not go together."""


class CitedRow(Row):
    """A row that says where it was read, and how it is known: `source, at, known = cited()` where these columns stand."""

    source: Source
    at: str
    known: Known


def column(read: Callable[[str], T], name: str = "", *, is_needed: bool = True) -> Any:
    """Declare a column by the function that reads the text of a cell, which may be empty."""
    return Column(lambda text, _: read(text), name, is_needed)


def looked_up(find: Callable[[str, Any], T], name: str = "") -> Any:
    """Declare a column that names something read before, by the function that looks it up."""
    return Column(find, name)


def remark() -> Any:
    """Declare a column that nothing is made of."""
    return Column(lambda *_: "", "", is_remark=True)


def cited() -> tuple[Any, Any, Any]:
    """Declare the columns for the work, the place in it, and how that is known."""
    return looked_up(find_source), column(text_of), column(member_of(Known))


def each(read: Callable[[str], T], *, is_needed: bool = False) -> Callable[[str], tuple[T, ...]]:
    """Make a function that reads the words of a cell, which are separated by semicolons."""
    return lambda cell: tuple(read(word.strip()) for word in (text_of(cell) if is_needed else cell).split(";") if word.strip())


def or_none(read: Callable[[str], T]) -> Callable[[str], T | None]:
    """Make a function that reads a cell, and gives None for an empty one."""
    return lambda cell: read(cell) if cell else None


words_in = each(str)
folded_in = each(fold)


def products_in(cell: str, known: NamesKnown) -> tuple[str, ...]:
    """Return the kinds of product that a cell names."""
    return tuple(find_product(word, known).name for word in words_in(cell))


def share_in(cell: str) -> Fraction:
    """Return a percentage as a share of one. Raises TextError."""
    percent = parse_number(cell)
    if not 0 <= percent <= 100:
        raise TextError("limit-row-wrong", f"{quoted(cell)} is no percentage.", "Write a number from 0 to 100, or leave the cell empty.")
    return percent / 100


def read_table(shape: type[Makes[M]], folder: TextFolder, name: str, known: NamesKnown) -> tuple[M, ...]:
    """Return what the rows of a table make."""
    rows: Any = rows_of(shape, folder, name, known)
    return tuple(row.make(placed) for row, placed in rows)


def rows_of(shape: type[R], folder: TextFolder, name: str, known: NamesKnown) -> Iterator[tuple[R, PlacedData]]:
    """Read a table row by row, each with what stands in it."""
    text = folder.text(name) if folder.has(name) else None
    lines = enumerate((text or "").split("\n"), start=1)
    table = [(Place(folder.shown_as + name, number, 1), line) for number, line in lines if line.strip() and not line.startswith("#")]
    needed, columns = shape.headings()
    for at, (place, line) in enumerate(table):
        found: list[Finding] = []
        try:
            cells = _cells(line)
            if at == 0 and cells not in (needed, columns):
                raise _wrong("These are not the columns of this table.", f"Write {','.join(needed)}.")
            columns = cells if at == 0 else columns
            if len(cells) != len(columns):
                raise _wrong(f"This row has {len(cells)} cells and the table {len(columns)} columns.", "Put a text with a comma in quotes.")
            told: dict[str, Any] = dict(zip(columns, cells, strict=True))
            placed = PlacedData(place.file, told, {(): Mark(place, place)})
            row = shape.of(placed, known, []) if at else None
            if row:
                yield row, placed
            elif at:  # Where each cell stands is looked for where one of them is wrong.
                shape.of(replace(placed, marks=_marks(place, line, told)), known, found)
        except TextError as error:
            found.append(stop(error.name, place, error.wrong, error.remedy))
        folder.findings.extend(map(_of_a_table, found))
        if at == 0 and found:
            return


def _of_a_table(finding: Finding) -> Finding:
    return replace(finding, name="limit-row-wrong", wrong=f"This row of a table of limits cannot be read. {finding.wrong}")


def _marks(place: Place, line: str, cells: Mapping[str, str]) -> dict[Path, Mark]:
    """Return where a row stands and each of its cells, by their columns."""
    marks: dict[Path, Mark] = {(): Mark(place, place)}
    after = 0
    for column, cell in cells.items():
        begin = max(line.find(cell, after), after)
        at = replace(place, column=begin + 1, width=max(1, len(cell)))
        marks[(column,)], after = Mark(at, at), begin + len(cell) + 1
    return marks


def _cells(line: str) -> tuple[str, ...]:
    try:
        return tuple(cell.strip() for cell in next(csv.reader([line], strict=True)))
    except csv.Error:
        raise _wrong("A quotation mark is not closed in its line.", "Close it; a table has one row a line.") from None


def _wrong(wrong: str, remedy: str) -> TextError:
    return TextError("limit-row-wrong", wrong, remedy)
