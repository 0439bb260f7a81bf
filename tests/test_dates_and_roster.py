"""From one publication to the next: dates that are moved or cancelled, and people whose names and allergies never leave the studio."""

import json
import re
from pathlib import Path
from typing import Any

import pytest

from builder import cli
from builder.model.document import Document
from tests.published import named, sheets_pressed, squeeze
from tests.test_readme import FILES, lay_out
from tests.test_roster_names import layers

CLASS = FILES["classes/first-bar/class.yaml"]
DATE = "{on: 2027-03-06 10:00, enrolled: 5}"
ROSTER = """name,date,age,allergies,settled,waiting
Quillon Zarnwick,2027-03-06,34,zanthorberry,,
Ysolde Grubbenhoe,2027-03-06,41,"olive oil, wuxelroot",wears frumbelo gloves,
Torquil Vexmere,2027-03-06,29,"nuts, quobblenut",,yes
"""
SECRETS = ("Zarnwick", "Grubbenhoe", "Vexmere", "Quillon", "Ysolde", "Torquil", "zanthorberry", "wuxelroot", "quobblenut", "frumbelo")


def publish(tmp_path: Path, date: str, roster: str | None = None, *more: str) -> int:
    changed = {"classes/first-bar/class.yaml": CLASS.replace(DATE, date)}
    lay_out(tmp_path / "loft", **changed | ({"classes/first-bar/roster.csv": roster} if roster else {}))
    return cli.main(["publish", str(tmp_path / "loft"), "--to", str(tmp_path / "out"), "--today", "2027-01-02", *more])


def shown(tmp_path: Path) -> Any:
    return json.loads((tmp_path / "out/site/dates.json").read_text(encoding="utf-8"))["dates"]


def found_in(printed: str) -> list[str]:
    return re.findall(r": ([a-z-]+) \((?:stop|caution|accepted)\)", printed)


