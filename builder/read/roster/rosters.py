"""A file `roster.csv` becomes a roster: a line of column names, then one person a line.

What the columns and the options mean is looked up later, beside the recipes of the class.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from typing import TypeVar

from builder.model.finding import Finding, stop
from builder.model.finding_kind import ROSTER_COLUMN_UNCLEAR, STOP, FindingKind
from builder.model.label.design_names import DESIGN_NAMES
from builder.model.place import Name, Place
from builder.model.roster.column_twice import column_stands_twice
from builder.model.roster.roster import OWN_NAME, PEOPLE, Roster, RosterRow
from builder.read.notebook.table import Unclear
from builder.read.read_once import read_once
from builder.read.roster.roster_dates import parse_roster_date
from builder.read.roster.roster_lines import Line, lines_of
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

T = TypeVar("T")
OLDEST = 120
_FORMULA = ("=", "+", "-", "@")


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
    about_people = tuple(column for column in PEOPLE if column in columns)
    return Roster(tuple(cell for cell in head.cells if cell.key not in PEOPLE), tuple(rows), unread, about_people, head.place)


def _columns_are_clear(head: Line, columns: Sequence[str], findings: list[Finding]) -> bool:
    if "name" not in columns:
        findings.append(_no_columns(head.place, [cell.text for cell in head.cells]))
        return False
    twice = [cell for number, cell in enumerate(head.cells) if cell.key in PEOPLE and cell.key in columns[:number]]
    empty = [cell for cell in head.cells if not cell.text]
    findings += map(column_stands_twice, twice)
    for cell in empty[:1]:
        wrong = "A column has no name, so nobody can tell what stands in it."
        findings.append(stop("roster-column-unclear", cell.place, wrong, "Name it in the first line, or remove it with its commas."))
    return not twice and not empty


def _no_columns(place: Place, heads: Sequence[str] = ()) -> Finding:
    wrong = "The first line of a roster names its columns, and there is no column `name`."
    remedy = "Begin with a line like: name,date,age,allergies,scent. Commas, semicolons or tabs go between the cells."
    if len(heads) > 1 and (meant := [f'"{head}"' for head in heads if "name" in fold(head).split()]):
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


def _row(line: Line, columns: Sequence[str], locale: str, findings: list[Finding]) -> RosterRow | None:
    by_column = dict(zip(columns, line.cells, strict=True))
    # What stands in other columns is a choice, and is looked up among those that there are, or it is printed nowhere.
    formulas = [cell for key, cell in by_column.items() if key in PEOPLE and len(cell.text) > 1 and cell.text.startswith(_FORMULA)]
    for cell in formulas:
        wrong = "This cell begins like a formula, which a spreadsheet would work out when it opens this file."
        findings.append(stop("roster-formula", cell.place, wrong, "Write the text without the sign before it."))
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
