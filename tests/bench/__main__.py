"""Measure the goals and print them: `python -m tests.bench [--times 3] [--only WORD] [--long]`.

Processor time, medians. Nothing else should run meanwhile. The cache folder is one of its own.
"""

import argparse
import os
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.bench.goals import GOALS, Bench

# So many classes: the same number of each of the eight patterns.
SIZES, LONG_SIZES = (8, 40, 104), (8, 104, 1000)


def main() -> None:
    ask = argparse.ArgumentParser(prog="python -m tests.bench", description=__doc__)
    ask.add_argument("--times", type=int, default=3, help="runs of each thing, of which the median counts")
    ask.add_argument("--only", default="", help="only the goals in whose names these words stand")
    ask.add_argument("--long", action="store_true", help=f"with the goals that take hours, and studios of {LONG_SIZES} classes")
    options = ask.parse_args()
    with TemporaryDirectory(prefix="bench-") as scratch:
        os.environ["XDG_CACHE_HOME"] = str(Path(scratch, "cache"))
        # Code is compiled once, as where it is installed.
        os.environ.pop("PYTHONDONTWRITEBYTECODE", None)
        os.environ["PYTHONPYCACHEPREFIX"] = str(Path(scratch, "compiled"))
        bench = Bench(Path(scratch), options.times, LONG_SIZES if options.long else SIZES)
        print(f"{'what':36} {'against':50} {'goal':>6} {'reached':>8}")
        for goal in GOALS:
            if options.only in goal.name and (options.long or not goal.long):
                reached = goal.ratio(bench)
                verdict = "" if reached <= goal.at_most else "  not yet"
                print(f"{goal.name:36} {goal.against:50} {goal.at_most:6} {reached:8.2f}{verdict}", flush=True)


if __name__ == "__main__":
    main()
