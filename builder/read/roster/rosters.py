"""A file `roster.csv` becomes a roster: a line of column names, then one person a line.

What the columns and the options mean is looked up later, beside the recipes of the class.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from datetime import datetime

from builder.model.finding import Finding, stop
from builder.model.finding_kind import ROSTER_COLUMN_UNCLEAR, STOP, FindingKind
from builder.model.label.design_names import DESIGN_NAMES
from builder.model.place import Name, Place
from builder.model.roster.column_twice import column_stands_twice
from builder.model.roster.roster import About, Roster, RosterRow
from builder.read.makes import Makes
from builder.read.notebook.table import Unclear
from builder.read.read_once import read_once
from builder.read.roster.roster_dates import parse_roster_date
from builder.read.roster.roster_lines import Line, lines_of
from builder.read.text.placed_data import Mark, Path, PlacedData
from builder.read.text.tables import Row, column, looked_up, or_none
from builder.read.text.text_error import TextError, quoted
from builder.read.values.numbers import parse_whole
from builder.read.values.values import parse_yes_or_no, word_of
from builder.words.fold import fold
from builder.words.listed import listed

FINDS = (
    FindingKind("roster-column-missing", STOP, "A roster lacks a column that it needs."),
    ROSTER_COLUMN_UNCLEAR,
    FindingKind("roster-formula", STOP, "A cell of a roster begins like a formula, which a spreadsheet would work out."),
    FindingKind("roster-name-missing", STOP, "A row of a roster has no name."),
    FindingKind("roster-row-wrong", STOP, "A row of a roster cannot be read."),
)

OLDEST = 120
_PEOPLE = frozenset[str](About)
_FORMULA = ("=", "+", "-", "@")
_design = word_of(*DESIGN_NAMES)


def _age(text: str) -> int:
    age = parse_whole(text)
    if age > OLDEST:
        wrong = f"{quoted(text)} is not the age of a person."
        raise TextError("roster-row-wrong", wrong, "Write it in whole years, or leave the cell empty.")
    return age


@read_once(256)
def read_roster(findings: list[Finding], text: str, file: str, locale: str, unclear: tuple[Unclear, ...] = ()) -> Roster | None:
    """Read a roster; a row that cannot be read is a finding and is left out. None where not even its columns can be read.

    `locale` says how days are written where it comes from, `unclear` which cells of a workbook cannot be read.
    """
    lines, written, sign = lines_of(text, file, findings, unclear)
    if not lines:
        if not written:
            findings.append(_no_columns(Place(file)))
        return None
    head, *rest = lines
    columns = [cell.key for cell in head.cells]
    if not _columns_are_clear(head, columns, findings):
        return None
    whole, broken = _by_their_cells(rest, len(columns), columns[-1])
    findings += _rows_wrong(broken, len(columns), sign)
    rows = [row for line in whole if (row := _row(line, columns, locale, findings))]
    unread = written - 1 - len(rows)
    about_people = tuple(column for column in About if column in columns)
    return Roster(tuple(cell for cell in head.cells if cell.key not in _PEOPLE), tuple(rows), unread, about_people, head.place)


def _columns_are_clear(head: Line, columns: Sequence[str], findings: list[Finding]) -> bool:
    if About.NAME not in columns:
        findings.append(_no_columns(head.place, [cell.text for cell in head.cells]))
        return False
    twice = [cell for number, cell in enumerate(head.cells) if cell.key in _PEOPLE and cell.key in columns[:number]]
    empty = [cell for cell in head.cells if not cell.text]
    findings += map(column_stands_twice, twice)
    for cell in empty[:1]:
        wrong = "A column has no name, so nobody can tell what stands in it."
        findings.append(stop("roster-column-unclear", cell.place, wrong, "Name it in the first line, or remove it with its commas."))
    return not twice and not empty


def _no_columns(place: Place, heads: Sequence[str] = ()) -> Finding:
    wrong = "The first line of a roster names its columns, and there is no column `name`."
    remedy = "Begin with a line like: name,date,age,allergies,scent. Commas, semicolons or tabs go between the cells."
    if len(heads) > 1 and (meant := [f'"{head}"' for head in heads if About.NAME in fold(head).split()]):
        remedy = f"Call the column `name` that has the name of each person; in this file it may be {listed(meant, 'or')}."
    return stop("roster-column-missing", place, wrong, remedy)


def _by_their_cells(lines: Sequence[Line], number: int, last: str) -> tuple[list[Line], list[Line]]:
    """Return the rows with as many cells as there are columns, and the others.

    A last cell of `settled` may be left out: a column that is begun for one person is empty for all others.
    """
    filled = [
        replace(line, cells=(*line.cells, Name("", line.place))) if last == "settled" and len(line.cells) == number - 1 else line
        for line in lines
    ]
    return [line for line in filled if len(line.cells) == number], [line for line in filled if len(line.cells) != number]


def _rows_wrong(broken: Sequence[Line], number: int, sign: str) -> Iterator[Finding]:
    """Yield once what is wrong with all rows that have the same number of cells."""
    marks = {";": "semicolon", "\t": "tab"}.get(sign, "comma")
    for cells in dict.fromkeys(len(line.cells) for line in broken):
        first, *others = (line.place for line in broken if len(line.cells) == cells)
        more = (
            f" {len(others)} more {'row is' if len(others) == 1 else 'rows are'} like it, the last in line {others[-1].line}."
            if others
            else ""
        )
        wrong = f"This row has {cells} cells, and the first line names {number} columns.{more}"
        yield stop("roster-row-wrong", first, wrong, f"Put a text with a {marks} in quotes, and leave a cell empty between two {marks}s.")


class PersonRow(Row, Makes[RosterRow]):
    """What a roster says of a person; a column that it lacks is as an empty one."""

    name: Name = column(Name)
    date: datetime | None = looked_up(lambda cell, locale: parse_roster_date(cell, locale) if cell else None)
    age: int | None = column(or_none(_age))
    allergies: str = column(str)
    settled: str = column(str)
    waiting: bool = column(lambda cell: bool(cell) and parse_yes_or_no(cell))
    at_home: Name = column(Name, About.AT_HOME)
    design: str = column(lambda cell: _design(cell) if cell else "")
    own_name: Name = column(Name, About.OWN_NAME)


def _row(line: Line, columns: Sequence[str], locale: str, findings: list[Finding]) -> RosterRow | None:
    cells = dict(zip(columns, line.cells, strict=True))
    known = len(findings)
    # What stands in other columns is a choice, and is looked up among those that there are, or it is printed nowhere.
    for cell in (cell for key, cell in cells.items() if key in _PEOPLE and len(cell.text) > 1 and cell.text.startswith(_FORMULA)):
        wrong = "This cell begins like a formula, which a spreadsheet would work out when it opens this file."
        findings.append(stop("roster-formula", cell.place, wrong, "Write the text without the sign before it."))
    if not cells[About.NAME].text:
        wrong = "This row has no name, so that nobody knows whose choices these are."
        findings.append(stop("roster-name-missing", line.place, wrong, "Write the name, or remove the row."))
    marks: dict[Path, Mark] = {(key,): Mark(cell.place, cell.place) for key, cell in cells.items()}
    marks[()] = Mark(line.place, line.place)
    placed = PlacedData(line.place.file, {key: cell.text for key, cell in cells.items()}, marks)
    row = PersonRow.of(placed, locale, findings)
    if row is None or len(findings) > known:
        return None
    return row.make(placed, choices={key: cell for key, cell in cells.items() if key not in _PEOPLE})
