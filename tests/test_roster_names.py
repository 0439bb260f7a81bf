"""Names of people stay in the studio: no byte of `site/` holds one, and the roster of their date holds each."""

import csv
import re
import zlib
from collections.abc import Iterator
from pathlib import Path

import pytest

from builder.compose.document_kind import Readers
from builder.compose.publication import editions, kinds_with_editions
from builder.library import LAYOUTS
from builder.model.teaching.class_plan import ClassPlan
from builder.model.teaching.jar import Jar
from tests.making import sure
from tests.published import EXAMPLE, composed_for, edition, example, html_text, pdf_text, published, sheets, squeeze

ROSTERS = {
    path.parent.name: list(csv.DictReader(path.read_text(encoding="utf-8").splitlines()))
    for path in sorted(EXAMPLE.glob("classes/*/roster.csv"))
}
NAMES = sorted({row["name"] for rows in ROSTERS.values() for row in rows})
# First names alone would be found in other words; a family name is as good as a whole one, but for one so short that it stands by chance
# among the bytes of some picture.
TRACES = sorted({part for name in NAMES for part in (name, name.split()[-1]) if len(part) > 4})


def layers(path: Path) -> Iterator[str]:
    """Yield what a file holds, as text: its bytes, each compressed stream unpacked, and what is drawn in a PDF."""
    data = path.read_bytes()
    yield data.decode("latin-1")
    yield data.decode("utf-16-be", "replace")
    yield data.decode("utf-8", "replace")
    for found in re.finditer(rb"stream\r?\n", data):
        try:
            unpacked = zlib.decompressobj().decompress(data[found.end() :])
        except zlib.error:
            continue
        yield unpacked.decode("latin-1")
        yield unpacked.decode("utf-16-be", "replace")
    if path.suffix == ".pdf":
        yield pdf_text(path)


def traces_in(path: Path) -> set[str]:
    """Return the names that a file holds, or what was composed for a sheet that was not pressed."""
    folded = [squeeze(text).casefold() for text in (path.name, *(layers(path) if path.exists() else [html_text(composed_for(path))]))]
    return {trace for trace in TRACES if any(trace.casefold() in text for text in folded)}


def test_the_example_has_rosters_for_three_classes_at_least() -> None:
    assert len(NAMES) >= 27
    assert len(ROSTERS) >= 3


def test_no_byte_of_the_site_holds_a_name() -> None:
    folder, _ = published()
    files = {path for path in (*(folder / "site").rglob("*"), *sheets()) if path.is_relative_to(folder / "site") and not path.is_dir()}
    assert len(files) > 30
    assert {path.relative_to(folder).as_posix(): traces_in(path) for path in files if traces_in(path)} == {}


@pytest.mark.parametrize(("key", "date"), sorted({(key, row["date"]) for key, rows in ROSTERS.items() for row in rows}))
def test_the_roster_of_a_date_holds_its_names_and_no_other(key: str, date: str) -> None:
    folder, _ = published()
    here = {row["name"] for row in ROSTERS[key] if row["date"] == date}
    assert traces_in(folder / "print" / key / date / "roster.pdf") & set(NAMES) == here


def test_only_the_sheets_of_those_dates_hold_names() -> None:
    folder, _ = published()
    files = {path for path in (*(folder / "print").rglob("*"), *sheets()) if path.is_relative_to(folder / "print") and not path.is_dir()}
    # A sheet and the page beside it say the same.
    named = {path.relative_to(folder / "print").with_suffix(".pdf").as_posix() for path in files if traces_in(path)}
    assert named == {f"{key}/{row['date']}/roster.pdf" for key, rows in ROSTERS.items() for row in rows}


def test_what_is_not_for_staff_who_know_them_is_composed_from_plans_without_names() -> None:
    found = example()
    plans = found.plans
    assert any(plan.guests for plan in plans)
    seen = editions(sure(found.studio), plans, found.findings, (LAYOUTS,), edition().today)
    kinds = list(kinds_with_editions(*seen))
    named = {kind.name for kind, given in kinds if any(map(names_people, given.plans))}
    assert named == {kind.name for kind, _ in kinds if kind.readers is Readers.STAFF_WITH_NAMES}


def names_people(plan: ClassPlan) -> bool:
    return bool(plan.guests or plan.waiting or any(jar.guest for jar in jars_of(plan)))


def jars_of(plan: ClassPlan) -> list[Jar]:
    return [jar for made in plan.made for container in made.containers for jar in container.jars]
