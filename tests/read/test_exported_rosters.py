"""Rosters as spreadsheets export them. The forms are those of common spreadsheets in several regions: common practice, no source."""

from datetime import date, datetime
from pathlib import Path
from typing import Any

import pytest

from builder.model.finding import Finding
from builder.model.place import NOWHERE, Name
from builder.model.recipe.recipe import Choice
from builder.model.roster.roster import Roster, UnreadCell, options_meant
from builder.read.roster.roster_dates import parse_roster_date
from builder.read.roster.roster_files import read_roster_file
from builder.read.roster.rosters import read_roster
from builder.read.text.text_error import TextError
from builder.read.text.text_files import TextFolder
from builder.tasks.drafts import library_of
from builder.words.fold import fold
from tests.making import card, share, sure
from tests.notebook.tables import workbook

ROWS = 'name,date,age,allergies,scent\r\nZoë Brémond,2027-03-06,34,"nuts, sesame",\r\nBo Fenn,2027-03-06,,,\r\n'
NO_RESULT = "a formula whose result is not in the file: open it in your spreadsheet and save it"
FORMS = {
    "plain": ROWS.encode(),
    "with a mark of UTF-8": ROWS.encode("utf-8-sig"),
    "UTF-16": ROWS.encode("utf-16"),
    "Windows-1252": ROWS.encode("cp1252"),
    "semicolons": ROWS.replace('"nuts, sesame"', "nuts# sesame").replace(",", ";").replace("#", ",").encode(),
    "tabs in UTF-16": ROWS.replace('"nuts, sesame"', "nuts# sesame").replace(",", "\t").replace("#", ",").encode("utf-16"),
    "a line that tells the sign": b"sep=,\r\n" + ROWS.encode(),
    "empty cells at the end": ROWS.replace("\r\n", ",,\r\n").encode() + b",,,,,,\r\n,,,,,,\r\n",
}


def _locale(region: str) -> str:
    return library_of(None).regions[region].locale


def read(folder: Path, data: bytes, region: str = "US") -> tuple[Roster | None, list[Finding]]:
    (folder / "roster.csv").write_bytes(data)
    findings: list[Finding] = []
    text = TextFolder(folder, findings).text("roster.csv", is_table=True)
    return read_roster(findings, sure(text), "roster.csv", _locale(region)), findings


@pytest.mark.parametrize("form", FORMS)
def test_the_same_people_are_read_from_every_form(tmp_path: Path, form: str) -> None:
    roster, findings = read(tmp_path, FORMS[form])
    assert [finding.name for finding in findings] == (["table-read-as-windows"] if form == "Windows-1252" else [])
    first, second = sure(roster).rows
    assert (first.name.text, first.date, first.age, first.allergies) == ("Zoë Brémond", datetime(2027, 3, 6), 34, "nuts, sesame")
    assert (second.name.text, second.allergies) == ("Bo Fenn", "")
    assert [column.text for column in sure(roster).columns] == ["scent"]


def test_the_same_people_are_read_from_a_workbook_with_its_own_dates(tmp_path: Path) -> None:
    def fill(sheet: Any) -> None:
        sheet.append(["name", "date", "age", "allergies", "scent", None])
        sheet.append([])
        sheet.append(["Zoë Brémond", datetime(2027, 3, 6, 10), 34, "nuts, sesame", None, None])
        sheet.append(["Bo\nFenn", date(2027, 3, 6), None, None, "=1+1", None])

    def with_an_age_that_has_no_result(sheet: Any) -> None:
        fill(sheet)
        sheet["C4"] = "=2027-1990"

    (tmp_path / "roster.xlsx").write_bytes(workbook(with_an_age_that_has_no_result))
    findings: list[Finding] = []
    assert read_roster_file(TextFolder(tmp_path, findings), ".", _locale("Canada")) is None
    assert [(finding.name, "C4" in finding.wrong) for finding in findings] == [("roster-workbook-unread", True)]

    # Of another column nobody knows yet whether it is a choice: where it is one, what is wrong with the cell is found.
    (tmp_path / "roster.xlsx").write_bytes(workbook(fill))
    findings = []
    unclear = sure(read_roster_file(TextFolder(tmp_path, findings), ".", _locale("Canada")))
    empty, unread = (row.choices["scent"] for row in unclear.rows)
    assert (findings, empty.text, isinstance(empty, UnreadCell)) == ([], "", False)
    assert isinstance(unread, UnreadCell)
    assert (unread.text, unread.problem, unread.place.line) == ("", f"E4: {NO_RESULT}", 4)

    # A head that cannot be read names no column.
    def with_a_head_that_has_no_result(sheet: Any) -> None:
        fill(sheet)
        sheet["E1"] = "=1+1"

    (tmp_path / "roster.xlsx").write_bytes(workbook(with_a_head_that_has_no_result))
    findings = []
    assert read_roster_file(TextFolder(tmp_path, findings), ".", _locale("Canada")) is None
    assert [(finding.name, "E1" in finding.wrong) for finding in findings] == [("roster-workbook-unread", True)]

    def with_a_choice(sheet: Any) -> None:
        fill(sheet)
        sheet["E4"] = "lavender"

    (tmp_path / "roster.xlsx").write_bytes(workbook(with_a_choice))
    findings = []
    roster = sure(read_roster_file(TextFolder(tmp_path, findings), ".", _locale("Canada")))
    assert findings == []
    first, second = roster.rows
    assert (first.name.text, first.date, first.age, first.allergies) == ("Zoë Brémond", datetime(2027, 3, 6, 10), 34, "nuts, sesame")
    assert (second.name.text, second.date, second.place.line) == ("Bo Fenn", datetime(2027, 3, 6), 4)
    assert second.choices["scent"].text == "lavender"


