"""What a process of its own takes: processor time with that of the processes it starts, and the memory of the largest of them."""

import os
import subprocess
import sys
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from statistics import median

from tests.making import sure

ROOT = Path(__file__).parents[2]
TODAY = "2027-01-01"


@dataclass(frozen=True)
class Taken:
    """Seconds of processor time, and bytes at the most."""

    seconds: float
    memory: int


def python(*arguments: object) -> Taken:
    """Run Python to its end. Raises RuntimeError where it fails."""
    command = [sys.executable, *map(str, arguments)]
    with subprocess.Popen(command, cwd=ROOT, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE) as run:
        said = sure(run.stderr).read()
        _, status, used = os.wait4(run.pid, 0)
        run.returncode = os.waitstatus_to_exitcode(status)
    if run.returncode:
        raise RuntimeError(f"{' '.join(command)} ended with {run.returncode}: {said.decode(errors='replace')[-2000:]}")
    return Taken(used.ru_utime + used.ru_stime, used.ru_maxrss * (1 if sys.platform == "darwin" else 1024))


def command(*words: object) -> Taken:
    """Run a command of the program."""
    return python("-m", "builder", *words, "--today", TODAY)


def seconds(times: int, run: Callable[[], Taken], before: Callable[[], object] = lambda: None) -> float:
    """Return the median of several runs; `before` is done before each and not counted."""
    taken = []
    for _ in range(times):
        before()
        taken.append(run().seconds)
    return median(taken)
