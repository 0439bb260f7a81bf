"""A file `roster.csv` becomes a roster: a line of column names, then one person a line.

What the columns and the options mean is looked up later, beside the recipes of the class.
"""

import csv
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from typing import TypeVar

from builder.model.finding import Finding, stop
from builder.model.finding_kind import ROSTER_COLUMN_UNCLEAR, STOP, FindingKind
from builder.model.label.design_names import DESIGN_NAMES
from builder.model.place import Name, Place
from builder.model.roster.roster import OWN_NAME, PEOPLE, Roster, RosterRow
from builder.read.read_once import read_once
from builder.read.roster.exported import cells_of, says_nothing, sign_between
from builder.read.roster.roster_dates import parse_roster_date
from builder.read.text.text_error import TextError, quoted
from builder.read.values.numbers import parse_whole
from builder.read.values.values import parse_yes_or_no, word_of

FINDS = (
    FindingKind("roster-column-missing", STOP, "A roster lacks a column that it needs."),
    ROSTER_COLUMN_UNCLEAR,
    FindingKind("roster-formula", STOP, "A cell of a roster begins like a formula, which a spreadsheet would work out."),
    FindingKind("roster-name-missing", STOP, "A row of a roster has no name."),
    FindingKind("roster-row-wrong", STOP, "A row of a roster cannot be read."),
)

T = TypeVar("T")
OLDEST = 120
_FORMULA = ("=", "+", "-", "@")


@dataclass(frozen=True)
class _Line:
    place: Place
    cells: tuple[Name, ...]


@read_once(256)
def read_roster(findings: list[Finding], text: str, file: str, locale: str) -> Roster | None:
    """Read a roster; a row that cannot be read is a finding and is left out. None where not even its columns can be read.

    `locale` says how days are written where it comes from.
    """
    written = [(number, shown) for number, shown in enumerate(text.split("\n"), start=1) if not says_nothing(shown)]
    sign = _sign(written)
    lines = [line for number, shown in written if (line := _line(shown, sign, file, number, findings))]
    if not lines:
        if not text.strip():
            findings.append(_no_columns(Place(file)))
        return None
    head, *rest = _without_empty_columns(lines)
    columns = [cell.key for cell in head.cells]
    if not _columns_are_clear(head, columns, findings):
        return None
    whole, broken = _by_their_cells(rest, len(columns), columns[-1])
    findings += _rows_wrong(broken, len(columns), sign)
    rows = [row for line in whole if (row := _row(line, columns, locale, findings))]
    unread = len(written) - 1 - len(rows)
    return Roster(tuple(cell for cell in head.cells if cell.key not in PEOPLE), tuple(rows), unread, head.place)


def _sign(written: Sequence[tuple[int, str]]) -> str:
    try:
        return sign_between(written[0][1]) if written else ","
    except csv.Error:
        return ","


def _without_empty_columns(lines: Sequence[_Line]) -> list[_Line]:
    """Take away the columns at the end that have neither a name nor anything in them."""
    named = max((number for number, cell in enumerate(lines[0].cells, 1) if cell.text), default=0)
    used = max((number for line in lines for number, cell in enumerate(line.cells, 1) if cell.text), default=0)
    kept = max(named, used)
    return [replace(line, cells=line.cells[:kept]) for line in lines]


def _line(shown: str, sign: str, file: str, number: int, findings: list[Finding]) -> _Line | None:
    whole = Place(file, number, 1, max(1, len(shown.rstrip())))
    try:
        cells = cells_of(shown, sign)
    except csv.Error:
        wrong = "A quotation mark is not closed in its line, so nobody can tell where a cell ends."
        findings.append(stop("roster-row-wrong", whole, wrong, "Close it; a roster has one person a line."))
        return None
    found, after = [], 0
    for cell in cells:
        begin = max(shown.find(cell.strip(), after), after)
        found.append(Name(" ".join(cell.split()), Place(file, number, begin + 1, max(1, len(cell.strip())))))
        after = begin + len(cell.strip())
    return _Line(whole, tuple(found))


