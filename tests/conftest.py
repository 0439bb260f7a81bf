"""Settings for all tests: property tests draw the same examples on every run, with `--long` more; the example studio is
published once for all processes.

`--long` runs what is marked `long`, and over all there is: what the run without it leaves out, or looks at in a sample (`sample=True`).
Together they run everything, as `.ci/run` does. What stops, lye, doses, cautions and names of people are tried without `--long`, and so are
amounts that agree, tagged sheets, builds of the same bytes and pages that ask nothing of others. What is about a machine (other systems,
terminals, kills, the cache), a browser or another language is mostly left to it, and so is some of how labels, pictures and sheets look,
and of what takes long beside: lists, schemas, large purchases, names of files in messages.
"""

import gc
import os
import sys
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from _pytest.runner import runtestprotocol

from tests.whole_run import LONG, SHARED

# How many examples a property test draws, without and with `--long`.
EXAMPLES = (10, 60)


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption("--long", action="store_true", help="what takes long, over all there is: what is marked so, and nothing else")


def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    """Leave out what the other of the two runs tries."""
    from hypothesis import is_hypothesis_test

    for item in items:
        if is_hypothesis_test(getattr(item, "obj", None)) and not item.get_closest_marker("long"):
            item.add_marker(pytest.mark.long(sample=True))
    marks = [item.get_closest_marker("long") for item in items]
    wanted = [bool(mark) if config.option.long else not mark or bool(mark.kwargs.get("sample")) for mark in marks]
    config.hook.pytest_deselected(items=[item for item, is_wanted in zip(items, wanted, strict=True) if not is_wanted])
    items[:] = sorted((item for item, is_wanted in zip(items, wanted, strict=True) if is_wanted), key=_turn)


def pytest_collection_finish() -> None:
    """Look for no garbage among what was loaded: it stays to the end."""
    gc.freeze()


# Modules that take more than about two seconds, the longest first: they come before all others, so that no process waits for them at the
# end. The first one publishes the example, for which others wait: before them come those that have no need of it.
LONGEST = (
    "test_site_example.py", "test_findings.py", "check/test_unsafe_sentences.py", "test_acceptance.py", "check/test_formula_twins.py",
    "test_usual.py", "start/test_start.py", "test_hostile_files.py", "site/test_accessible.py", "press/test_cautions_on_their_page.py",
    "press/test_labels.py", "preview/test_preview.py", "compose/test_gear.py", "test_own_documents.py", "reckon/test_supervision.py",
    "test_dates_and_roster.py", "compose/test_documents.py", "test_roster_names.py", "press/test_take_home_pages.py",
    "compose/test_amounts_shown.py", "press/test_press.py", "compose/test_who_weighs.py", "reckon/test_linear_programs.py",
    "check/test_lesson_twins.py", "start/test_starters.py", "test_messages.py", "site/test_hostile.py", "site/test_served.py",
)  # fmt: skip


# What makes all that follows in its process slower, as it forgets what was worked out: it comes after all others, the longest first.
LAST = ("fuzz/test_fuzz.py", "test_results_kept.py", "read/test_compiled.py")


def _turn(item: pytest.Item) -> int:
    """Return the place of the module of a test in the run; those of one place stay as they were collected."""
    return _turn_of(item.path)


@cache
def _turn_of(path: Path) -> int:
    name = path.relative_to(Path(__file__).parent).as_posix()
    if name in LONGEST:
        return LONGEST.index(name)
    return len(LONGEST) + (LAST.index(name) + 1 if name in LAST else 0)


# Seconds from which a run tells what took long to set up or to clear away.
WORTH_TELLING = 0.005


@pytest.hookimpl(tryfirst=True)
def pytest_runtest_protocol(item: pytest.Item, nextitem: pytest.Item | None) -> bool | None:
    """Tell the process that hands out tests of each how it ended, and not each time that it was set up and cleared away as well.

    Of ten thousand small tests the telling takes as long as the tests.
    """
    if not hasattr(item.config, "workerinput"):
        return None
    for report in runtestprotocol(item, log=False, nextitem=nextitem):
        report.keywords = {}  # nobody asks by which words a test could have been chosen
        if report.when == "call" or not report.passed or report.duration >= WORTH_TELLING:
            item.ihook.pytest_runtest_logreport(report=report)
    return True


@pytest.fixture
def pages_alone() -> Iterator[None]:
    """Press no sheet where only pages matter."""
    from tests.published import only_pages

    with only_pages():
        yield


def pytest_configure(config: pytest.Config) -> None:
    """Make a folder that the processes of this run find by their environment, and where tests run settle what stays as it is."""
    config.addinivalue_line("markers", "long(sample=False): runs with --long alone; with sample=True also without it, over less")
    if config.option.long:
        os.environ[LONG] = "yes"
    if not hasattr(config, "workerinput"):
        folder = TemporaryDirectory(prefix="published-")
        os.environ[SHARED] = folder.name
        os.environ["XDG_CACHE_HOME"] = str(Path(folder.name, "cache"))  # not the user's own
        # Code is compiled once, beside itself, for all processes of a run, the commands that they start, and later runs.
        os.environ.pop("PYTHONDONTWRITEBYTECODE", None)
        sys.dont_write_bytecode = False
        config.add_cleanup(folder.cleanup)
    if config.option.dist == "no" or hasattr(config, "workerinput"):
        _settle(config.option.long)
    if worker := getattr(config, "workerinput", None):
        from tests.made_ready import make_ready

        make_ready(int(worker["workerid"].removeprefix("gw")))


def _settle(is_long: bool) -> None:
    """Settle what is the same for all tests. A process that hands out tests to others has no need of what is loaded for it.

    Garbage is looked for less often than usual: what tests have worked out is kept, and going through it takes an eighth of the time.
    """
    from hypothesis import HealthCheck, settings

    from tests.settled import settle

    gc.set_threshold(100_000, 50, 50)
    settle()
    too_slow = [HealthCheck.too_slow]
    settings.register_profile("ours", derandomize=True, deadline=None, max_examples=EXAMPLES[is_long], suppress_health_check=too_slow)
    settings.load_profile("ours")
