"""What a process of its own takes: time by the clock and of processors, with that of the processes it starts."""

import os
import subprocess
import sys
import time
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from statistics import median_low

from tests.making import sure

ROOT = Path(__file__).parents[2]
TODAY = "2027-01-01"


@dataclass(frozen=True)
class Taken:
    """Seconds of processor time, and seconds by the clock."""

    seconds: float
    clock: float


def python(*arguments: object) -> Taken:
    """Run Python to its end. Raises RuntimeError where it fails."""
    command, begun = [sys.executable, *map(str, arguments)], time.monotonic()
    with subprocess.Popen(command, cwd=ROOT, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE) as run:
        said = sure(run.stderr).read()
        _, status, used = os.wait4(run.pid, 0)
        run.returncode = os.waitstatus_to_exitcode(status)
    if run.returncode:
        raise RuntimeError(f"{' '.join(command)} ended with {run.returncode}: {said.decode(errors='replace')[-2000:]}")
    return Taken(used.ru_utime + used.ru_stime, time.monotonic() - begun)


def command(*words: object) -> Taken:
    """Run a command of the program."""
    return python("-m", "builder", *words, "--today", TODAY)


def typical(times: int, run: Callable[[], Taken], before: Callable[[], object] = lambda: None) -> Taken:
    """Return the run of several that takes the median of processor time; `before` is done before each and not counted."""
    taken = []
    for _ in range(times):
        before()
        taken.append(run())
    middle = median_low(one.seconds for one in taken)
    return next(one for one in taken if one.seconds == middle)


def seconds(times: int, run: Callable[[], Taken], before: Callable[[], object] = lambda: None) -> float:
    """Return the median of the processor time of several runs."""
    return typical(times, run, before).seconds
