"""Try many seeds by hand: `python -m tests.fuzz --seeds 0 50000`."""

import argparse
import re
import shutil
import tempfile
import time
import traceback
from collections import Counter
from pathlib import Path

from tests.fuzz.trial import try_seed


def _alike(fault: str) -> str:
    """Return what faults of one cause have in common."""
    return " ".join(re.sub(r"\d+", "N", line.strip()) for line in fault.strip().split("\n")[-4:] if not set(line) <= set(" ^~"))[-300:]


options = argparse.ArgumentParser(prog="python -m tests.fuzz")
options.add_argument("--seeds", nargs=2, type=int, default=(0, 1000), metavar=("FIRST", "END"))
options.add_argument("--every-pdf", type=int, default=0, metavar="N", help="with PDFs for each Nth seed")
options.add_argument("--keep", type=Path, metavar="FOLDER", help="leave the last studio there")
asked = options.parse_args()
statuses: Counter[str] = Counter()
faults: Counter[str] = Counter()
names: Counter[str] = Counter()
failed, begun, slowest = [], time.process_time(), (0.0, -1)
for seed in range(*asked.seeds):
    with tempfile.TemporaryDirectory(prefix="fuzz-") as at:
        before = time.process_time()
        try:
            trial = try_seed(seed, Path(at), pdf=bool(asked.every_pdf) and seed % asked.every_pdf == 0)
        except Exception:
            print(f"{seed}: the trial itself failed\n{traceback.format_exc()}", flush=True)
            continue
        slowest = max(slowest, (time.process_time() - before, seed))
        if asked.keep:
            shutil.rmtree(asked.keep, ignore_errors=True)
            shutil.copytree(at, asked.keep, symlinks=True)
    statuses[f"{trial.command} {trial.status}"] += 1
    names.update({finding.name for finding in trial.findings})
    if trial.faults:
        failed.append(seed)
        alike = tuple(_alike(fault) for fault in trial.faults)
        faults.update(alike)
        new = [fault for fault, like in zip(trial.faults, alike, strict=True) if faults[like] <= 1]
        print(f"{seed} ({trial.command}; {'; '.join(trial.done)}):", *(new or alike[:1]), sep="\n", flush=True)
print(f"{sum(statuses.values())} studios, {len(failed)} with faults {failed}")
print(f"{time.process_time() - begun:.0f} s, slowest {slowest[0]:.1f} s (seed {slowest[1]})")
print(dict(sorted(statuses.items())))
print(f"{len(names)} kinds of finding came up; most often {names.most_common(5)}")
print(*(f"{times} x {fault}" for fault, times in faults.most_common()), sep="\n")
