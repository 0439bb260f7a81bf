"""Which tests reach a line: noted where coverage is measured (`bash .ci/covered`), so that a change is tried by these alone.

A plugin of pytest. What earlier tests have worked out is forgotten before each, so that none of them reaches less than it does alone.
"""

from collections.abc import Callable, Iterator
from functools import cache
from pathlib import Path

import pytest
from coverage import Coverage, CoverageData

from builder.model.remembered import forget

NOTED = Path(__file__).parents[2] / ".coverage"


@pytest.hookimpl(wrapper=True)
def pytest_runtest_protocol(item: pytest.Item) -> Iterator[None]:
    """Note what is reached from now on as reached by this test."""
    forget()
    coverage = Coverage.current()
    assert coverage is not None
    coverage.switch_context(item.nodeid)
    try:
        return (yield)
    finally:
        coverage.switch_context("")


def may_reach(file: Path, first: int, line: int) -> Callable[[str], bool]:
    """Tell of a test, by its name, whether it may reach a line of a function that begins at `first`.

    A line that is nowhere to go on its own is reached with the last one before it. Of what is newer than the notes nothing is known: any
    test may reach it, as a test that is not in them may reach anything.
    """
    data, known = _noted()
    if not NOTED.exists() or file.stat().st_mtime > NOTED.stat().st_mtime:
        return lambda _: True
    by_line = {at: tests - {""} for at, names in data.contexts_by_lineno(str(file)).items() if (tests := set(names)) - {""}}
    at = max((one for one in by_line if first <= one <= line), default=0)
    return lambda test: test in by_line.get(at, ()) or test not in known


@cache
def _noted() -> tuple[CoverageData, frozenset[str]]:
    data = CoverageData(str(NOTED))
    data.read()
    return data, frozenset(data.measured_contexts())
