"""Every kind of finding is declared as the code gives it, and has a case in `findings/`; every case has the name of a finding.

The names are read from the code: what is given first to `stop`, `caution`, the errors of a text, and the helpers that pass a name on.
"""

import ast
import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from builder.check import RULES
from builder.check.rule import Rule
from builder.finding_kinds import finding_kinds
from builder.model.finding_kind import ACCEPTABLE_STOP, CAUTION, STOP, ComesAs
from builder.read.findings import FINDS
from tests.test_findings import CASES

HERE = Path(__file__).parent
BUILDER = HERE.parent / "builder"
FILES = [file for stage in ("read", "check") for file in sorted((BUILDER / stage).rglob("*.py"))]
GIVERS = {"stop": STOP, "caution": CAUTION, "TextError": STOP, "AmountError": STOP}
KEBAB_CASE = re.compile(r"[a-z0-9]+(-[a-z0-9]+)+")
SHOWN = re.compile(r"^\S+: ([a-z0-9-]+) \((stop|caution)\)$", re.MULTILINE)

# What a folder of small text files cannot hold, with what it is; these tests make it.
MADE_IN = ("test_hostile_files.py", "check/test_type_heights_unknown.py")
MADE_IN_A_TEST = {
    "file-outside-studio": "a link that leads out of the folder",
    "file-too-large": "a file of 2 MB",
    "file-unreadable": "a file that may not be opened, a link that leads nowhere, a pipe",
    "type-heights-unknown": "a region that ships without heights of type",
}


@cache
def functions() -> list[tuple[Path, ast.FunctionDef]]:
    """Return every function of the two stages, with its file."""
    return [
        (file, node)
        for file in FILES
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8")))
        if isinstance(node, ast.FunctionDef)
    ]


def given_names(function: ast.FunctionDef, givers: dict[str, ComesAs]) -> Iterator[tuple[ast.expr, ComesAs]]:
    """Yield what a function hands to a giver as the name, and what the finding is then: the first argument of each call."""
    for node in ast.walk(function):
        if isinstance(node, ast.Call) and node.args:
            called = node.func.attr if isinstance(node.func, ast.Attribute) else getattr(node.func, "id", "")
            if called in givers:
                may = any(word.arg == "acceptable" and getattr(word.value, "value", False) is True for word in node.keywords)
                yield node.args[0], ACCEPTABLE_STOP if may else givers[called]


def first_parameter(function: ast.FunctionDef) -> str | None:
    parameters = [parameter.arg for parameter in function.args.args if parameter.arg != "self"]
    return parameters[0] if parameters else None


@cache
def all_givers() -> dict[str, ComesAs]:
    """Add to the givers the helpers whose first parameter is a name that they pass on, each with what it makes of it."""
    givers = dict(GIVERS)
    while True:
        found = dict(givers)
        for _, function in functions():
            for given, comes_as in given_names(function, givers):
                if isinstance(given, ast.Name) and given.id == first_parameter(function):
                    found[function.name] = found.get(function.name, ComesAs(0)) | comes_as
        if found == givers:
            return givers
        givers = found


def names_in_a_loop(function: ast.FunctionDef, variable: str) -> Iterator[str]:
    """Yield the texts that a variable takes in a `for` over written-out tuples."""
    for node in ast.walk(function):
        if isinstance(node, ast.For) and isinstance(node.target, ast.Tuple) and isinstance(node.iter, (ast.Tuple, ast.List)):
            targets = [getattr(target, "id", "") for target in node.target.elts]
            if variable in targets:
                for item in node.iter.elts:
                    assert isinstance(item, ast.Tuple)
                    text = item.elts[targets.index(variable)]
                    assert isinstance(text, ast.Constant) and isinstance(text.value, str)
                    yield text.value


def names_given(function: ast.FunctionDef) -> Iterator[tuple[str, ComesAs]]:
    """Yield the names that a function gives, with what each finding is."""
    for given, comes_as in given_names(function, all_givers()):
        match given:
            case ast.Constant(value=str(name)):
                yield name, comes_as
            case ast.Name(id=variable) if variable != first_parameter(function):
                found = set(names_in_a_loop(function, variable))
                assert found, f"{function.name}: no name can be found for {variable}"
                yield from ((name, comes_as) for name in found)
            # A parameter is passed on, and the name of an error that was caught has been given where it was raised.
            case ast.Name() | ast.Attribute(attr="name"):
                pass
            case _:
                raise AssertionError(f"{function.name}: {ast.unparse(given)} is not a name that can be read from the code")


