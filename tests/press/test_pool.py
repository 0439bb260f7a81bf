"""A run that is stopped or killed takes its processes with it, and does not wait for sheets that are in the press."""

import os
import signal
import subprocess
import sys
import time
from pathlib import Path
from signal import Signals

import pytest

# Four sheets, each of which would keep its process busy for minutes.
LONG_RUN = """
import signal
import sys
from multiprocessing import active_children
from pathlib import Path
from builder.model.document import Document, Folder
from builder.press import pool
from builder.library import LAYOUTS

# A run in the background of a shell would not hear it.
signal.signal(signal.SIGINT, signal.default_int_handler)
body = "<table>" + "<tr><td>Weigh it.</td></tr>" * 40000 + "</table>"
html = f'<!DOCTYPE html><html lang="en"><head><title>A</title></head><body>{body}</body></html>'
documents = [Document(Folder.PRINT, f"{number}.pdf", html, ("tokens.css",)) for number in range(4)]
pool.FEWEST_FOR_A_PROCESS, pool._cores = 2, lambda: 2
submit, begun = pool.ProcessPoolExecutor.submit, []

def tell(self, *task):
    made = submit(self, *task)
    begun.append(made)
    if len(begun) == len(documents):
        print(*(child.pid for child in active_children()), flush=True)
    return made

pool.ProcessPoolExecutor.submit = tell
if __name__ == "__main__":
    list(pool.press_sheets(documents, Path(sys.argv[1]), (LAYOUTS,)))
"""


def is_running(pid: int) -> bool:
    try:
        state = Path(f"/proc/{pid}/stat").read_text(encoding="utf-8").rpartition(")")[2].split()[0]
    except (OSError, IndexError):
        return False
    return state != "Z"


@pytest.mark.parametrize("stopped_by", [signal.SIGINT, signal.SIGKILL])
def test_no_process_outlives_its_run(tmp_path: Path, stopped_by: Signals) -> None:
    script = tmp_path / "long_run.py"
    script.write_text(LONG_RUN, encoding="utf-8")
    command = [sys.executable, str(script), str(tmp_path)]
    home = Path(__file__).parents[2]
    path = {**os.environ, "PYTHONPATH": str(home)}
    with subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True, env=path, cwd=home) as run:
        assert run.stdout is not None
        workers = [int(pid) for pid in run.stdout.readline().split()]
        assert len(workers) == 2 and all(map(is_running, workers))
        run.send_signal(stopped_by)
        try:
            run.wait(60)
        finally:
            run.kill()
    until = time.monotonic() + 60
    while any(map(is_running, workers)) and time.monotonic() < until:
        time.sleep(0.05)
    assert not any(map(is_running, workers))
