"""Change functions of `check` and `reckon` at random, each in a process of its own, and see whether the tests that speak of them fail.

    python -m tests.mutants --many 200 --seed 1

The code of the functions is put in place where they are, so that nothing is loaded again. Constants of modules are left as they are.
"""

import argparse
import ast
import contextlib
import functools
import importlib
import inspect
import io
import os
import random
import re
import resource
from collections.abc import Iterator
from pathlib import Path
from types import FunctionType, ModuleType

import pytest
from pytest import ExitCode

from builder.check.rule import Rule
from builder.model.remembered import forget
from tests.mutants.changes import changes_of, codes_of

ROOT = Path(__file__).parents[2]
SECONDS = 120  # of processor time: what takes longer does not end


def main() -> None:
    ask = argparse.ArgumentParser(prog="python -m tests.mutants", description=__doc__)
    ask.add_argument("--many", type=int, default=200)
    ask.add_argument("--seed", type=int, default=1)
    options = ask.parse_args()
    files = sorted(one for stage in ("check", "reckon") for one in (ROOT / "builder" / stage).rglob("*.py") if one.name != "__init__.py")
    every = [(file, number) for file in files for number, _ in enumerate(changes_of(ast.parse(file.read_text(encoding="utf-8"))))]
    chosen = random.Random(options.seed).sample(every, options.many)
    _run(["tests/check", "tests/reckon", "tests/test_cases.py", "tests/test_findings.py", "--collect-only"])
    noticed = 0
    for count, (file, number) in enumerate(chosen, start=1):
        tree = ast.parse(file.read_text(encoding="utf-8"))
        line, what, change = list(changes_of(tree))[number]
        change()
        seen = _notices(file, ast.fix_missing_locations(tree))
        noticed += seen
        print(f"{noticed}/{count} {'' if seen else 'LIVES '}{file.relative_to(ROOT)}:{line} {what}", flush=True)


def _notices(file: Path, tree: ast.Module) -> bool:
    """Tell whether a test fails, or no longer ends, with the change; in a process of its own. Without a test nothing is noticed."""
    child = os.fork()
    if child == 0:
        resource.setrlimit(resource.RLIMIT_CPU, (SECONDS, SECONDS))
        module = importlib.import_module(".".join(file.relative_to(ROOT).with_suffix("").parts))
        codes = codes_of(compile(tree, str(file), "exec"))
        for function in _functions_of(module):
            if function.__qualname__ in codes:
                function.__code__ = codes[function.__qualname__]
        forget()
        cases = _cases_of(file)
        # Of a kind of finding every case counts, also those that a long run alone tries.
        os._exit(_run(["-x", *cases, *_tests_of(file)]) or _run(["-x", "--long", *cases]))
    ended = os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])
    if ended in (ExitCode.INTERNAL_ERROR, ExitCode.USAGE_ERROR):
        raise RuntimeError(f"the tests of {file} cannot be run")
    return ended not in (ExitCode.OK, ExitCode.NO_TESTS_COLLECTED)


def _functions_of(module: ModuleType) -> Iterator[FunctionType]:
    looked_at = (one.look if isinstance(one, Rule) else one for one in vars(module).values())
    held: list[object] = [one for one in looked_at if getattr(one, "__module__", module.__name__) == module.__name__]
    while held:
        one = held.pop()
        one = inspect.unwrap(one) if callable(one) else one
        if isinstance(one, FunctionType):
            yield one
        elif isinstance(one, property | functools.cached_property):
            held.append(one.fget if isinstance(one, property) else one.func)
        elif isinstance(one, staticmethod | classmethod):
            held.append(one.__func__)
        elif inspect.isclass(one) and one.__module__ == module.__name__:
            held += vars(one).values()


def _tests_of(file: Path) -> list[str]:
    """Return the tests that speak of a module or of a function of it."""
    text = file.read_text(encoding="utf-8")
    names = [".".join(file.relative_to(ROOT).with_suffix("").parts), *re.findall(r"^def ([a-z]\w+)", text, re.MULTILINE)]
    speaks = re.compile("|".join(rf"\b{re.escape(name)}\b" for name in names))
    tests = [one for folder in ("", "check/", "reckon/", "usual/", "authorities/") for one in ROOT.glob(f"tests/{folder}test_*.py")]
    found = [str(one) for one in sorted(tests) if speaks.search(one.read_text(encoding="utf-8"))]
    return found if "check" in file.parts else [*found, "tests/test_cases.py", "tests/reckon"]


def _cases_of(file: Path) -> list[str]:
    """Return the sound studio, and the cases of what the rules of a module find."""
    module = importlib.import_module(".".join(file.relative_to(ROOT).with_suffix("").parts))
    kinds = {kind.name for one in vars(module).values() if isinstance(one, Rule) for kind in one.finds}
    cases = [one.name for one in sorted((ROOT / "tests/findings").iterdir()) if one.name.partition("--")[0] in kinds]
    return [SOUND, *(f"tests/test_findings.py::test_finding[{name}]" for name in cases)]


SOUND = "tests/test_findings.py::test_nothing_is_found_in_the_sound_studio"


def _run(arguments: list[str]) -> int:
    with contextlib.redirect_stdout(io.StringIO()), contextlib.redirect_stderr(io.StringIO()):
        return int(pytest.main(["-n", "0", "-q", "-p", "no:cacheprovider", *arguments]))


if __name__ == "__main__":
    main()
