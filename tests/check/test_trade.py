"""Formulas as usual teachers write them pass in silence, and their unsound twins are found.

`trade/sound/` and `trade/unsound/` hold one recipe a file. Its first comments say where it is from, `# region:` for which region it is
judged (the United States where there is none), and `# finds:` what must be found in it, and nothing else.
"""

import re
from collections.abc import Mapping, Sequence
from datetime import date
from pathlib import Path
from typing import Any

import pytest
import yaml

from builder.model.finding import Finding
from builder.pipeline import check
from tests.test_findings import FINDINGS

TRADE = Path(__file__).parent / "trade"
SOUND, UNSOUND = (sorted((TRADE / name).glob("*.yaml")) for name in ("sound", "unsound"))
IN = {"US": "Testham", "EU": "Ireland", "UK": "United Kingdom"}
CLASS = """title: {name}
format: demo
summary: It is made before your eyes.
for: adults
goal: fun
youngest: 18
length: 2 h
seats: 6
price: 60.00
staff: {{teachers: 1, assistants: 1}}
makes:
  {key}: {{each student: 1 {unit}}}
"""
_CLEAR_BASE = """name: Our clear base
label name:
  inci: [Aqua, Glycerin, Sodium Stearate, Sodium Laurate]
  plain: [water, glycerin, sodium stearate, sodium laurate]
  known: supplier
  shares: {Aqua: 38 to 42 %, Glycerin: 25 to 30 %, Sodium Stearate: 15 to 20 %, Sodium Laurate: 8 to 12 %}
kind: soap base
counts as: base
mixes with: water
figures:
  takes oil: [{low: 1, high: 3, unit: "%", source: common-practice, at: supplier, known: supplier}]
  takes liquid: [{low: 1, high: 3, unit: "%", source: common-practice, at: supplier, known: supplier}]
"""


def said_in(path: Path, key: str, otherwise: str = "") -> str:
    found = re.search(rf"^# {key}: (.*)$", path.read_text(encoding="utf-8"), re.M)
    return found[1] if found else otherwise


def lesson_of(recipe: Mapping[str, Any]) -> str:
    """Write a lesson in which the teacher uses everything."""
    names = [name for phase in recipe["phases"] for name in phase["ingredients"]]
    steps = [f"Weigh {{{name}}} of {name}." for name in names]
    steps += [f"Stir {{{choice}}} into each." for choice in recipe.get("choices", {})]
    numbered = "\n".join(f"{number}. {step}" for number, step in enumerate(steps, 1))
    return f"# {recipe['name']}\n\nWords about it.\n\n## Make it (teacher, 120 min)\n\n{numbered}\n"


def names_found(paths: Sequence[Path], region: str, folder: Path) -> dict[str, list[Finding]]:
    """Check a studio that makes each of these recipes in a class of its own; give what is found by recipe, with its words."""
    studio = (FINDINGS / "_sound" / "studio.yaml").read_text(encoding="utf-8")
    folder.mkdir()
    (folder / "studio.yaml").write_text(studio.replace("region: US", f"region: {region}").replace("Testham", IN[region]), encoding="utf-8")
    (folder / "shelf" / "ingredients").mkdir(parents=True)
    (folder / "shelf" / "ingredients" / "our-clear-base.yaml").write_text(_CLEAR_BASE, encoding="utf-8")
    (folder / "recipes").mkdir()
    for number, path in enumerate(paths):
        # So many recipes in one studio have letters alike; each is given some of its own.
        code = "".join("ABCDEFGHJK"[int(figure)] for figure in f"{number:03}")
        (folder / "recipes" / path.name).write_text(f"{path.read_text(encoding='utf-8')}code: {code}\n", encoding="utf-8")
        recipe = yaml.load(path.read_text(encoding="utf-8"), yaml.CSafeLoader)
        unit = "bar" if "bar" in recipe["fills"]["container"] else "container"
        made = folder / "classes" / path.stem
        made.mkdir(parents=True)
        (made / "class.yaml").write_text(CLASS.format(name=recipe["name"], key=path.stem, unit=unit), encoding="utf-8")
        (made / "lesson.md").write_text(lesson_of(recipe), encoding="utf-8")
    found: dict[str, list[Finding]] = {path.stem: [] for path in paths}
    for finding in check(folder, on=date(2027, 1, 1)).findings:
        if finding.accepted is None:
            file = Path(finding.place.file)
            found.setdefault(file.parent.name if file.parts[0] == "classes" else file.stem, []).append(finding)
    return found


@pytest.fixture(scope="module")
def found(tmp_path_factory: pytest.TempPathFactory) -> dict[str, list[Finding]]:
    everything: dict[str, list[Finding]] = {}
    for region in ("US", "EU", "UK"):
        paths = [path for path in (*SOUND, *UNSOUND) if said_in(path, "region", "US") == region]
        everything |= names_found(paths, region, tmp_path_factory.mktemp("trade") / region)
    return everything


@pytest.mark.parametrize("path", SOUND, ids=lambda path: path.stem)
def test_sound_formulas_pass_in_silence(path: Path, found: Mapping[str, Sequence[Finding]]) -> None:
    assert [f"{one.name}: {one.wrong}" for one in found[path.stem]] == []


@pytest.mark.parametrize("path", UNSOUND, ids=lambda path: path.stem)
def test_unsound_formulas_are_found(path: Path, found: Mapping[str, Sequence[Finding]]) -> None:
    assert sorted({one.name for one in found[path.stem]}) == sorted(said_in(path, "finds").split(", ")), found[path.stem]


def test_nothing_is_found_elsewhere(found: Mapping[str, Sequence[Finding]]) -> None:
    assert set(found) == {path.stem for path in (*SOUND, *UNSOUND)}
