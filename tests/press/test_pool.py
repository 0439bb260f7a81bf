"""A run that is stopped or killed takes its processes with it, and does not wait for sheets that are in the press."""

import os
import signal
import subprocess
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Callable, Collection
from multiprocessing import get_all_start_methods
from pathlib import Path
from signal import Signals

import pytest

from builder.library import LAYOUTS
from builder.model.document import Document, Folder
from builder.press import pool, pressing
from builder.press.engine.sheets import Engine
from builder.press.folder import FolderError
from builder.press.kept import PressedSheet

# Four sheets, each of which would keep its process busy for minutes.
LONG_RUN = """
import signal
import sys
import tempfile
from multiprocessing import active_children
from pathlib import Path
from builder.model.document import Document, Folder
from builder.press import pool
from builder.library import LAYOUTS

tempfile.tempdir = sys.argv[1]
# A run in the background of a shell would not hear it.
signal.signal(signal.SIGINT, signal.default_int_handler)
body = "<table>" + "<tr><td>Weigh it.</td></tr>" * 40000 + "</table>"
html = f'<!DOCTYPE html><html lang="en"><head><title>A</title></head><body>{body}</body></html>'
documents = [Document(Folder.PRINT, f"{number}.pdf", html, ("tokens.css",)) for number in range(4)]
pool.FEWEST_FOR_A_PROCESS, pool._cores = 2, lambda: 2
wait = pool.wait

def tell(presses):
    print(*(child.pid for child in active_children()), flush=True)
    return wait(presses)

pool.wait = tell
if __name__ == "__main__":
    with pool.presses(Path(sys.argv[1]), (LAYOUTS,)) as presses:
        list(presses.press(documents))
"""
DOCUMENTS = [Document(Folder.PRINT, f"{number}.pdf", str(number)) for number in range(5)]
NEEDS_FORK = pytest.mark.skipif("fork" not in get_all_start_methods(), reason="a process that is spawned knows of no patch")


def is_running(pid: int) -> bool:
    try:
        state = Path(f"/proc/{pid}/stat").read_text(encoding="utf-8").rpartition(")")[2].split()[0]
    except (OSError, IndexError):
        return False
    return state != "Z"


def are_gone(processes: Collection[int], within: int = 60) -> bool:
    """Tell whether processes end within so many seconds."""
    until = time.monotonic() + within
    while any(map(is_running, processes)) and time.monotonic() < until:
        time.sleep(0.05)
    return not any(map(is_running, processes))


@pytest.mark.long
@pytest.mark.parametrize("stopped_by", [signal.SIGKILL, signal.SIGINT])
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
    assert are_gone(workers)


Pressing = Callable[[Callable[[], object]], list[PressedSheet]]


@pytest.fixture
def pressed_by_two(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Pressing:
    """Return what presses some documents in two processes, and does something at one of them."""
    settings = {"START": "fork", "FEWEST_FOR_A_PROCESS": 2, "_cores": lambda: 2, "_held_by_memory": lambda: 2}
    monkeypatch.setattr(tempfile, "tempdir", str(tmp_path))
    monkeypatch.setattr(Engine, "__init__", lambda *_: None)  # nothing is set in type
    for name, value in settings.items():
        monkeypatch.setattr(pool, name, value)

    def pressed(at_one: Callable[[], object]) -> list[PressedSheet]:
        def press(_: Engine, document: Document) -> PressedSheet:
            if document.html == "3":
                at_one()
            return PressedSheet(document.html.encode(), os.getpid(), (), {})

        monkeypatch.setattr(Engine, "press", press)
        with pool.presses(tmp_path, (LAYOUTS,)) as presses:
            return [sheet for _, sheet in presses.press(DOCUMENTS)]

    return pressed


@NEEDS_FORK
def test_each_document_is_pressed_once(pressed_by_two: Pressing) -> None:
    assert sorted(sheet.pdf for sheet in pressed_by_two(lambda: None)) == [b"0", b"1", b"2", b"3", b"4"]


@NEEDS_FORK
@pytest.mark.parametrize("most", [1, 2])
def test_a_process_presses_no_more_than_its_share(pressed_by_two: Pressing, monkeypatch: pytest.MonkeyPatch, most: int) -> None:
    monkeypatch.setattr(pressing, "SHEETS_OF_ONE", most)
    sheets = pressed_by_two(lambda: None)
    assert sorted(sheet.pdf for sheet in sheets) == [b"0", b"1", b"2", b"3", b"4"]
    by_process = Counter(sheet.pages for sheet in sheets)
    assert max(by_process.values()) <= most and are_gone(by_process)


@NEEDS_FORK
def test_a_process_that_is_killed_after_a_change_is_a_sentence(pressed_by_two: Pressing, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(pressing, "SHEETS_OF_ONE", 1)
    with pytest.raises(FolderError, match="has ended before its sheet was done"):
        pressed_by_two(lambda: os.kill(os.getpid(), signal.SIGKILL))


@NEEDS_FORK
def test_nobody_is_left_when_a_run_is_stopped(pressed_by_two: Pressing, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def press(_: Engine, document: Document) -> PressedSheet:
        (tmp_path / f"{os.getpid()}.pid").touch()
        if document.html != "0":
            time.sleep(600)
        return PressedSheet(b"", 1, (), {})

    assert len(pressed_by_two(lambda: None)) == len(DOCUMENTS)
    monkeypatch.setattr(Engine, "press", press)
    with pytest.raises(KeyboardInterrupt), pool.presses(tmp_path, (LAYOUTS,)) as presses:
        for _ in presses.press(DOCUMENTS):
            raise KeyboardInterrupt
    processes = [int(path.stem) for path in tmp_path.glob("*.pid")]
    assert processes and are_gone(processes, within=10)


@NEEDS_FORK
def test_an_error_of_a_sheet_comes_as_it_was_and_says_of_which(pressed_by_two: Pressing) -> None:
    def refused() -> None:
        raise PermissionError(13, "not yours", "picture.png")

    with pytest.raises(PermissionError, match="not yours") as error:
        pressed_by_two(refused)
    assert error.value.filename == "picture.png" and error.value.__notes__[0].startswith("3.pdf: Traceback")


@NEEDS_FORK
def test_a_process_that_is_killed_is_a_sentence(pressed_by_two: Pressing) -> None:
    with pytest.raises(FolderError, match=r"has ended before its sheet was done\. .*no memory left.* publish again"):
        pressed_by_two(lambda: os.kill(os.getpid(), signal.SIGKILL))
