"""No message sends a studio to a file that an installed copy does not have: what ships is shown by a command."""

import ast
import re
from functools import cache
from pathlib import Path

import pytest

from builder.reference import pages
from builder.reference.pages import TOPICS

pytestmark = pytest.mark.long
ROOT = Path(__file__).parent.parent
# Files of the checkout, and files that ship: a studio has those on its own shelf alone.
ELSEWHERE = re.compile(r"(?<!shelf/)\b(?:content|tables|builder|tests)/[\w.]")
EXPECTED = sorted((ROOT / "tests" / "findings").glob("*/expected.txt"))
# A sentence is made for people; a path alone is made for the program.
STAGES = ("check", "read", "reckon", "compose", "press", "rules", "start", "tasks", "terminal")


@cache
def sentences(path: Path) -> tuple[tuple[int, str], ...]:
    """Return every text of a module that holds words with spaces between them, but for what describes the code."""
    nodes = list(ast.walk(ast.parse(path.read_text(encoding="utf-8"))))
    told = {id(node.value) for node in nodes if isinstance(node, ast.Expr)}
    texts = ((node.lineno, node.value) for node in nodes if isinstance(node, ast.Constant) and id(node) not in told)
    return tuple((line, text) for line, text in texts if isinstance(text, str) and " " in text.strip())


def test_there_is_much_to_look_through() -> None:
    assert len(EXPECTED) > 150
    assert sum(1 for stage in STAGES for path in (ROOT / "builder" / stage).rglob("*.py") for _ in sentences(path)) > 1000


@pytest.mark.parametrize("stage", STAGES)
def test_no_sentence_names_a_file_that_only_ships(stage: str) -> None:
    found = [
        f"{path.relative_to(ROOT)}:{line}: {text}"
        for path in sorted((ROOT / "builder" / stage).rglob("*.py"))
        for line, text in sentences(path)
        if ELSEWHERE.search(text)
    ]
    assert found == []


def test_no_finding_names_one() -> None:
    """The first line of a finding is its place, which is in the studio."""
    found = {
        path.parent.name: line for path in EXPECTED for line in path.read_text(encoding="utf-8").splitlines() if ELSEWHERE.search(line)
    }
    assert found == {}


def test_nor_does_the_readme_or_what_is_told_at_length() -> None:
    told = {page.key: page.text for page in pages() if page.key in TOPICS} | {"README": (ROOT / "README.md").read_text(encoding="utf-8")}
    assert [(key, found[0]) for key, text in told.items() if (found := ELSEWHERE.search(text.replace(".pictures/", "")))] == []


def test_what_it_looks_for_is_found() -> None:
    assert ELSEWHERE.search("Name one of content/label_sheets.yaml.") and ELSEWHERE.search("as tables/essential_oils.csv has it")
    assert not ELSEWHERE.search("a table in shelf/tables/usage_limits.csv") and not ELSEWHERE.search("shelf/containers.yaml")
