"""A studio says a caution in its own words: what it leaves out stays ours, what it adds is silent, what it takes away is found."""

import re
from pathlib import Path
from shutil import copytree

import pytest

from builder.check.supplies.caution_texts import find_weakened_cautions
from builder.library import CONTENT
from builder.model.finding import Finding
from builder.model.teaching.caution import CautionText
from builder.read.studios import read_studio
from tests.test_findings import FINDINGS


def looked_at(folder: Path, key: str, text: str) -> tuple[CautionText, list[Finding]]:
    copytree(FINDINGS / "_sound", folder, dirs_exist_ok=True)
    (folder / "shelf" / "cautions").mkdir(parents=True)
    (folder / "shelf" / "cautions" / f"{key}.yaml").write_text(text, encoding="utf-8")
    studio, damage = read_studio(folder, CONTENT)
    assert damage == []
    found = [one for one in find_weakened_cautions(studio) if isinstance(one, Finding)]
    return studio.cautions[key], found


def test_what_is_left_out_stays_ours(tmp_path: Path) -> None:
    own, found = looked_at(tmp_path, "caustic", "name: Lye burns here too\n")
    ours = own.in_place_of
    assert ours is not None and own.name == "Lye burns here too" and found == []
    assert (own.avoid, own.if_it_happens, own.signal, own.in_brief) == (ours.avoid, ours.if_it_happens, ours.signal, ours.in_brief)


def test_what_is_added_is_silent_in_either_spelling(tmp_path: Path) -> None:
    ours = looked_at(tmp_path / "first", "caustic", "name: Lye burns\n")[0].in_place_of
    assert ours is not None
    lines = [*ours.if_it_happens, "The eyewash is beside the door."]
    text = "if it happens:\n" + "".join(f'  - "{line}"\n' for line in lines)
    own, found = looked_at(tmp_path / "second", "caustic", text.replace("neutralise", "neutralize"))
    assert found == [] and own.if_it_happens[-1] == "The eyewash is beside the door."


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("signal: notice\n", "weaker"),
        ("hazard: glass\n", "no longer come"),
        ("if it happens: [Wait and see.]\n", "On skin: brush off dry lye"),
        ("in brief: Rinse.\n", "In eyes: rinse, lids open"),
    ],
)
def test_what_is_taken_away_stops_and_cannot_be_accepted(text: str, said: str, tmp_path: Path) -> None:
    _, found = looked_at(tmp_path, "caustic", text)
    assert [one.name for one in found] == ["caution-weakened"] and found[0].stops and said in found[0].wrong


def test_less_about_the_danger_is_a_caution(tmp_path: Path) -> None:
    _, found = looked_at(tmp_path, "caustic", "avoid: [Wear goggles.]\n")
    assert [(one.name, one.stops) for one in found] == [("caution-says-less", False)]


def test_a_caution_of_another_name_is_compared_with_nothing(tmp_path: Path) -> None:
    text = """name: Wet floor
signal: notice
hazard: wet floor
what: The floor is wet.
avoid: [Wipe it up.]
if it happens: [Sit down.]
sources: [{source: common-practice, at: the studio, known: practice}]
reviewed: 2026-11-25
"""
    own, found = looked_at(tmp_path, "wet-floor", text)
    assert own.in_place_of is None and found == []


# One key that is forgotten in a caution of the studio's own is told as that key; a file that says all is silent.
def test_a_caution_of_the_studios_own_says_all_of_it(tmp_path: Path) -> None:
    whole = (CONTENT / "cautions" / "slippery.yaml").read_text(encoding="utf-8").replace("hazard: slippery", "hazard: wet floor")
    own, found = looked_at(tmp_path / "whole", "wet-floor", whole)
    assert own.in_place_of is None and own.hazard == "wet floor" and found == []
    (folder := tmp_path / "less").mkdir()
    copytree(FINDINGS / "_sound", folder, dirs_exist_ok=True)
    (folder / "shelf" / "cautions").mkdir(parents=True)
    (folder / "shelf" / "cautions" / "wet-floor.yaml").write_text(re.sub(r"(?m)^signal: .*\n", "", whole), encoding="utf-8")
    assert [one.name for one in read_studio(folder, CONTENT)[1]] == ["field-missing"]
