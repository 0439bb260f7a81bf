"""No table of words is written twice: what two modules look for or say stands beneath both."""

import ast
import re
from collections.abc import Iterator
from itertools import combinations
from pathlib import Path

import pytest

BUILDER = Path(__file__).parent.parent / "builder"
# So many words in common, and half of the shorter table, are no chance; a few that are picked out of a whole vocabulary are no table of it.
MANY, PICKED = 8, 20
# What any sentence of English is put together with.
GRAMMAR = frozenset(
    re.findall(
        r"\w+",
        "a all an and are as at by can cannot could don for from has have if in into is it many may more must near no not of on once one "
        "or over onto should some that the their then these they this those to was were when while with will would you your",
    )
)
# Pairs that only look alike: each word stands for something else in the one than in the other.
APART = {
    ("list_names.py", "tasks/look_up.py"): "other words for the lists",
    ("compose/recipe/portion_words.py", "read/values/kinds.py"): "what is said with its number, and what may be counted",
}


def tables_in(tree: ast.AST) -> Iterator[tuple[int, frozenset[str]]]:
    """Yield each list, set, mapping, enumeration and choice of an expression that is written out, with its line and its words."""
    for node in ast.walk(tree):
        match node:
            case ast.List(elts=parts) | ast.Tuple(elts=parts) | ast.Set(elts=parts):
                words = [one.value for one in parts if isinstance(one, ast.Constant)]
            case ast.Dict(keys=keys, values=values):
                words = [one.value for one in (*keys, *values) if isinstance(one, ast.Constant)]
            case ast.ClassDef(body=body):
                words = [one.value.value for one in body if isinstance(one, ast.Assign) and isinstance(one.value, ast.Constant)]
            case ast.Constant(value=str(text)) if text.count("|") > 1:
                words = re.findall(r"(?<![\\\w])[a-z][a-z' -]+", text)
            case ast.Constant(value=str(text)) if "\n" in text and re.search(r"\w:\w", text):
                words = re.findall(r"[a-z]+", text)
            case _:
                continue
        yield getattr(node, "lineno", 0), frozenset(one for one in words if isinstance(one, str) and len(one) > 1) - GRAMMAR


def alike(one: frozenset[str], other: frozenset[str]) -> bool:
    common, (shorter, longer) = len(one & other), sorted((len(one), len(other)))
    return common >= max(MANY, shorter / 2) and common >= min(PICKED, longer / 10)


TABLES = [
    (path.relative_to(BUILDER).as_posix(), line, words)
    for path in sorted(BUILDER.rglob("*.py"))
    for line, words in tables_in(ast.parse(path.read_text(encoding="utf-8")))
    if len(words) >= MANY
]


def test_no_table_of_words_is_written_twice() -> None:
    assert len(TABLES) > 60
    found = {(a, b): f"{a}:{at}, {b}:{to}" for (a, at, one), (b, to, other) in combinations(TABLES, 2) if a != b and alike(one, other)}
    assert [said for pair, said in found.items() if pair not in APART] == []
    assert sorted(APART.keys() - found.keys()) == []


WORDS = ["pour", "stir", "melt", "weigh", "fold", "tip", "ladle", "scoop"]


@pytest.mark.parametrize("written", [f"x = {WORDS}", f"x = {{*{WORDS}}}", f"x = re.compile('(?:{'|'.join(WORDS)})')"])
def test_a_table_that_stands_twice_is_found(written: str) -> None:
    assert any(alike(frozenset(WORDS), words) for _, words in tables_in(ast.parse(written)))
