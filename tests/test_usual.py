"""What usual teachers write: sound recipes and classes are met in silence, and each unsound one brings the finding that it must.

`usual/studio/` is one studio of sound recipes and classes. Each recipe begins with its source: a published formula, or common practice.
`usual/unsound/*.yaml` list changes to it, each with the name of every finding that the change must bring, and no other.
"""

import contextlib
import io
import re
import shutil
from collections import Counter
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

import pytest
import yaml
from _pytest.mark.structures import ParameterSet

from builder import cli

HERE = Path(__file__).parent / "usual"
STUDIO = HERE / "studio"
RECIPES = sorted(path.stem for path in (STUDIO / "recipes").glob("*.yaml"))
CLASSES = sorted(path.name for path in (STUDIO / "classes").iterdir())
UNSOUND = [
    case for file in sorted((HERE / "unsound").glob("*.yaml")) for case in yaml.load(file.read_text(encoding="utf-8"), yaml.CSafeLoader)
]
FOUND = re.compile(r"^(?P<file>[\w./-]+?)(?::\d+)*: (?P<name>[a-z0-9-]+) \((?:stop|caution)\)", re.MULTILINE)


def findings_of(studio: Path) -> tuple[list[tuple[str, str]], str]:
    """Check a studio through the command; give what it found as pairs of file and name, and all that it said."""
    out, err = io.StringIO(), io.StringIO()
    with contextlib.redirect_stdout(out), contextlib.redirect_stderr(err):
        cli.main(["check", str(studio), "--today", "2027-01-01"])
    return [(found["file"], found["name"]) for found in FOUND.finditer(err.getvalue())], err.getvalue()


@cache
def findings_of_the_sound() -> tuple[list[tuple[str, str]], str]:
    return findings_of(STUDIO)


def test_nothing_else_is_found_in_the_sound_studio() -> None:
    own = [f"recipes/{name}.yaml" for name in RECIPES]
    assert [(file, name) for file, name in findings_of_the_sound()[0] if file not in own and not file.startswith("classes/")] == []


@pytest.mark.parametrize("recipe", RECIPES)
def test_a_sound_recipe_is_met_in_silence(recipe: str) -> None:
    assert [name for file, name in findings_of_the_sound()[0] if file == f"recipes/{recipe}.yaml"] == [], findings_of_the_sound()[1]


@pytest.mark.parametrize("a_class", CLASSES)
def test_a_sound_class_is_met_in_silence(a_class: str) -> None:
    assert [name for file, name in findings_of_the_sound()[0] if file.startswith(f"classes/{a_class}/")] == [], findings_of_the_sound()[1]


def test_there_are_enough_and_each_names_its_source() -> None:
    texts = [(STUDIO / "recipes" / f"{name}.yaml").read_text(encoding="utf-8") for name in RECIPES]
    assert all(text.startswith("# Source: ") for text in texts)
    published = [text for text in texts if not text.startswith("# Source: common practice")]
    assert len(texts) + len(CLASSES) >= 25 and len(published) >= 5
    assert len(UNSOUND) >= 60 and [name for name, times in Counter(case["case"] for case in UNSOUND).items() if times > 1] == []


def changed(case: dict[str, Any], target: Path) -> None:
    """Lay out the part of the sound studio that a case needs, with its changes."""
    target.mkdir()
    for name in ("studio.yaml", "shelf", *case["needs"]):
        source = STUDIO / name
        (target / name).parent.mkdir(parents=True, exist_ok=True)
        shutil.copytree(source, target / name) if source.is_dir() else shutil.copy(source, target / name)
    for name, changes in case.get("change", {}).items():
        file = target / name
        text = file.read_text(encoding="utf-8")
        for old, new in changes.items():
            assert text.count(old) >= 1, f"{name} does not hold: {old}"
            text = text.replace(old, new)
        file.write_text(text, encoding="utf-8")
    for name, text in case.get("add", {}).items():
        (target / name).parent.mkdir(parents=True, exist_ok=True)
        (target / name).write_text(text, encoding="utf-8")


def first_of_each() -> Iterator[ParameterSet]:
    """Yield each case; what brings no finding that another before it does not bring is for the long run."""
    seen: set[str] = set()
    for case in UNSOUND:
        yield pytest.param(case, id=case["case"], marks=pytest.mark.long if seen.issuperset(case["finds"]) else ())
        seen.update(case["finds"])


@pytest.mark.parametrize("case", list(first_of_each()))
def test_an_unsound_one_brings_its_findings(case: dict[str, Any], tmp_path: Path) -> None:
    changed(case, tmp_path / "studio")
    found, said = findings_of(tmp_path / "studio")
    assert sorted({name for _, name in found}) == sorted(case["finds"]), said
