"""What comes from a fixed set is a type, and no text that is compared with words in the code (`tests/test_imports.py` is its neighbour)."""

import ast
from collections.abc import Iterator
from dataclasses import fields
from importlib import import_module
from pathlib import Path
from types import UnionType
from typing import Any, Union, get_args, get_origin, get_type_hints

import pytest

from builder.model.recipe.ingredient import Charge

BUILDER = Path(__file__).parent.parent / "builder"
TREES = {path: ast.parse(path.read_text(encoding="utf-8")) for path in sorted(BUILDER.rglob("*.py"))}
# A text all the same: a word that a file has in place of a name, or that somebody else's program calls something.
TEXTS = {
    ("language", "OWN"): "languages are the files that there are, beside the one of the code",
    ("language", "'French'"): "the one language of which a folder of starters ships",
    ("name", "_EDGES"): "of a property of a style",
    ("name", "_EXTENTS"): "of a property of a style",
    ("name", "_FIRST"): "of a field of a studio",
    ("name", "OWN"): "the name of a language",
    ("name", "'French'"): "the name of a language",
    ("name", "'nt'"): "of an operating system",
    ("name", "'__pycache__'"): "of a folder",
    ("name", "'pack.pdf'"): "of a file",
    ("name", "'font'"): "of a property of a style",
    ("name", "'unit-of-another-kind'"): "of a finding",
    ("key", "('age', 'room')"): "of a question of the site",
    ("key", "('scent-over-usual',)"): "names of findings",
    ("key", "TAKEN"): "addresses that no page may have",
    ("key", "'none'"): "what a cell of a roster says in place of a name",
    ("key", "'common-practice'"): "the short name of a source",
    ("region", "ANY_REGIONS"): "in place of the name of a region",
    ("counted_as", "ALUMINIUM"): "a substance, by its name in the tables",
    ("phase", "LYE_PHASE"): "in place of the name of a phase",
    ("unit", "RELATIVE_DENSITY"): "a unit as it was published",
    ("unit", "('count', '1')"): "a unit as it was published",
    ("unit", "'g'"): "of a scale, which is one of two (`WeighingUnit`)",
    ("unit", "'oz'"): "of a scale, which is one of two (`WeighingUnit`)",
    ("unit", "PERCENT"): "of a cell of a notebook",
}


def dataclasses_of_the_model() -> Iterator[type[Any]]:
    for path, tree in TREES.items():
        if path.is_relative_to(BUILDER / "model"):
            module = import_module(".".join(path.relative_to(BUILDER.parent).with_suffix("").parts).removesuffix(".__init__"))
            classes: list[type[Any]] = [getattr(module, node.name) for node in tree.body if isinstance(node, ast.ClassDef)]
            # What stands for a value that cannot be read has no fields to ask for.
            yield from (one for one in classes if isinstance(vars(one).get("__dataclass_fields__"), dict))


def holds_text(annotation: object) -> bool:
    """Tell whether a field is a text, or several, or may be one."""
    several = get_origin(annotation) in (Union, UnionType, tuple, frozenset, list)
    return annotation is str or (several and any(map(holds_text, get_args(annotation))))


def texts_of_the_model() -> set[str]:
    hints = ((one.name, get_type_hints(model)[one.name]) for model in dataclasses_of_the_model() for one in fields(model))
    return {name for name, annotation in hints if holds_text(annotation)}


def words_in(node: ast.expr, constants: set[str]) -> bool:
    match node:
        case ast.Constant(value=str(text)):
            return text != ""
        case ast.Name(id=name):
            return name in constants
        case ast.Tuple(elts=parts) | ast.Set(elts=parts) | ast.List(elts=parts):
            return any(words_in(part, constants) for part in parts)
    return False


def compared(tree: ast.AST, texts: set[str], constants: set[str]) -> Iterator[tuple[int, str, str]]:
    """Yield where a field that is a text is compared with words: the line, the field, and the words as they are written."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Compare) and len(node.comparators) == 1:
            pairs = [(node.left, node.comparators[0])]
            pairs += [(node.comparators[0], node.left)] if isinstance(node.ops[0], ast.Eq | ast.NotEq) else []
        elif isinstance(node, ast.Match):
            pairs = [(node.subject, case.pattern.value) for case in node.cases if isinstance(case.pattern, ast.MatchValue)]
        else:
            continue
        for one, other in pairs:
            if isinstance(one, ast.Attribute) and one.attr in texts and words_in(other, constants):
                yield node.lineno, one.attr, ast.unparse(other)


def own_constants(tree: ast.Module) -> set[str]:
    """Return the names that stand in a module for a text, or for several."""
    found: set[str] = set()
    for node in tree.body:
        if isinstance(node, ast.Assign) and words_in(node.value, found):
            names = node.targets[0].elts if isinstance(node.targets[0], ast.Tuple) else node.targets
            found |= {one.id for one in names if isinstance(one, ast.Name)}
    return found


OWN = {".".join(path.relative_to(BUILDER.parent).with_suffix("").parts): own_constants(tree) for path, tree in TREES.items()}


def constants_of(tree: ast.Module) -> set[str]:
    """Return those of a module, and those that it takes from another."""
    taken = (node for node in tree.body if isinstance(node, ast.ImportFrom))
    return own_constants(tree) | {one.name for node in taken for one in node.names if one.name in OWN.get(str(node.module), ())}


def test_no_text_of_the_model_is_compared_with_words() -> None:
    texts = texts_of_the_model()
    found = {
        (path.relative_to(BUILDER).as_posix(), *one) for path, tree in TREES.items() for one in compared(tree, texts, constants_of(tree))
    }
    assert sorted(one for one in found if one[2:] not in TEXTS) == []
    assert sorted(TEXTS.keys() - {one[2:] for one in found}) == []


@pytest.mark.parametrize(
    "written",
    ["card.about == 'lye'", "'lye' == card.about", "card.about in (LYE, 'x')", "card.about != LYE"],
)
def test_a_text_that_is_compared_is_found(written: str) -> None:
    assert [field for _, field, _ in compared(ast.parse(written), {"about"}, {"LYE"})] == ["about"]


@pytest.mark.parametrize("written", ["card.about == ''", "card.about == other", "card.charge is Charge.NONE", "card.kind == 'lye'"])
def test_what_is_no_text_that_is_compared_is_silent(written: str) -> None:
    assert list(compared(ast.parse(written), {"about"}, {"LYE"})) == []


def test_a_type_is_no_text() -> None:
    assert {"about", "also_called", "cancelled"} <= texts_of_the_model()
    assert not holds_text(Charge | None)
    assert not {"charge", "signal", "role"} & texts_of_the_model()
