"""Whether a test fails once a function is changed.

All tests are collected once. Each change is tried in a process of its own, by the tests that may reach it (`reached.py`), nearest first:
those that name the function or its module and the findings of its rule, then those whose names are alike, those of the same room, and
those that are fewer imports away, until their time is used up.
"""

import os
import pickle
import re
import resource
import tempfile
import time
from collections import deque
from collections.abc import Callable, Mapping, Sequence
from functools import cache
from itertools import zip_longest
from pathlib import Path
from typing import TypeVar

import pytest

from builder.check.rules import RULES
from builder.model.remembered import forget
from tests.mutants.reached import ROOMS, ROOT

TESTS = ("check", "reckon", "authorities", "model", "rules", "content/test_allergy_words.py", "compose/test_allergy_words.py",
         "compose/test_bought_lye.py", "compose/test_earlier_batch.py", "compose/test_gear.py", "compose/test_label_languages.py",
         "compose/test_label_logo.py", "compose/test_label_positions.py", "compose/test_label_rules.py", "compose/test_label_surfaces.py",
         "compose/test_lesson_flow.py", "compose/test_look.py", "compose/test_mentions.py", "compose/test_packages.py",
         "compose/test_roster_to_paper.py", "compose/test_safety_in_short.py", "compose/test_shopping_words.py",
         "compose/test_small_packs.py", "compose/test_who_weighs.py", "test_cases.py", "test_findings.py", "test_usual.py",
         "test_acceptance.py", "test_label_lists.py", "test_naming.py", "test_own_kinds_of_product.py")  # fmt: skip
SECONDS = 30.0  # of processor time, for the tests of one change
LONGEST = 60  # what takes longer does not end
FARTHEST = 99
T = TypeVar("T")


class Trials:
    """A plugin of pytest: in place of running the tests it does `with_tests`."""

    def __init__(self, with_tests: Callable[["Trials"], None]) -> None:
        self.with_tests = with_tests
        self.items: list[pytest.Item] = []

    @pytest.hookimpl(tryfirst=True)
    def pytest_collection_modifyitems(self, items: list[pytest.Item]) -> None:
        """Keep what a usual run tries, and every case of a finding, also those that a long run alone tries."""
        marks = [(item, item.get_closest_marker("long")) for item in items]
        self.items = [item for item, mark in marks if not mark or mark.kwargs.get("sample") or item.path.name == "test_findings.py"]

    @pytest.hookimpl(tryfirst=True)
    def pytest_runtestloop(self) -> bool:
        """Hand over the tests once all are collected."""
        self.with_tests(self)
        return True

    def tests_of(self, module: str, function: str, may_reach: Callable[[str], bool]) -> list[pytest.Item]:
        """Return the tests that may reach a place in a function of a module, by how near they are to that."""
        far, words, room = _distances(module), _words(module), module.split(".")[1]
        named = re.compile(rf"\b{re.escape(function.rpartition('.')[2])}\b")
        rules = {kind.name: far.get(rule.look.__module__, FARTHEST) for rule in RULES for kind in rule.finds}

        def distance(item: pytest.Item) -> tuple[int, ...]:
            case = re.fullmatch(r"test_finding\[(.+?)(--.*)?\]", item.name)
            if case:
                away, alike = rules.get(case[1], FARTHEST), set[str]()
            else:
                away = 0 if named.search(_text(item.path)) else far.get(module_of(item.path), FARTHEST)
                alike = words & _words(module_of(item.path))
            return min(away, 1), -len(alike), room not in item.path.parts, away

        return sorted((item for item in self.items if may_reach(item.nodeid)), key=distance)

    def notices(self, tests: Sequence[pytest.Item], change: Callable[[], None]) -> bool:
        """Tell whether a test fails, or no longer ends, after a change."""

        def tried() -> bool:
            resource.setrlimit(resource.RLIMIT_CPU, (LONGEST, LONGEST))
            change()
            forget()
            begun = time.process_time()
            return any(fails(item, then) for item, then in zip_longest(tests, tests[1:]) if time.process_time() - begun < SECONDS)

        return _in_its_own_process(tried) is not False


def module_of(file: Path) -> str:
    return ".".join(file.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__")


def _words(module: str) -> set[str]:
    return {*module.rpartition(".")[2].split("_"), *module.split(".")[2:-1]}


@cache
def _text(file: Path) -> str:
    return file.read_text(encoding="utf-8")


@cache
def _importers() -> Mapping[str, set[str]]:
    """Return who imports each module, among the three rooms and the tests."""
    found: dict[str, set[str]] = {}
    for folder in (*ROOMS, ROOT / "tests"):
        for file in folder.rglob("*.py"):
            for one in re.findall(r"^\s*from ((?:builder|tests)\.[\w.]+) import", _text(file), re.MULTILINE):
                found.setdefault(one, set()).add(module_of(file))
    return found


def _distances(module: str) -> Mapping[str, int]:
    """Return by how many imports others are away from a module."""
    found, waiting = {module: 0}, deque([module])
    while waiting:
        one = waiting.popleft()
        for other in _importers().get(one, set()) - found.keys():
            found[other] = found[one] + 1
            waiting.append(other)
    return found


def fails(item: pytest.Item, then: pytest.Item | None) -> bool:
    """Run a test, `then` the next one, and tell whether it fails."""
    before = item.session.testsfailed
    item.config.hook.pytest_runtest_protocol(item=item, nextitem=then)
    return item.session.testsfailed > before


def _in_its_own_process(made: Callable[[], T]) -> T | None:
    """Return what a process of its own makes; None where that process is ended before."""
    with tempfile.NamedTemporaryFile() as file:
        child = os.fork()
        if child == 0:
            status = 1
            try:
                file.write(pickle.dumps(made()))
                file.flush()
                status = 0
            finally:
                os._exit(status)
        status = os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])
        if status > 0:
            raise RuntimeError("a process for tests failed")
        return None if status < 0 else pickle.loads(Path(file.name).read_bytes())
