"""One studio is published to the same bytes wherever and however that is done."""

import os
import shutil
import subprocess
import sys
from importlib import resources
from pathlib import Path

import pytest

from builder.library import CONTENT
from tests.findings_studio import SOUND
from tests.test_pictures import photograph

PUBLISH = """
import sys
from builder.cli import main
from builder.press import pool
from tests.published import only_pages, sheets_pressed
pool._cores, pool.FEWEST_FOR_A_PROCESS = (lambda: int(sys.argv[1])), 1
with sheets_pressed() if int(sys.argv[1]) else only_pages():
    sys.exit(main(["publish", sys.argv[2], "--to", sys.argv[3], "--today", "2027-01-01"]))
"""
# A studio of which the site has every kind of file.
ON_THE_WEB = "public address: https://test.example\ntime zone: America/New_York\nlook: {portrait: {file: room.jpg, alt: The room}}\n"
OF_THE_SITE = {".html", ".css", ".ics", ".xml", ".json", ".svg", ".png", ".jpg", ".webp", ".avif"}


def published(home: Path, cores: int, **environment: str) -> dict[str, bytes]:
    """Publish the sound studio from a folder, with an empty cache; give every file of the output, the program's own notes too.

    `cores` is the number of processes that press sheets; with none, pages alone are published.
    """
    shutil.copytree(SOUND, home / "studio")
    with (home / "studio/studio.yaml").open("a", encoding="utf-8") as profile:
        profile.write(ON_THE_WEB)
    (home / "studio/room.jpg").write_bytes(photograph((1500, 900)))
    command = [sys.executable, "-c", PUBLISH, str(cores), str(home / "studio"), str(home / "made")]
    env = os.environ | {"XDG_CACHE_HOME": str(home / "cache"), "PYTHONPATH": str(CONTENT.parent)} | environment
    done = subprocess.run(command, cwd=home, env=env, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    return {path.relative_to(home / "made").as_posix(): path.read_bytes() for path in (home / "made").rglob("*") if path.is_file()}


@pytest.mark.parametrize("cores", [pytest.param((0, 0), id="pages"), pytest.param((1, 2), id="sheets too", marks=pytest.mark.long)])
def test_folder_time_zone_locale_hashes_and_processes_change_no_byte(tmp_path: Path, cores: tuple[int, int]) -> None:
    other = tmp_path / "another folder, with a longer name (Größe)"
    for folder in (tmp_path / "a", other):
        folder.mkdir()
    # A machine that has a zone wrong.
    (tmp_path / "zones/America").mkdir(parents=True)
    tokyo = resources.files("tzdata.zoneinfo") / "Asia/Tokyo"
    (tmp_path / "zones/America/New_York").write_bytes(tokyo.read_bytes())
    one = published(tmp_path / "a", cores[0], TZ="America/Los_Angeles", LC_ALL="C.UTF-8", PYTHONHASHSEED="1")
    two = published(
        other,
        cores[1],
        TZ="Pacific/Kiritimati",
        PYTHONTZPATH=str(tmp_path / "zones"),
        LC_ALL="de_DE.UTF-8",
        LANGUAGE="de",
        PYTHONHASHSEED="4711",
    )
    assert {Path(name).suffix for name in one if name.startswith("site/")} == OF_THE_SITE
    assert (sum(name.endswith(".pdf") for name in one) > 5) is (cores[0] > 0)
    assert sorted(one) == sorted(two)
    assert [name for name in one if one[name] != two[name]] == []
