"""Section 5 of DEVELOPERS.md, done on a copy of the project: each addition works, and touches as many files as stands there in brackets."""

import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from tests.how_to_add.change import Addition
from tests.how_to_add.code_changes import CODE_CHANGES
from tests.how_to_add.content_changes import CONTENT_CHANGES

ROOT = Path(__file__).parent.parent
ADDITIONS = (*CODE_CHANGES, *CONTENT_CHANGES)
SECTION = re.search(r"^## 5 How to add$(.*?)^## ", (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8"), re.MULTILINE | re.DOTALL)
ENTRIES = dict(re.findall(r"^- \*\*(.+?)\*\* \((.+?)\)", SECTION[1] if SECTION else "", re.MULTILINE))
COPIED = ("builder", "content", "layouts", "site_example", "tests", "pyproject.toml", "README.md")
NOT_COPIED = ("__pycache__", "gold", "bench", "fuzz", "usual", "cases", "output")


def numbers(entry: str) -> set[int]:
    """Return the numbers of files that an entry states."""
    return {int(number) for number in re.findall(r"\d+", ENTRIES[entry])}


@pytest.fixture(scope="module")
def passed(tmp_path_factory: pytest.TempPathFactory) -> str:
    """Make all additions in one copy, run the tests that show them, and give what these print."""
    copy = tmp_path_factory.mktemp("copy")
    for name in COPIED:
        if (ROOT / name).is_file():
            shutil.copy2(ROOT / name, copy)
        else:
            shutil.copytree(ROOT / name, copy / name, ignore=shutil.ignore_patterns(*NOT_COPIED, *unread(name)))
    for addition in ADDITIONS:
        addition.apply(copy)
    shown_by = dict.fromkeys(test for addition in ADDITIONS for test in addition.shown_by)
    command = [sys.executable, "-m", "pytest", "-n", "0", "-rA", "--tb=short", "-p", "no:cacheprovider", *shown_by]
    environment = {name: value for name, value in os.environ.items() if not name.startswith("PYTEST_")} | {"PYTHONPATH": str(copy)}
    done = subprocess.run(command, cwd=copy, capture_output=True, encoding="utf-8", env=environment, check=False)
    return done.stdout + done.stderr


def unread(name: str) -> tuple[str, ...]:
    """Return what no test of the copy reads: the cases of findings, but for the sound studio."""
    return tuple(one.name for one in (ROOT / "tests/findings").iterdir() if one.name != "_sound") if name == "tests" else ()


def test_every_entry_is_tried_with_each_number_that_it_states() -> None:
    tried: dict[str, set[int]] = {}
    for addition in ADDITIONS:
        tried.setdefault(addition.entry, set()).add(addition.files)
    assert tried == {entry: numbers(entry) for entry in ENTRIES}


@pytest.mark.long
@pytest.mark.parametrize("addition", ADDITIONS, ids=lambda one: f"{one.entry}: {next(iter(one.changes))}")
def test_an_addition_works(addition: Addition, passed: str) -> None:
    for test in addition.shown_by:
        assert f"PASSED {test}" in passed, passed
    assert "FAILED" not in passed
