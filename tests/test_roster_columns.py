"""Columns of a roster of which nothing makes use: they are named once, nothing of them is told or printed, and what may be ours stops.

The heads are those of common forms and booking systems: common practice, no source.
"""

import shutil
from pathlib import Path

import pytest

from builder.model.document import Document
from tests.findings_studio import SOUND
from tests.published import run, sheets_pressed

ROSTER = "classes/one-lotion/roster.csv"


def _studio(folder: Path, head: str, *cells: str) -> Path:
    rows = "\n".join(f"{name} Loom,2027-03-06,30,{cell}" for name, cell in zip(("Ada", "Bo", "Cy", "Di", "Ed", "Flo"), cells, strict=False))
    shutil.copytree(SOUND, folder, dirs_exist_ok=True)
    (folder / ROSTER).write_text(f"name,date,age,{head}\n{rows}\n", encoding="utf-8")
    return folder


def _found(studio: Path) -> tuple[list[str], str]:
    told = run("check", studio, "--today", "2027-01-01")
    lines = [line for line in told.err.splitlines() if line.startswith(ROSTER)]
    return [line.split(": ", 1)[1] for line in lines], told.out + told.err


PASSED_OVER = ["roster-columns-ignored (caution)"]
STOPPED = ["roster-column-unknown (stop)"]


@pytest.mark.parametrize(
    "head",
    ["Telephone", "E-mail", "Paid", "Order number", "Ticket type", "seat no", "First name", "Order date", "Postcode", "Home address",
     "Table", "Asking price", "Minutes late", "Emergency contact", "Language"],
)  # fmt: skip
def test_what_a_booking_system_exports_is_named_and_passed_over(tmp_path: Path, head: str) -> None:
    assert _found(_studio(tmp_path, head, *["x"] * 6))[0] == PASSED_OVER


@pytest.mark.parametrize(
    ("head", "meant"),
    [
        ("allergys", "allergies"), ("alergies", "allergies"), ("Allergy?", "allergies"), ("Nuts", "allergies"), ("Skin", "allergies"),
        ("Dietary needs", "allergies"), ("Anything we should know?", "allergies"), ("Notes", "allergies"), ("Latex", "allergies"),
        ("Unvertr\u00e4glichkeiten", "allergies"), ("Sant\u00e9", "allergies"), ("Access requirements", "allergies"),
        ("waitlist", "waiting"), ("Waiting list", "waiting"), ("setled", "settled"), ("athome", "at home"), ("scnt", "scent"),
        ("Which scent", "scent"), ("designs", "design"),
    ],
)  # fmt: skip
def test_a_head_that_may_be_one_of_ours_stops_and_names_it(tmp_path: Path, head: str, meant: str) -> None:
    found, told = _found(_studio(tmp_path, head, *["x"] * 6))
    assert found == STOPPED
    assert f'"{head}"' in told
    assert f'Did you mean "{meant}"' in told or f"goes into `{meant}`" in told


@pytest.mark.parametrize("cell", ["HAZELNUTS", "slight nut allergy", "lanolin", "I am intolerant to it"])
def test_an_allergy_beneath_a_head_that_does_not_say_so_stops_and_is_not_repeated(tmp_path: Path, cell: str) -> None:
    found, told = _found(_studio(tmp_path, "Question 3", "", cell, "", "", "", ""))
    assert found == STOPPED
    assert cell not in told


def test_a_road_with_the_name_of_a_nut_is_no_allergy(tmp_path: Path) -> None:
    assert _found(_studio(tmp_path, "Address", *["12 Almond Road"] * 6))[0] == PASSED_OVER


def test_nothing_of_such_a_column_stands_in_anything_that_is_told_or_written(tmp_path: Path) -> None:
    head = "Telephone,Paid,Order number,Table,Table"
    studio = _studio(tmp_path / "studio", head, "+44 CANARY,=CANARY,-CANARY,CANARY,CANARY", *[',,,"CANARY\nCANARY",'] * 5)
    composed: list[Document] = []
    with sheets_pressed(choose=lambda _: set(), note=composed.append):
        told = run("publish", studio, "--to", tmp_path / "out", "--today", "2027-01-01")
    assert (told.status, told.err.count("roster-columns-ignored")) == (0, 1)
    assert "CANARY" not in told.out + told.err
    assert any("Ada Loom" in sheet.html for sheet in composed)
    assert not any("CANARY" in sheet.html for sheet in composed)
    assert not [file for file in (tmp_path / "out").rglob("*") if file.is_file() and b"CANARY" in file.read_bytes()]


def test_an_address_over_two_lines_is_one_cell_and_a_mark_that_is_not_closed_makes_no_two_people_one(tmp_path: Path) -> None:
    six = ['"1 Weir Lane\n\nElmsby"'] * 6
    assert _found(_studio(tmp_path / "closed", "Address", *six))[0] == PASSED_OVER
    found, told = _found(_studio(tmp_path / "open", "Address", '"1 Weir Lane', '2 Weir Lane"', *six[:4]))
    assert "roster-row-wrong (stop)" in found
    assert "A quotation mark is not closed in its line" in told
