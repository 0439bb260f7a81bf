"""One studio is published to the same bytes wherever and however that is done."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from builder.library import CONTENT
from tests.findings_studio import SOUND

PUBLISH = """
import sys
from builder.cli import main
from builder.press import pool
from tests.published import sheets_pressed
pool._cores, pool.FEWEST_FOR_A_PROCESS = (lambda: int(sys.argv[1])), 1
with sheets_pressed():
    sys.exit(main(["publish", sys.argv[2], "--to", sys.argv[3], "--today", "2027-01-01"]))
"""


def published(home: Path, cores: int, **environment: str) -> dict[str, bytes]:
    """Publish the sound studio from a folder, with an empty cache; give every file of the output, the program's own notes too."""
    shutil.copytree(SOUND, home / "studio")
    command = [sys.executable, "-c", PUBLISH, str(cores), str(home / "studio"), str(home / "made")]
    env = os.environ | {"XDG_CACHE_HOME": str(home / "cache"), "PYTHONPATH": str(CONTENT.parent)} | environment
    done = subprocess.run(command, cwd=home, env=env, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    return {path.relative_to(home / "made").as_posix(): path.read_bytes() for path in (home / "made").rglob("*") if path.is_file()}


@pytest.mark.long
def test_folder_time_zone_locale_hashes_and_processes_change_no_byte(tmp_path: Path) -> None:
    other = tmp_path / "another folder, with a longer name (Größe)"
    for folder in (tmp_path / "a", other):
        folder.mkdir()
    one = published(tmp_path / "a", 1, TZ="America/Los_Angeles", LC_ALL="C.UTF-8", PYTHONHASHSEED="1")
    two = published(other, 2, TZ="Pacific/Kiritimati", LC_ALL="de_DE.UTF-8", LANGUAGE="de", PYTHONHASHSEED="4711")
    assert sum(name.endswith(".pdf") for name in one) > 5
    assert sorted(one) == sorted(two)
    assert [name for name in one if one[name] != two[name]] == []
