"""Every name that a finding can have has a case in `findings/`, and every case has the name of a finding.

The names are read from the code: what is given first to `stop`, `caution`, the errors of a text, and the helpers that pass a name on.
"""

import ast
import re
from functools import cache
from pathlib import Path

from tests.test_findings import CASES

HERE = Path(__file__).parent
STAGES = [HERE.parent / "builder" / stage for stage in ("read", "check")]
GIVERS = {"stop", "caution", "TextError", "AmountError"}
KEBAB_CASE = re.compile(r"[a-z0-9]+(-[a-z0-9]+)+")

# What a folder of small text files cannot hold; `test_hostile_files.py` makes it.
MADE_IN_A_TEST = {
    "file-outside-studio": "a link that leads out of the folder",
    "file-too-large": "a file of 2 MB",
    "file-unreadable": "a file that may not be opened, a link that leads nowhere, a pipe",
}


@cache
def functions():
    """Give every function of the two stages."""
    files = [file for stage in STAGES for file in sorted(stage.rglob("*.py"))]
    nodes = [node for file in files for node in ast.walk(ast.parse(file.read_text(encoding="utf-8")))]
    return [node for node in nodes if isinstance(node, ast.FunctionDef)]


def given_names(function, givers):
    """Give what a function hands to a giver as the name: the first argument of each call."""
    for node in ast.walk(function):
        if isinstance(node, ast.Call) and node.args:
            called = node.func.attr if isinstance(node.func, ast.Attribute) else getattr(node.func, "id", "")
            if called in givers:
                yield node.args[0]


def first_parameter(function):
    parameters = [parameter.arg for parameter in function.args.args if parameter.arg != "self"]
    return parameters[0] if parameters else None


def all_givers():
    """Add to the givers the helpers whose first parameter is a name that they pass on."""
    givers = set(GIVERS)
    while True:
        helpers = {
            function.name
            for function in functions()
            if any(isinstance(given, ast.Name) and given.id == first_parameter(function) for given in given_names(function, givers))
        }
        if helpers <= givers:
            return givers
        givers |= helpers


def names_in_a_loop(function, variable):
    """Give the texts that a variable takes in a `for` over written-out tuples."""
    for node in ast.walk(function):
        if isinstance(node, ast.For) and isinstance(node.target, ast.Tuple):
            targets = [getattr(target, "id", "") for target in node.target.elts]
            if variable in targets:
                yield from (item.elts[targets.index(variable)].value for item in node.iter.elts)


@cache
def names_in_code():
    givers, names = all_givers(), set()
    for function in functions():
        for given in given_names(function, givers):
            match given:
                case ast.Constant(value=str(name)):
                    names.add(name)
                case ast.Name(id=variable) if variable != first_parameter(function):
                    found = set(names_in_a_loop(function, variable))
                    assert found, f"{function.name}: no name can be found for {variable}"
                    names |= found
                # A parameter is passed on, and the name of an error that was caught has been given where it was raised.
                case ast.Name() | ast.Attribute(attr="name"):
                    pass
                case _:
                    raise AssertionError(f"{function.name}: {ast.unparse(given)} is not a name that can be read from the code")
    return names


def test_names_are_kebab_case():
    assert [name for name in names_in_code() if not KEBAB_CASE.fullmatch(name)] == []


def test_every_name_has_a_case():
    cases = {case.name.split("--")[0] for case in CASES}
    assert names_in_code() - cases - set(MADE_IN_A_TEST) == set()


def test_every_case_has_the_name_of_a_finding():
    assert {case.name.split("--")[0] for case in CASES} - names_in_code() == set()


def test_every_exception_is_still_a_name_without_a_case():
    exceptions = set(MADE_IN_A_TEST)
    assert exceptions <= names_in_code()
    assert exceptions & {case.name.split("--")[0] for case in CASES} == set()


def test_what_a_folder_cannot_hold_is_made_in_a_test():
    tested = (HERE / "test_hostile_files.py").read_text(encoding="utf-8")
    assert [name for name in MADE_IN_A_TEST if f": {name} (stop)" not in tested] == []
