"""Change functions of `check`, `rules` and `reckon` at random, each in a process of its own, and see whether the tests that run them fail.

    python -m tests.mutants --note
    python -m tests.mutants --many 200 --seed 1 [--of builder/check]
    python -m tests.mutants --of builder/reckon/dose/limits.py:134

Sums and comparisons are drawn three times as often as other changes. The code of the functions is put in place where they are, so that
nothing is loaded again; constants of modules are left as they are. Which tests try them: `trials.py`. Once it is noted which of them
reach which line, which takes some minutes, each change is tried by these alone.
"""

import argparse
import ast
import contextlib
import functools
import importlib
import inspect
import io
import random
import sys
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from types import FunctionType, ModuleType
from typing import TextIO

import pytest

from builder.check.rule import Rule
from tests.mutants.changes import Change, changes_of, codes_of
from tests.mutants.reached import ROOMS, ROOT, may_reach, note
from tests.mutants.trials import TESTS, Trials, fails, module_of

WEIGHT = 3  # of a sum or a comparison; other changes weigh 1


@dataclass(frozen=True)
class Place:
    """A change, as the so-manieth of a file."""

    file: Path
    number: int
    change: Change


def main() -> None:
    ask = argparse.ArgumentParser(prog="python -m tests.mutants", description=__doc__, formatter_class=argparse.RawTextHelpFormatter)
    ask.add_argument("--note", action="store_true", help="note which tests reach which line, and change nothing")
    ask.add_argument("--many", type=int, default=200)
    ask.add_argument("--seed", type=int, default=1)
    ask.add_argument("--of", nargs="+", default=[str(room.relative_to(ROOT)) for room in ROOMS], help="folders, files, or lines of files")
    options = ask.parse_args()
    asked = [one for name in options.of for one in _asked(*name.split(":"))]
    chosen = _drawn(asked, options.many, options.seed)
    out = sys.stdout
    with contextlib.redirect_stdout(io.StringIO()):
        pytest.main(
            ["-n", "0", "-p", "no:cacheprovider", *(str(ROOT / "tests" / name) for name in TESTS)],
            plugins=[Trials(lambda trials: note(trials.items, fails) if options.note else _try(trials, chosen, out))],
        )


def _asked(name: str, line: str = "") -> Iterator[Place]:
    where = ROOT / name
    for file in sorted(where.rglob("*.py")) if where.is_dir() else [where]:
        changes = changes_of(ast.parse(file.read_text(encoding="utf-8")))
        yield from (Place(file, number, one) for number, one in enumerate(changes) if line in ("", str(one.line)))


def _drawn(every: Sequence[Place], many: int, seed: int) -> list[Place]:
    """Draw changes without replacement, each by its weight (Efraimidis and Spirakis 2006: the greatest of u ** (1 / weight))."""
    draws = random.Random(seed)
    keyed = [(draws.random() ** (1 / (WEIGHT if one.change.is_sum else 1)), number) for number, one in enumerate(every)]
    return [every[number] for _, number in sorted(keyed, reverse=True)[:many]]


def _try(trials: Trials, chosen: Sequence[Place], out: TextIO) -> None:
    noticed = 0
    for count, one in enumerate(chosen, start=1):
        module = importlib.import_module(module_of(one.file))
        function, put = _put(module, one)
        reaching = may_reach(one.file, function.__code__.co_firstlineno, one.change.line)
        seen = trials.notices(trials.tests_of(module.__name__, function.__qualname__, reaching), put)
        noticed += seen
        where = f"{one.file.relative_to(ROOT)}:{one.change.line} {one.change.what}"
        print(f"{noticed}/{count} {'' if seen else 'LIVES '}{where}", file=out, flush=True)


def _put(module: ModuleType, place: Place) -> tuple[FunctionType, Callable[[], None]]:
    """Return the function that a change is in, and what puts the changed code in place."""
    file = place.file
    tree = ast.parse(file.read_text(encoding="utf-8"))
    before = codes_of(compile(tree, str(file), "exec"))
    changes_of(tree)[place.number].make()
    after = codes_of(compile(ast.fix_missing_locations(tree), str(file), "exec"))
    changed = {name for name, code in after.items() if code != before[name] and "<locals>" not in name and "<lambda>" not in name}
    functions = [one for one in _functions_of(module) if one.__qualname__ in changed]
    if not functions:
        raise LookupError(f"{file}:{place.change.line}: no function of {changed} is found in its module")

    def put() -> None:
        for function in functions:
            function.__code__ = after[function.__qualname__]

    return functions[0], put


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


if __name__ == "__main__":
    main()
