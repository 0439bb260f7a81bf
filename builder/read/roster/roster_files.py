"""The file of a class that lists people: `roster.csv` as spreadsheets export it, or `roster.xlsx`."""

import csv
import io

from builder.model.finding import stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.roster.roster import About, Roster
from builder.model.roster.roster_file import ROSTER_TABLE, ROSTER_WORKBOOK
from builder.read.notebook.table import NotebookError, Table
from builder.read.roster.rosters import read_roster
from builder.read.text.text_files import TextFolder
from builder.words.fold import fold

FINDS = (
    FindingKind("roster-twice", STOP, "A class has two rosters, a table and a workbook."),
    FindingKind("roster-workbook-unread", STOP, "A roster is a workbook that cannot be read as it is."),
)


def read_roster_file(studio: TextFolder, folder: str, locale: str) -> Roster | None:
    """Read the roster of a class; None where there is none, or none that can be read."""
    table, workbook = f"{folder}/{ROSTER_TABLE}", f"{folder}/{ROSTER_WORKBOOK}"
    if studio.has(table) and studio.has(workbook):
        wrong = f"{ROSTER_TABLE} lies here too, so nobody can tell which of the two lists who comes."
        studio.findings.append(stop("roster-twice", studio.place(workbook), wrong, "Keep one of them. The table is read meanwhile."))
    if studio.has(table):
        text = studio.text(table, is_table=True)
        return None if text is None else read_roster(studio.findings, text, table, locale)
    found = _table_of_workbook(studio, workbook) if studio.has(workbook) else None
    return read_roster(studio.findings, _as_text(found), workbook, locale, found.unclear) if found else None


def _table_of_workbook(studio: TextFolder, name: str) -> Table | None:
    """Return the sheet of a workbook; no finding repeats what stands in it."""
    # Loaded where somebody has a workbook: it takes longer than to read a roster.
    from builder.read.notebook.workbook import read_workbook

    data = studio.data(name, "a list of people")
    if data is None:
        return None
    try:
        table = read_workbook(data, None, "keep the list alone in its workbook", has_dates=True)
        _refuse_what_is_unclear(table)
    except NotebookError as error:
        for problem in error.problems:
            wrong = f"This workbook cannot be read as it is: {problem}."
            remedy = f"Change it in your spreadsheet, or save the list as {ROSTER_TABLE} in its place."
            studio.findings.append(stop("roster-workbook-unread", studio.place(name), wrong, remedy))
        return None
    return table


def _refuse_what_is_unclear(table: Table) -> None:
    """Raise NotebookError where a line of people is hidden, or a cell about them or a head is unclear."""
    head, cells = next(((number, cells) for number, cells in table.lines if About.NAME in map(fold, cells)), (0, ()))
    about_people = {None, *(at for at, cell in enumerate(cells) if fold(cell) in tuple(About))}
    problems = dict.fromkeys(one.text for one in table.unclear if one.line == head or (one.line > head and one.column in about_people))
    if problems:
        raise NotebookError(problems)


def _as_text(table: Table) -> str:
    """Return a table as text, each line where it was. An unclear cell is empty."""
    unclear = {(one.line, one.column) for one in table.unclear}
    cells = {number: ["" if (number, at) in unclear else cell for at, cell in enumerate(line)] for number, line in table.lines}
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    for number in range(1, max(cells, default=0) + 1):
        if number in cells:
            writer.writerow(cells[number])
        else:
            text.write("\n")
    return text.getvalue()
