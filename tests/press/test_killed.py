"""A publication that is killed at any moment, with the processes that press for it, loses nothing, and the next one works.

By hand, 200 times: KILLS=200 python -m pytest -n 0 --long tests/press/test_killed.py
"""

import os
import random
import signal
import sys
import tempfile
import time
from pathlib import Path

import pytest

from builder.library import LAYOUTS
from builder.model.document import Document, Folder, Publication
from builder.press import pool, press_publication

KILLS = int(os.environ.get("KILLS", "10"))
HTML = '<!DOCTYPE html><html lang="en"><head><title>A</title></head><body class="a4" data-title="A"><h1>{}</h1></body></html>'


def publish(home: Path, number: int) -> None:
    page = Document(Folder.SITE, "page.html", f"{number}", ())
    sheets = [Document(Folder.PRINT, f"{name}.pdf", HTML.format(f"{name} {number}"), ("tokens.css", "paper.css")) for name in "ab"]
    press_publication(
        Publication((page, *sheets), ()), studio_folder=home, layout_folders=(LAYOUTS,), output=home / "output", progress=lambda _: None
    )


def published(home: Path) -> dict[str, bytes]:
    """Return what lies in the output, by its name; of the notes of the program nothing."""
    folder = home / "output"
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file() and path.name[0] != "."}


@pytest.mark.long
@pytest.mark.skipif(sys.platform == "win32", reason="no fork")
def test_killed_at_any_moment(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(pool, "_cores", lambda: 2)
    monkeypatch.setattr(pool, "FEWEST_FOR_A_PROCESS", 1)
    aside = tmp_path / "aside"
    aside.mkdir()
    monkeypatch.setattr(tempfile, "tempdir", str(aside))
    made = []
    for number in range(2):
        begun = time.monotonic()
        publish(tmp_path, number)
        made.append(published(tmp_path))
    takes = time.monotonic() - begun
    (tmp_path / "output" / "site" / "mine.txt").write_bytes(b"mine")
    chance, last = random.Random(KILLS), 1
    for _ in range(KILLS):
        child = os.fork()
        if not child:
            publish(tmp_path, 1 - last)
            os._exit(0)
        time.sleep(chance.uniform(0, 1.2 * takes))
        os.kill(child, signal.SIGKILL)
        os.waitpid(child, 0)
        if (tmp_path / "output").exists():
            there = published(tmp_path)
            there.pop("site/mine.txt", None)
            assert there in made, "a mixture of two publications"
        else:
            assert (tmp_path / ".output.work" / "old" / "site" / "page.html").is_file()
        last = chance.randrange(2)
        publish(tmp_path, last)
        assert published(tmp_path) == made[last] | {"site/mine.txt": b"mine"}
        # The lock stays, so that no second one is made beside it.
        assert {path.name for path in tmp_path.iterdir()} == {"output", ".output.lock", "aside"}
        assert not list(aside.iterdir()), "what is put aside goes with the run"