@cache
def names_in_code() -> tuple[dict[str, ComesAs], dict[str, set[Path]]]:
    """Return every name with all that its findings can be, and the files that give it."""
    ways: dict[str, ComesAs] = {}
    files: dict[str, set[Path]] = {}
    for file, function in functions():
        for name, comes_as in names_given(function):
            ways[name] = ways.get(name, ComesAs(0)) | comes_as
            files.setdefault(name, set()).add(file)
    return ways, files


def test_names_are_kebab_case() -> None:
    assert [name for name in finding_kinds() if not KEBAB_CASE.fullmatch(name)] == []


def test_every_kind_is_declared_as_the_code_gives_it() -> None:
    declared = {name: kind.comes_as for name, kind in finding_kinds().items()}
    assert declared == names_in_code()[0]


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.look.__name__)
def test_a_rule_declares_what_its_file_gives(rule: Rule[Any]) -> None:
    itself = Path(rule.look.__code__.co_filename)
    declared = {kind.name for one in RULES if one.look.__code__.co_filename == str(itself) for kind in one.finds}
    given = {name for name, files in names_in_code()[1].items() if itself in files}
    assert given <= declared
    # What it declares beyond that is the kind of another file, whose helper it calls.
    assert declared - given <= {"strength-missing"}


def test_no_rule_is_missing_in_the_list() -> None:
    marked = {
        function.name
        for _, function in functions()
        for mark in function.decorator_list
        if isinstance(mark, ast.Call) and getattr(mark.func, "id", "") == "rule_on"
    }
    assert [rule.look.__name__ for rule in RULES if rule.look.__name__ not in marked] == []
    assert sorted(marked) == sorted(rule.look.__name__ for rule in RULES)


def test_no_kind_is_declared_twice() -> None:
    of_reading, of_rules = [kind.name for kind in FINDS], {kind.name for rule in RULES for kind in rule.finds}
    assert sorted(of_reading) == sorted(set(of_reading))
    assert of_rules & set(of_reading) == {"roster-column-unclear"}


def test_a_sentence_says_what_is_the_matter() -> None:
    kinds = finding_kinds().values()
    assert [kind.name for kind in kinds if not (kind.means[:1].isupper() and kind.means.endswith("."))] == []
    assert len({kind.means for kind in kinds}) == len(kinds)


def test_what_is_shown_is_what_is_declared_and_each_way_is_shown() -> None:
    shown = {found for case in CASES for found in SHOWN.findall((case / "expected.txt").read_text(encoding="utf-8"))}
    stops = {(kind.name, "stop") for kind in finding_kinds().values() if kind.stops}
    cautions = {(kind.name, "caution") for kind in finding_kinds().values() if kind.cautions}
    assert shown - stops - cautions == set()
    # No law in the tables that ship sets a pH for an acid; a row of a studio's own can.
    assert (stops | cautions) - shown == {("acid-too-sour", "stop"), *((name, "stop") for name in MADE_IN_A_TEST)}


def test_every_name_has_a_case() -> None:
    cases = {case.name.split("--")[0] for case in CASES}
    assert set(finding_kinds()) - cases - set(MADE_IN_A_TEST) == set()


def test_every_case_has_the_name_of_a_finding() -> None:
    assert {case.name.split("--")[0] for case in CASES} - set(finding_kinds()) == set()


def test_every_exception_is_still_a_name_without_a_case() -> None:
    exceptions = set(MADE_IN_A_TEST)
    assert exceptions <= set(finding_kinds())
    assert exceptions & {case.name.split("--")[0] for case in CASES} == set()


def test_what_a_folder_cannot_hold_is_made_in_a_test() -> None:
    tested = "".join((HERE / name).read_text(encoding="utf-8") for name in MADE_IN)
    assert [name for name in MADE_IN_A_TEST if f": {name} (stop)" not in tested] == []
