"""Each change is made once, and its code takes the place of that of the function."""

import ast
import importlib

from tests.mutants.changes import changes_of, codes_of
from tests.mutants.reached import ROOT
from tests.mutants.trials import module_of

SOURCE = """
LIMIT = 3

def is_small(one, two):
    return one < 5 and not two + 1 == 0
"""


def test_each_place_in_a_function_is_changed_once() -> None:
    made = set()
    for number, change in enumerate(changes_of(ast.parse(SOURCE))):
        assert change.line == 5
        tree = ast.parse(SOURCE)
        changes_of(tree)[number].make()
        made.add((change.what, ast.unparse(tree).rpartition("return ")[2]))
    assert made == {
        ("And", "one < 5 or not two + 1 == 0"),
        ("Lt", "one <= 5 and (not two + 1 == 0)"),
        ("5", "one < 6 and (not two + 1 == 0)"),
        ("Not", "one < 5 and (not not two + 1 == 0)"),
        ("Eq", "one < 5 and (not two + 1 != 0)"),
        ("Add", "one < 5 and (not two - 1 == 0)"),
        ("1", "one < 5 and (not two + 2 == 0)"),
        ("0", "one < 5 and (not two + 1 == 1)"),
    }


def test_what_is_taken_for_granted_is_left_as_it_is() -> None:
    assert changes_of(ast.parse("def pairs(one, two):\n    return list(zip(one, two, strict=True))\n")) == []


def test_a_function_does_what_its_new_code_says() -> None:
    names: dict[str, object] = {}
    exec(SOURCE, names)
    function = names["is_small"]
    assert callable(function) and function(5, 0) is False
    tree = ast.parse(SOURCE)
    next(one for one in changes_of(tree) if one.what == "Lt").make()
    function.__code__ = codes_of(compile(ast.fix_missing_locations(tree), "x", "exec"))["is_small"]  # type: ignore[attr-defined]
    assert function(5, 0) is True


def test_a_package_is_changed_where_others_have_it_from() -> None:
    import builder.reckon

    assert importlib.import_module(module_of(ROOT / "builder/reckon/__init__.py")) is builder.reckon
