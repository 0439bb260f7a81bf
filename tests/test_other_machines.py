"""Machines that lack what this one has: modules of Python itself, libraries, letters of a console, ends of lines.

A module is hidden from a process of its own, as where Python was built without it. What ships is in the cache of this run of tests already.
"""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from tests.findings_studio import SOUND
from tests.published import run

ROOT = Path(__file__).parents[1]
HIDING = """
import sys
hidden = sys.argv.pop(1).split(",")
class Hiding:
    def find_spec(self, name, path=None, target=None):
        if name in hidden:
            raise ModuleNotFoundError(f"No module named {name!r}", name=name)
sys.meta_path.insert(0, Hiding())
for name in hidden:
    sys.modules.pop(name, None)
from builder.cli import main
sys.exit(main())
"""
# On neither macOS nor Windows, or on one of them alone.
OF_SOME_SYSTEMS = "fcntl,resource,pwd,grp,termios,tty,readline,curses,syslog,crypt,_posixsubprocess,_posixshmem"


def _run(folder: Path, hidden: str, *arguments: object, **environment: str) -> subprocess.CompletedProcess[bytes]:
    told = {**os.environ, "PYTHONPATH": str(ROOT), **environment}
    command = [sys.executable, "-c", HIDING, hidden, *map(str, arguments)]
    return subprocess.run(command, env=told, cwd=folder, capture_output=True, check=False, timeout=300)


def _studio(folder: Path, ends: bytes = b"\n", mark: bytes = b"") -> Path:
    for file in sorted(path for path in SOUND.rglob("*") if path.is_file()):
        copy = folder / "studio" / file.relative_to(SOUND)
        copy.parent.mkdir(parents=True, exist_ok=True)
        data = file.read_bytes()
        copy.write_bytes(mark + data.replace(b"\n", ends) if file.suffix in (".yaml", ".md", ".csv") else data)
    return folder / "studio"


@pytest.mark.long
def test_what_only_some_systems_have_is_not_missed(tmp_path: Path) -> None:
    done = _run(tmp_path, OF_SOME_SYSTEMS, "check", _studio(tmp_path))
    assert (done.returncode, b"Nothing found" in done.stdout) == (0, True), done.stderr


@pytest.mark.parametrize("hidden", ["hmac", "unicodedata", pytest.param("yaml", marks=pytest.mark.long), "rich"])
def test_what_cannot_be_loaded_is_told_in_a_sentence(tmp_path: Path, hidden: str) -> None:
    done = _run(tmp_path, hidden, "check", _studio(tmp_path))
    told = done.stderr.decode()
    assert (done.returncode, len(told.splitlines())) == (3, 1), told
    assert f"`{hidden}`" in told
    assert "et up again" in told


@pytest.mark.long
def test_without_ssl_every_sheet_is_a_page(tmp_path: Path) -> None:
    done = _run(tmp_path, "ssl,_ssl", "publish", _studio(tmp_path), "--to", tmp_path / "out", "--today", "2027-01-01")
    assert done.returncode == 0, done.stderr
    assert b"without `ssl`" in done.stdout + done.stderr
    sheets = list((tmp_path / "out/print").rglob("*.html"))
    assert sheets and not list((tmp_path / "out").rglob("*.pdf"))


CONSOLES = [
    pytest.param({"PYTHONIOENCODING": "cp1252"}, id="cp1252"),
    pytest.param({"LC_ALL": "C", "PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0"}, id="C"),
]


@pytest.mark.long
@pytest.mark.parametrize("console", CONSOLES)
def test_a_console_without_all_letters_is_told_what_it_can_show(tmp_path: Path, console: dict[str, str]) -> None:
    studio = _studio(tmp_path)
    recipe = studio / "recipes/plain-lotion.yaml"
    recipe.write_bytes(recipe.read_bytes().replace(b"sunflower oil", "sunflöwer→ oil 漢".encode()))
    done = _run(tmp_path, "nothing", "check", studio, **console)
    assert (done.returncode, b"Traceback" in done.stderr) == (1, False), done.stderr
    assert b"unknown-ingredient" in done.stderr
    listed = _run(tmp_path, "nothing", "list", "ingredients", **console)
    assert (listed.returncode, listed.stderr) == (0, b"")


@pytest.mark.parametrize(
    ("ends", "mark"), [(b"\r\n", b""), (b"\r\n", b"\xef\xbb\xbf"), (b"\r", b"")], ids=["CRLF", "CRLF and a mark", "CR"]
)
def test_other_ends_of_lines_read_the_same(tmp_path: Path, ends: bytes, mark: bytes) -> None:
    done = run("check", _studio(tmp_path, ends, mark))
    assert (done.status, "Nothing found" in done.out) == (0, True), done.err