def test_a_column_without_a_name_that_holds_something_is_not_passed_over(tmp_path: Path) -> None:
    roster, findings = read(tmp_path, b"name,date,\nBo,2027-03-06,nuts\n")
    assert roster is None
    assert [finding.name for finding in findings] == ["roster-column-unclear"]


@pytest.mark.parametrize(
    ("region", "text", "day"),
    [
        ("US", "3/6/2027", (2027, 3, 6)), ("UK", "3/6/2027", (2027, 6, 3)), ("EU", "03/06/2027", (2027, 6, 3)),
        ("Canada", "13/6/2027", (2027, 6, 13)), ("Canada", "6/13/2027", (2027, 6, 13)), ("US", "13/6/2027", (2027, 6, 13)),
        ("UK", "6/13/2027", (2027, 6, 13)), ("Canada", "6/6/2027", (2027, 6, 6)), ("US", "6.3.2027", (2027, 3, 6)),
        ("EU", "6. March 2027", (2027, 3, 6)), ("US", "March 6, 2027", (2027, 3, 6)), ("US", "Sat, Mar 6, 2027", (2027, 3, 6)),
        ("UK", "6 Sept 2027", (2027, 9, 6)), ("UK", "2027-03-06", (2027, 3, 6)), ("US", "3/6/2027 2:30 PM", (2027, 3, 6, 14, 30)),
        ("US", "3/6/2027 12:00:00 AM", (2027, 3, 6)), ("UK", "6/3/2027 12:15 pm", (2027, 3, 6, 12, 15)),
        ("EU", "6.3.2027, 10:00", (2027, 3, 6, 10)), ("US", "2027-03-06 10:00", (2027, 3, 6, 10)),
    ],
)  # fmt: skip
def test_a_day_is_read_as_the_region_writes_it(
    region: str, text: str, day: tuple[int, int, int] | tuple[int, int, int, int] | tuple[int, int, int, int, int]
) -> None:
    assert parse_roster_date(text, _locale(region)) == datetime(*day)


@pytest.mark.parametrize(
    ("region", "text"),
    [
        ("Canada", "3/6/2027"), ("US", "3-6-2027"), ("US", "3/6/27"), ("US", "2/30/2027"), ("US", "Ma 6, 2027"), ("US", "13/13/2027"),
        ("US", "3/6/2027 25:00"), ("US", "3/6/2027 13:00 PM"), ("US", "3/6/1027"), ("US", "next Saturday"),
    ],
)  # fmt: skip
def test_a_day_that_can_mean_two_or_none_is_not_guessed(region: str, text: str) -> None:
    with pytest.raises(TextError) as error:
        parse_roster_date(text, _locale(region))
    assert error.value.name == "date-unreadable"


@pytest.mark.parametrize(
    ("written", "meant"),
    [
        ("lavender", ("Lavender essential oil",)), ("Lavender oil", ("Lavender essential oil",)),
        ("lavender essential oil", ("Lavender essential oil",)), ("oil", ()), ("essential oil", ()), ("mint", ()),
        # Rose is no rose geranium, and the two mandarins are two.
        ("rose", ()), ("geranium", ()), ("mandarin", ()), ("no scent", (None,)), ("", ()),
    ],
)  # fmt: skip
def test_a_short_name_means_an_option_only_if_it_can_mean_no_other(written: str, meant: tuple[str | None, ...]) -> None:
    names = ("Lavender essential oil", "Rose geranium essential oil", "Mandarin essential oil", "Mandarin fragrance oil")
    cards = {fold(name): card(name) for name in names}
    choice = Choice("scent", (*(Name(name) for name in names), None), share(1))
    assert options_meant(Name(written, NOWHERE), choice, cards) == meant