def _columns_are_clear(head: _Line, columns: Sequence[str], findings: list[Finding]) -> bool:
    if "name" not in columns:
        findings.append(_no_columns(head.place))
        return False
    twice = [cell for number, cell in enumerate(head.cells) if cell.key in columns[:number]]
    empty = [cell for cell in head.cells if not cell.text]
    for cell in twice:
        wrong = f"The column {quoted(cell.text)} stands twice, so nobody can tell which of the two counts."
        findings.append(stop("roster-column-unclear", cell.place, wrong, "Remove one of them."))
    for cell in empty[:1]:
        wrong = "A column has no name, so nobody can tell what stands in it."
        findings.append(stop("roster-column-unclear", cell.place, wrong, "Name it in the first line, or remove it with its commas."))
    return not twice and not empty


def _no_columns(place: Place) -> Finding:
    wrong = "The first line of a roster names its columns, and there is no column `name`."
    remedy = "Begin with a line like: name,date,age,allergies,scent. Commas, semicolons or tabs go between the cells."
    return stop("roster-column-missing", place, wrong, remedy)


def _by_their_cells(lines: Sequence[_Line], number: int, last: str) -> tuple[list[_Line], list[_Line]]:
    """Return the rows with as many cells as there are columns, and the others.

    A last cell of `settled` may be left out: a column that is begun for one person is empty for all others.
    """
    filled = [
        replace(line, cells=(*line.cells, Name("", line.place))) if last == "settled" and len(line.cells) == number - 1 else line
        for line in lines
    ]
    return [line for line in filled if len(line.cells) == number], [line for line in filled if len(line.cells) != number]


def _rows_wrong(broken: Sequence[_Line], number: int, sign: str) -> Iterator[Finding]:
    """Say once what is wrong with all rows that have the same number of cells."""
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


def _row(line: _Line, columns: Sequence[str], locale: str, findings: list[Finding]) -> RosterRow | None:
    formulas = [cell for cell in line.cells if len(cell.text) > 1 and cell.text.startswith(_FORMULA)]
    for cell in formulas:
        wrong = "This cell begins like a formula, which a spreadsheet would work out when it opens this file."
        findings.append(stop("roster-formula", cell.place, wrong, "Write the text without the sign before it."))
    by_column = dict(zip(columns, line.cells, strict=True))
    if not by_column["name"].text:
        wrong = "This row has no name, so that nobody knows whose choices these are."
        findings.append(stop("roster-name-missing", line.place, wrong, "Write the name, or remove the row."))
    known = len(findings)
    date = _parsed(by_column.get("date"), lambda text: parse_roster_date(text, locale), findings)
    age = _parsed(by_column.get("age"), _age, findings)
    waiting = _parsed(by_column.get("waiting"), parse_yes_or_no, findings)
    design = _parsed(by_column.get("design"), word_of(*DESIGN_NAMES), findings)
    if formulas or not by_column["name"].text or len(findings) > known:
        return None
    return RosterRow(
        name=by_column["name"],
        date=date,
        age=age,
        allergies=by_column["allergies"].text if "allergies" in by_column else "",
        settled=by_column["settled"].text if "settled" in by_column else "",
        waiting=bool(waiting),
        choices={column: cell for column, cell in by_column.items() if column not in PEOPLE},
        design=design or "",
        own_name=by_column.get(OWN_NAME, Name("", line.place)),
        at_home=by_column.get("at home", Name("", line.place)),
        place=line.place,
        date_place=by_column["date"].place if "date" in by_column else line.place,
        age_place=by_column["age"].place if "age" in by_column else line.place,
        allergies_place=by_column["allergies"].place if "allergies" in by_column else line.place,
        settled_place=by_column["settled"].place if "settled" in by_column else line.place,
    )


def _parsed(cell: Name | None, parse: Callable[[str], T], findings: list[Finding]) -> T | None:
    if cell is None or not cell.text:
        return None
    try:
        return parse(cell.text)
    except TextError as error:
        findings.append(stop(error.name, cell.place, error.wrong, error.remedy))
        return None


def _age(text: str) -> int:
    age = parse_whole(text)
    if age > OLDEST:
        raise TextError(
            "roster-row-wrong", f"{quoted(text)} is not the age of a person.", "Write it in whole years, or leave the cell empty."
        )
    return age
