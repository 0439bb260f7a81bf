"""A list of people that has begun is compared with how many are enrolled; what is no list, or no list yet, is met in silence."""

from pathlib import Path

import pytest

from tests.test_findings import CASES, check, lay_out

SHORT = next(case for case in CASES if case.name == "roster-below-enrolled")
ON = "{on: 2027-03-06 10:00, enrolled: 6}"
SIX = "name,date\n" + "".join(f"Person {letter},2027-03-06\n" for letter in "ABCDEF")


@pytest.mark.parametrize(("roster", "dates", "found"), [
    (SIX, ON, False),
    (SIX.rsplit("Person", 1)[0], ON, True),
    ("name,date\n", ON, False),
    (SIX, f"{ON}\n  - {{on: 2027-04-03 10:00, enrolled: 3}}", False),
    (SIX + "Person G,2027-04-03\n", f"{ON}\n  - {{on: 2027-04-03 10:00, enrolled: 3}}", True),
    ("name,date\nPerson A,2026-12-05\n", "{on: 2026-12-05 10:00, enrolled: 6}", False),
    ("name,date\nPerson A,2027-01-01\n", "{on: 2027-01-01 10:00, enrolled: 6}", True),
    (SIX.replace("F,2027-03-06", "F,2027-03-16"), ON, False),
    (SIX.replace("F,2027-03-06", "F,in spring"), ON, False),
    ("name,waiting\nPerson A,\nPerson B,yes\n", "{on: 2027-03-06 10:00, enrolled: 1, waiting: 1}", False),
    ("name,waiting\nPerson A,\nPerson B,yes\n", "{on: 2027-03-06 10:00, enrolled: 2, waiting: 1}", True),
], ids=[
    "as many", "one too few", "nobody listed yet", "the other date has no list yet", "the other date's list has begun", "a day gone by",
    "the day itself",
    "one of no date", "one that cannot be read", "who waits has no seat", "who waits fills no seat",
])  # fmt: skip
def test_only_a_list_that_has_begun_can_be_too_short(tmp_path: Path, roster: str, dates: str, *, found: bool) -> None:
    lay_out(SHORT, tmp_path / "studio")
    folder = tmp_path / "studio/classes/one-lotion"
    text = (folder / "class.yaml").read_text(encoding="utf-8")
    (folder / "class.yaml").write_text(text.replace(ON, dates), encoding="utf-8")
    (folder / "roster.csv").write_text(roster, encoding="utf-8")
    _, _, err = check(tmp_path / "studio")
    assert ("roster-below-enrolled" in err) is found


@pytest.mark.parametrize(("listed", "others"), [(5, "the last of them"), (4, "the others"), (1, "the others")])
def test_one_who_is_missing_is_spoken_of_as_one(tmp_path: Path, listed: int, others: str) -> None:
    lay_out(SHORT, tmp_path / "studio")
    (tmp_path / "studio/classes/one-lotion/roster.csv").write_text("".join(SIX.splitlines(keepends=True)[: listed + 1]), encoding="utf-8")
    assert f"the roster lists {listed}. What {others} must not touch" in " ".join(check(tmp_path / "studio")[2].split())


OWN_NAME = next(case for case in CASES if case.name == "own-name-not-printed")


def test_of_a_class_that_cannot_be_read_its_roster_says_nothing(tmp_path: Path) -> None:
    """What keeps the class from being read is the finding; who comes to it, and what for, is not known."""
    lay_out(SHORT, tmp_path / "studio")
    (tmp_path / "studio/classes/one-lotion/class.yaml").write_text("makes: [", encoding="utf-8")
    (tmp_path / "studio/classes/one-lotion/roster.csv").write_text(
        f"colour,{SIX.splitlines()[0]}\npink,Person A,2031-03-06\n", encoding="utf-8"
    )
    status, _, err = check(tmp_path / "studio")
    assert status == 1 and "classes/one-lotion/class.yaml:1" in err and "roster" not in err


@pytest.mark.parametrize("printed", [False, True])
def test_names_of_their_own_are_told_where_they_are_not_printed(tmp_path: Path, *, printed: bool) -> None:
    lay_out(OWN_NAME, tmp_path / "studio")
    with (tmp_path / "studio/studio.yaml").open("a", encoding="utf-8") as profile:
        profile.write(f"labels: {{names of their own: {'yes' if printed else 'no'}}}\n")
    _, _, err = check(tmp_path / "studio")
    assert ("own-name-not-printed" in err) is not printed
