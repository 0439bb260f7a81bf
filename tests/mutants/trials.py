"""Which tests run a function, and whether one of them fails once it is changed.

All tests are collected once. A first process runs them all and notes the functions that each runs; then each change is tried in a
process of its own by the tests that run its function: first the findings of its rule and the tests that name it, then the tests that run
the fewest functions of the two rooms, until their time is used up.
"""

import os
import pickle
import re
import resource
import sys
import tempfile
import time
from collections.abc import Callable, Sequence
from itertools import zip_longest
from pathlib import Path
from types import CodeType, FrameType, ModuleType
from typing import TypeVar

import pytest

from builder.check.rule import Rule
from builder.model.remembered import forget

ROOT = Path(__file__).parents[2]
ROOMS = tuple(str(ROOT / "builder" / name) for name in ("check", "reckon"))
TESTS = [
    str(ROOT / "tests" / name)
    for name in (
        "check", "reckon", "authorities", "model", "content", "test_cases.py", "test_findings.py", "test_usual.py", "test_acceptance.py",
        "test_dose_cards.py", "test_label_lists.py", "test_own_kinds_of_product.py", "test_spelled_by_region.py",
    )
]  # fmt: skip
SECONDS = 45.0  # of processor time, for the tests of one change
LONGEST = 120  # what takes longer does not end
T = TypeVar("T")
Function = tuple[str, str]  # a file, and the qualified name of a function in it


class Trials:
    """A plugin of pytest: in place of running the tests it does `with_tests`."""

    def __init__(self, with_tests: Callable[["Trials"], None], known: Path | None) -> None:
        self.with_tests, self.known = with_tests, known
        self.items: list[pytest.Item] = []
        self.ran: dict[str, tuple[float, set[Function]]] = {}

    @pytest.hookimpl(tryfirst=True)
    def pytest_collection_modifyitems(self, items: list[pytest.Item]) -> None:
        """Keep what a usual run tries, and every case of a finding, also those that a long run alone tries."""
        marks = [(item, item.get_closest_marker("long")) for item in items]
        self.items = [item for item, mark in marks if not mark or mark.kwargs.get("sample") or item.path.name == "test_findings.py"]

    @pytest.hookimpl(tryfirst=True)
    def pytest_runtestloop(self) -> bool:
        """See what each test runs, then go on."""
        if self.known and self.known.exists():
            self.ran = pickle.loads(self.known.read_bytes())
        new = [item for item in self.items if item.nodeid not in self.ran]
        self.ran |= _in_its_own_process(lambda: {item.nodeid: _what_it_runs(item) for item in new}) or {}
        if self.known:
            self.known.write_bytes(pickle.dumps(self.ran))
        self.with_tests(self)
        return True

    def tests_of(self, module: ModuleType, file: Path, function: str) -> list[pytest.Item]:
        """Return the tests that run a function, and those of the same modules, which may use what another of them has made."""
        kinds = {kind.name for one in vars(module).values() if isinstance(one, Rule) for kind in one.finds}
        speaks = re.compile(rf"\b({re.escape(module.__name__)}|{re.escape(function.rpartition('.')[2])})\b")
        spoken = {path: bool(speaks.search(path.read_text(encoding="utf-8"))) for path in {item.path for item in self.items}}
        runs = [(str(file.relative_to(ROOT)), function) in self.ran[item.nodeid][1] for item in self.items]
        modules = {item.path for item, does in zip(self.items, runs, strict=True) if does and item.path.name != "test_findings.py"}
        ranked = []
        for number, (item, does) in enumerate(zip(self.items, runs, strict=True)):
            is_own = spoken[item.path] or _kind_of(item) in kinds
            if does or is_own or item.path in modules:
                ranked.append((not is_own, not does, len(self.ran[item.nodeid][1]), number))
        seconds, chosen = 0.0, list[pytest.Item]()
        for *_, number in sorted(ranked):
            seconds += self.ran[self.items[number].nodeid][0]
            if chosen and seconds > SECONDS:
                break
            chosen.append(self.items[number])
        return chosen

    def notices(self, tests: Sequence[pytest.Item], change: Callable[[], None]) -> bool:
        """Tell whether a test fails, or no longer ends, after a change. Without a test nothing is noticed."""

        def tried() -> bool:
            resource.setrlimit(resource.RLIMIT_CPU, (LONGEST, LONGEST))
            change()
            forget()
            return any(_fails(item, then) for item, then in zip_longest(tests, tests[1:]))

        return _in_its_own_process(tried) is not False


def _kind_of(item: pytest.Item) -> str:
    case = re.fullmatch(r"test_finding\[(.+?)(--.*)?\]", item.name)
    return case[1] if case else ""


def _fails(item: pytest.Item, then: pytest.Item | None = None) -> bool:
    before = item.session.testsfailed
    item.config.hook.pytest_runtest_protocol(item=item, nextitem=then)
    return item.session.testsfailed > before


def _what_it_runs(item: pytest.Item) -> tuple[float, set[Function]]:
    """Run a test; return its seconds of processor time, and the functions of the two rooms that it runs."""
    codes: dict[int, CodeType] = {}

    def call(frame: FrameType, *_: object) -> None:
        codes[id(frame.f_code)] = frame.f_code

    forget()
    begun = time.process_time()
    sys.settrace(call)
    try:
        failed = _fails(item)
    finally:
        sys.settrace(None)
    if failed:
        raise RuntimeError(f"{item.nodeid} fails before anything is changed")
    seconds, ours = time.process_time() - begun, [one for one in codes.values() if one.co_filename.startswith(ROOMS)]
    return seconds, {(os.path.relpath(one.co_filename, ROOT), one.co_qualname.partition(".<locals>")[0]) for one in ours}


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
