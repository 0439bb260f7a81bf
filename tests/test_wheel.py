"""The wheel holds content and layouts, and works with no checkout near it."""

import subprocess
import sys
import zipfile
from pathlib import Path

import pytest
from hatchling.builders.wheel import WheelBuilder

ROOT = Path(__file__).parent.parent


@pytest.fixture(scope="module")
def unpacked(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("wheel")
    wheel = next(iter(WheelBuilder(str(ROOT)).build(directory=str(folder), versions=["standard"])))
    with zipfile.ZipFile(wheel) as archive:
        archive.extractall(folder / "site")
    return folder / "site"


@pytest.mark.long
def test_the_wheel_holds_every_file_of_the_stock(unpacked: Path) -> None:
    for name in ("content", "layouts"):
        ours = {path.relative_to(ROOT / name) for path in (ROOT / name).rglob("*") if path.is_file()}
        packed = {
            path.relative_to(unpacked / "builder/library" / name)
            for path in (unpacked / "builder/library" / name).rglob("*")
            if path.is_file()
        }
        assert packed == ours


@pytest.mark.long
def test_the_command_runs_from_the_wheel_in_any_folder(unpacked: Path, tmp_path: Path) -> None:
    done = subprocess.run(
        [sys.executable, "-m", "builder", "card", "Olive oil"],
        cwd=tmp_path,
        env={"PYTHONPATH": str(unpacked), "PATH": "/usr/bin:/bin", "XDG_CACHE_HOME": str(tmp_path / "cache")},
        capture_output=True,
        text=True,
        check=True,
    )
    assert "saponification" in done.stdout
