"""What stays as it is while tests run is not looked at again for each of them: what ships, and whether a run is known.

A known run answers from the cache. A test that answered so would try the cache, and not what it is about; so every run here works
everything out, but where `test_known_runs.py` and `test_results_kept.py` give that back. Studios are read and judged anew each time.
"""

from collections.abc import Iterator
from contextlib import contextmanager
from functools import cache
from pathlib import Path
from unittest.mock import patch

from builder.cache import results
from builder.library import CONTENT
from builder.read import library
from builder.sums import sum_of_files
from builder.tasks import known_runs

_sum_of_run = known_runs._sum


@cache
def _sum_of_what_ships() -> str | None:
    return sum_of_files(CONTENT)


def _sum(folder: Path) -> str | None:
    return _sum_of_what_ships() if folder == CONTENT else sum_of_files(folder)


def settle() -> None:
    """Sum what ships once in this process, and know neither a run nor what one has worked out."""
    patch.object(known_runs, "_sum", lambda *_: None).start()
    patch.object(results, "sum_of_run", lambda *_, **__: None).start()
    patch.object(library, "sum_of_files", _sum).start()


@contextmanager
def known_runs_are_found() -> Iterator[None]:
    """Let runs be known again, as for users."""
    with patch.object(known_runs, "_sum", _sum_of_run):
        yield
