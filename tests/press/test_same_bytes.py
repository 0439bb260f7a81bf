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
from tests.published import only_pages, run
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


def begun(home: Path) -> Path:
    """Write the sound studio with a picture and all that the site needs, and give its folder."""
    shutil.copytree(SOUND, home / "studio")
    with (home / "studio/studio.yaml").open("a", encoding="utf-8") as profile:
        profile.write(ON_THE_WEB)
    (home / "studio/room.jpg").write_bytes(photograph((1500, 900)))
    return home / "studio"


def written(home: Path) -> dict[str, bytes]:
    """Return every file of the output, the program's own notes too."""
    return {path.relative_to(home / "made").as_posix(): path.read_bytes() for path in (home / "made").rglob("*") if path.is_file()}


def published_elsewhere(home: Path, cores: int, **environment: str) -> dict[str, bytes]:
    """Publish from a folder, with an empty cache, in a process of its own.

    `cores` is the number of processes that press sheets; with none, pages alone are published.
    """
    command = [sys.executable, "-c", PUBLISH, str(cores), str(begun(home)), str(home / "made")]
    env = os.environ | {"XDG_CACHE_HOME": str(home / "cache"), "PYTHONPATH": str(CONTENT.parent)} | environment
    done = subprocess.run(command, cwd=home, env=env, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    return written(home)


def published_here(home: Path) -> dict[str, bytes]:
    """Publish pages alone in this process, with its own zone, locale and hashes, and with whatever it knows already."""
    with only_pages():
        assert run("publish", begun(home), "--to", home / "made", "--today", "2027-01-01").status == 0
    return written(home)


ELSEWHERE = {"TZ": "Pacific/Kiritimati", "LC_ALL": "de_DE.UTF-8", "LANGUAGE": "de", "PYTHONHASHSEED": "4711"}


def folders(tmp_path: Path) -> tuple[Path, Path, Path]:
    """Make two folders, and one of time zones of a machine that has a zone wrong."""
    one, other, zones = tmp_path / "a", tmp_path / "another folder, with a longer name (Größe)", tmp_path / "zones"
    for folder in (one, other, zones / "America"):
        folder.mkdir(parents=True)
    tokyo = resources.files("tzdata.zoneinfo") / "Asia/Tokyo"
    (zones / "America/New_York").write_bytes(tokyo.read_bytes())
    return one, other, zones


def assert_same(one: dict[str, bytes], two: dict[str, bytes]) -> None:
    assert {Path(name).suffix for name in one if name.startswith("site/")} == OF_THE_SITE
    assert sorted(one) == sorted(two)
    assert [name for name in one if one[name] != two[name]] == []


@pytest.mark.long
def test_folder_time_zone_locale_hashes_and_what_is_known_change_no_byte_of_a_page(tmp_path: Path) -> None:
    here, elsewhere, zones = folders(tmp_path)
    one = published_here(here)
    assert not any(name.endswith(".pdf") for name in one)
    assert_same(one, published_elsewhere(elsewhere, 0, PYTHONTZPATH=str(zones), **ELSEWHERE))


@pytest.mark.long
def test_folder_time_zone_locale_hashes_and_processes_change_no_byte(tmp_path: Path) -> None:
    here, elsewhere, zones = folders(tmp_path)
    one = published_elsewhere(here, 1, TZ="America/Los_Angeles", LC_ALL="C.UTF-8", PYTHONHASHSEED="1")
    assert sum(name.endswith(".pdf") for name in one) > 5
    assert_same(one, published_elsewhere(elsewhere, 2, PYTHONTZPATH=str(zones), **ELSEWHERE))
