"""Which tests reach a line: seen once (`python -m tests.mutants --note`), so that a change is tried by these alone.

What earlier tests have worked out is forgotten before each, so that none of them reaches less than it does alone.
"""

from collections.abc import Callable, Sequence
from functools import cache
from itertools import zip_longest
from pathlib import Path

import pytest
from coverage import Coverage, CoverageData

from builder.model.remembered import forget

ROOT = Path(__file__).parents[2]
ROOMS = tuple(ROOT / "builder" / room for room in ("check", "reckon", "rules"))
NOTED = ROOT / ".coverage_by_test"


def note(tests: Sequence[pytest.Item], fails: Callable[[pytest.Item, pytest.Item | None], bool]) -> None:
    """Run all tests, one after the other, and note which lines each of them reaches."""
    coverage = Coverage(data_file=str(NOTED), config_file=False, source=[str(room) for room in ROOMS])
    coverage.erase()
    coverage.start()
    for item, then in zip_longest(tests, tests[1:]):
        forget()
        coverage.switch_context(item.nodeid)
        fails(item, then)
    coverage.stop()
    coverage.save()


def may_reach(file: Path, first: int, line: int) -> Callable[[str], bool]:
    """Tell of a test, by its name, whether it may reach a line of a function that begins at `first`.

    A line on which nothing begins is reached with the last one before it. Of a file that is newer than the notes nothing is known: any
    test may reach it, and a test that is not in them may reach anything.
    """
    if not NOTED.exists() or file.stat().st_mtime > NOTED.stat().st_mtime:
        return lambda _: True
    data, known = _noted()
    by_line = {at: set(tests) for at, tests in data.contexts_by_lineno(str(file)).items() if first <= at <= line and tests}
    reached = by_line[max(by_line)] if by_line else set()
    return lambda test: test in reached or test not in known


@cache
def _noted() -> tuple[CoverageData, frozenset[str]]:
    data = CoverageData(str(NOTED))
    data.read()
    return data, frozenset(data.measured_contexts())