@pytest.mark.usefixtures("pages_alone")
def test_a_date_that_changes_needs_a_higher_revision(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert publish(tmp_path, DATE) == 0
    assert [(one["id"], one["status"], one["revision"]) for one in shown(tmp_path)] == [("first-bar/2027-03-06T10:00", "confirmed", 0)]
    moved = "{on: 2027-03-13 10:00, enrolled: 5, moved from: 2027-03-06 10:00, revision: 1}"
    assert publish(tmp_path, moved) == 0
    page = (tmp_path / "out/site/classes/first-bar.html").read_text(encoding="utf-8")
    assert "Moved from Saturday, March 6, 2027, 10:00" in page
    assert [(one["id"], one["on"]) for one in shown(tmp_path)] == [("first-bar/2027-03-06T10:00", "2027-03-13T10:00")]
    again = moved.replace("03-13", "03-20")
    assert publish(tmp_path, again) == 1
    assert found_in(capsys.readouterr().err) == ["revision-not-raised"]
    assert shown(tmp_path)[0]["on"] == "2027-03-13T10:00"
    twice = "[2027-03-06 10:00, 2027-03-13 10:00]"
    assert publish(tmp_path, f"{{on: 2027-03-20 10:00, enrolled: 5, moved from: {twice}, revision: 2}}") == 0
    assert found_in(capsys.readouterr().err) == []


@pytest.mark.usefixtures("pages_alone")
def test_what_is_announced_is_told_alike_on_another_day_from_an_empty_folder(tmp_path: Path) -> None:
    """RFC 5545 3.8.7.2, RFC 4287 4.2.15: stamps tell of the last change, and there was none."""
    of_studio = FILES["studio.yaml"] + "public address: https://loft.example\n"
    dates = (
        "{on: 2027-03-06 10:00, enrolled: 5, announced: 2026-11-02}\n"
        "  - {on: 2027-04-10 10:00, moved from: 2027-03-20 10:00, revision: 1, announced: [2026-11-02, 2026-12-14]}\n"
        "  - {on: 2027-05-08 10:00, cancelled: yes, revision: 1, announced: [2026-11-02, 2026-11-30]}"
    )
    lay_out(tmp_path / "loft", **{"studio.yaml": of_studio, "classes/first-bar/class.yaml": CLASS.replace(DATE, dates)})
    made = []
    for today in ("2027-01-02", "2027-01-19"):
        output = tmp_path / today
        assert cli.main(["publish", str(tmp_path / "loft"), "--to", str(output), "--today", today]) == 0
        files = (file for file in (output / "site").rglob("*") if file.suffix in (".ics", ".xml") or file.name == "dates.json")
        made.append({file.relative_to(output).as_posix(): file.read_bytes() for file in files})
    assert {"site/dates.ics", "site/dates.xml", "site/dates.json", "site/classes/first-bar.ics"} <= set(made[0])
    assert made[0] == made[1]


@pytest.mark.usefixtures("pages_alone")
def test_a_cancelled_date_stays_on_the_page_and_nothing_is_prepared_for_it(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    cancelled = "{on: 2027-03-06 10:00, cancelled: the weir is being mended, revision: 1}"
    assert publish(tmp_path, f"{cancelled}\n  - {{on: 2027-04-03 14:00, enrolled: 2}}") == 0
    for page in ("dates.html", "classes/first-bar.html"):
        text = (tmp_path / "out/site" / page).read_text(encoding="utf-8")
        assert "cancelled" in text
        assert "The weir is being mended" in text
    assert {one["status"] for one in shown(tmp_path)} == {"cancelled", "confirmed"}
    assert found_in(capsys.readouterr().err) == []
    assert cli.main(["plan", str(tmp_path / "loft"), "first-bar", "--date", "2027-03-06", "--today", "2027-01-02"]) == 2
    assert "its dates are: 2027-04-03 14:00" in capsys.readouterr().err


@pytest.mark.usefixtures("pages_alone")
def test_what_was_shown_of_a_class_that_is_held_back_stays_known(tmp_path: Path) -> None:
    other = {f"classes/second-bar/{name}": FILES[f"classes/first-bar/{name}"] for name in ("class.yaml", "lesson.md")}
    lay_out(tmp_path / "loft", **other)
    assert publish(tmp_path, DATE) == 0
    assert len(shown(tmp_path)) == 2
    assert publish(tmp_path, "{on: 2027-03-06 10:00, enrolled: 50}", None, "--only-sound") == 1
    assert [one["class"] for one in shown(tmp_path)] == ["first-bar", "second-bar"]


@pytest.mark.long(sample=True)
def test_names_and_allergies_stand_on_the_roster_and_nowhere_else(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    studio = str(tmp_path / "loft")
    composed: list[Document] = []
    with sheets_pressed(named("roster.pdf"), composed.append):
        assert publish(tmp_path, "{on: 2027-03-06 10:00, enrolled: 8, waiting: 1}", ROSTER) == 0
    for command in (
        ["check", studio],
        ["plan", studio, "first-bar"],
        ["weigh", studio, "orchard-bar", "--class", "first-bar"],
        ["weigh", studio, "orchard-bar", "--class", "first-bar", "--json"],
    ):
        cli.main([*command, "--today", "2027-01-02"])
    printed = capsys.readouterr()
    assert {"allergy-unclear", "allergy-in-recipe"} <= set(found_in(printed.err))
    assert [word for word in SECRETS if word.casefold() in (printed.out + printed.err).casefold()] == []
    where = {}
    for path in sorted(file for file in (tmp_path / "out").rglob("*") if file.is_file()):
        texts = [squeeze(text).casefold() for text in layers(path)]
        found = {word for word in SECRETS if any(word.casefold() in text for text in texts)}
        if found:
            where[path.relative_to(tmp_path / "out").as_posix()] = found
    assert where == {f"print/first-bar/2027-03-06/roster.{ending}": set(SECRETS) for ending in ("pdf", "html")}
    # Nor in what any other sheet was pressed from, or would be.
    assert len(composed) > 10
    assert [one.path for one in composed if any(word.casefold() in one.html.casefold() for word in SECRETS)] == [
        "first-bar/2027-03-06/roster.pdf"
    ]
