"""What ships is read once for each version, and taken from the user's cache afterwards: the same values, or it is read anew."""

import errno
import os
import pickle
import pwd
import shutil
import stat
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from concurrent.futures import ThreadPoolExecutor
from dataclasses import fields, is_dataclass
from functools import cache
from pathlib import Path

import pytest
from _pytest.mark.structures import ParameterSet

from builder import sums as files_summed
from builder.cache import compiled, find, folder, keep, sum_of, sums
from builder.library import CONTENT
from builder.model.remembered import forget
from builder.read import library
from builder.read.drawn_on import Shipped
from builder.read.studios import read_studio
from builder.words.within import Spelled
from tests.making import sure
from tests.test_usual import STUDIO, UNSOUND, changed, findings_of
from tests.whole_run import LONG

ROOT = Path(__file__).parents[2]
READ = library._read_shipped


@cache
def anew() -> Shipped:
    return READ(CONTENT)


@pytest.fixture
def reads(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[list[Path]]:
    """Begin with an empty cache; give the list of all that is read anew."""
    made: list[Path] = []

    def read(content: Path) -> Shipped:
        made.append(content)
        return anew() if content == CONTENT else READ(content)

    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    monkeypatch.setattr(library, "_read_shipped", read)
    monkeypatch.setattr(files_summed, "_BEGUN", time.time() + 1000)
    another_process()
    yield made
    another_process()


def another_process() -> None:
    """Forget what this process knows, as another one would not know it."""
    forget()
    sums._sum_of_code.cache_clear()
    sums._sum_of_what_ships.cache_clear()


def shipped(content: Path = CONTENT) -> Shipped:
    another_process()
    return library._shipped(content)


def kept_file() -> Path:
    return sure(folder.cache_folder()) / sure(sum_of(CONTENT))


def assert_same(
    one: object,
    other: object,
    met: dict[int, int],
) -> None:
    """Hold that two values are alike down to their places, and that what is one object on one side is one on the other."""
    assert type(one) is type(other)
    if is_dataclass(one):
        assert met.setdefault(id(one), id(other)) == id(other)
        for field in fields(one):
            assert_same(getattr(one, field.name), getattr(other, field.name), met)
    elif isinstance(one, dict) and isinstance(other, dict):
        assert list(one) == list(other)
        for key in one:
            assert_same(one[key], other[key], met)
    elif isinstance(one, (tuple, list)) and isinstance(other, (tuple, list)):
        assert len(one) == len(other)
        for mine, yours in zip(one, other, strict=True):
            assert_same(mine, yours, met)
    else:
        assert one == other
        assert not (isinstance(one, Spelled) and isinstance(other, Spelled)) or one.within == other.within


@pytest.mark.long
def test_the_library_of_the_cache_is_the_one_that_was_read(reads: list[Path]) -> None:
    shipped()
    assert reads == [CONTENT]
    found = shipped()
    assert reads == [CONTENT] and found is not anew()
    assert found == anew()
    met: dict[int, int] = {}
    assert_same(anew(), found, met)
    assert len(met) > 5000


@pytest.mark.long
def test_studios_are_the_same_and_have_the_same_findings_with_it(reads: list[Path], tmp_path: Path) -> None:
    studios = [STUDIO, ROOT / "site_example"] if LONG in os.environ else []
    for number, case in enumerate(UNSOUND[::40]):
        changed(case, tmp_path / f"unsound-{number}")
        studios.append(tmp_path / f"unsound-{number}")
    shipped()
    for studio in studios:
        forget()
        from_cache, said = read_studio(studio, CONTENT), findings_of(studio)
        assert reads == [CONTENT]
        with pytest.MonkeyPatch.context() as patched:
            patched.setattr(library, "_shipped", lambda _: anew())
            assert from_cache == read_studio(studio, CONTENT)
            assert said == findings_of(studio)


@pytest.mark.long
def test_what_is_wrong_in_it_is_found_again(reads: list[Path], tmp_path: Path) -> None:
    content = tmp_path / "content"
    shutil.copytree(CONTENT, content)
    card = content / "ingredients" / "olive-oil.yaml"
    card.write_text(card.read_text(encoding="utf-8") + "\nunheard of: yes\n", encoding="utf-8")
    first, second = shipped(content), shipped(content)
    assert reads == [content] and first is not second
    assert [(one.place, one.wrong) for one in first.findings] == [(one.place, one.wrong) for one in second.findings] != []
    assert first == second


@pytest.mark.long
def test_one_figure_changed_shows_at_once(reads: list[Path], tmp_path: Path) -> None:
    content = tmp_path / "content"
    shutil.copytree(CONTENT, content)
    file = content / "constants.yaml"
    before, was = shipped(content), file.stat()
    text = file.read_text(encoding="utf-8")
    value = next(line for line in text.splitlines() if line.strip().startswith("value:"))
    digit = value[-1] if value[-1].isdigit() else value.split()[1][-1]
    place = text.index(value) + value.rindex(digit)
    file.write_text(text[:place] + str((int(digit) + 1) % 10) + text[place + 1 :], encoding="utf-8")
    os.utime(file, ns=(was.st_atime_ns, was.st_mtime_ns))
    assert (file.stat().st_size, file.stat().st_mtime_ns) == (was.st_size, was.st_mtime_ns)
    assert library._shipped(content).rulebook.constants != before.rulebook.constants
    assert shipped(content).rulebook.constants != before.rulebook.constants
    assert reads == [content, content]


class Marked:
    """What runs a command where it is loaded."""

    def __init__(self, path: Path) -> None:
        self.path = path

    def __reduce__(self) -> tuple[Callable[..., object], tuple[Path, ...]]:
        return Path.touch, (self.path,)


def with_long(case: object) -> ParameterSet:
    return pytest.param(case, marks=pytest.mark.long)


def cut(file: Path) -> None:
    file.write_bytes(file.read_bytes()[:-1])


def emptied(file: Path) -> None:
    file.write_bytes(b"")


def one_bit(file: Path) -> None:
    data = bytearray(file.read_bytes())
    data[len(data) // 2] ^= 1
    file.write_bytes(data)


def foreign(file: Path) -> None:
    file.write_bytes(bytes(32) + pickle.dumps(Marked(file.parent / "has-run")))


def of_another_sum(file: Path) -> None:
    other = file.with_name("0" * 64)
    keep(other.name, anew())
    other.replace(file)


def of_another_kind(file: Path) -> None:
    file.unlink()
    keep(file.name, {"not": "a library"})


def a_folder(file: Path) -> None:
    file.unlink()
    file.mkdir()


def a_link(file: Path) -> None:
    file.rename(file.parents[1] / "elsewhere")
    file.symlink_to(file.parents[1] / "elsewhere")


def a_pipe(file: Path) -> None:
    file.unlink()
    os.mkfifo(file, 0o600)


def open_to_all(file: Path) -> None:
    file.chmod(0o666)


def in_an_open_folder(file: Path) -> None:
    file.parent.chmod(0o755)


def in_a_linked_folder(file: Path) -> None:
    file.parent.rename(file.parents[1] / "elsewhere")
    file.parent.symlink_to(file.parents[1] / "elsewhere")


def with_a_file_for_a_folder(file: Path) -> None:
    shutil.rmtree(file.parent)
    file.parent.write_text("", encoding="utf-8")


# By default what might pass for sound, or was put there by somebody else.
SPOILED = [one_bit, foreign, of_another_sum, open_to_all]
SPOILED_OTHERWISE = [
    cut, emptied, of_another_kind, a_folder, a_link, a_pipe, in_an_open_folder, in_a_linked_folder, with_a_file_for_a_folder,
]  # fmt: skip


@pytest.mark.parametrize("spoil", [*SPOILED, *map(with_long, SPOILED_OTHERWISE)], ids=lambda spoil: spoil.__name__)
def test_what_cannot_be_trusted_is_read_anew(spoil: Callable[..., object], reads: list[Path]) -> None:
    shipped()
    file = kept_file()
    assert file.is_file() and stat.S_IMODE(file.parent.stat().st_mode) == 0o700
    spoil(file)
    assert shipped() == anew()
    assert reads == [CONTENT, CONTENT] and not (file.parent / "has-run").exists()


def no_home(monkeypatch: pytest.MonkeyPatch) -> None:
    def unknown(number: int) -> None:
        raise KeyError(number)

    monkeypatch.delenv("XDG_CACHE_HOME")
    monkeypatch.delenv("HOME")
    monkeypatch.setattr(pwd, "getpwuid", unknown)
    assert folder.cache_folder() is None


def a_home_that_is_no_folder(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("XDG_CACHE_HOME")
    monkeypatch.setenv("HOME", "/dev/null")


def a_home_that_may_not_be_written(monkeypatch: pytest.MonkeyPatch) -> None:
    def refused(*_: Path, **__: int) -> None:
        raise OSError(errno.EROFS, "Read-only file system")

    monkeypatch.setattr(Path, "mkdir", refused)


def a_full_disk(monkeypatch: pytest.MonkeyPatch) -> None:
    def refused(*_: bytes | int | str) -> None:
        raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr(compiled, "_write", refused)


def a_broken_move(monkeypatch: pytest.MonkeyPatch) -> None:
    def refused(*_: str, **__: int) -> None:
        raise OSError(errno.EIO, "Input/output error")

    monkeypatch.setattr(os, "rename", refused)


def somebody_elses(monkeypatch: pytest.MonkeyPatch) -> None:
    number = os.geteuid()
    shipped()
    monkeypatch.setattr(os, "geteuid", lambda: number + 1)


def a_system_that_does_not_tell(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delattr(os, "geteuid")


def a_path_with_a_zero(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(folder, "cache_folder", lambda: Path("/tmp/\0"))


def code_that_has_just_changed(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(files_summed, "_BEGUN", (ROOT / "builder" / "units.py").stat().st_ctime)


UNWRITABLE = [no_home, a_full_disk, code_that_has_just_changed]
UNWRITABLE_OTHERWISE = [
    a_home_that_is_no_folder, a_home_that_may_not_be_written, a_broken_move, somebody_elses, a_system_that_does_not_tell,
    a_path_with_a_zero,
]  # fmt: skip


@pytest.mark.parametrize("hinder", [*UNWRITABLE, *map(with_long, UNWRITABLE_OTHERWISE)], ids=lambda hinder: hinder.__name__)
def test_where_nothing_can_be_kept_it_is_read_each_time(
    hinder: Callable[[pytest.MonkeyPatch], object], reads: list[Path], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    hinder(monkeypatch)
    reads.clear()
    assert shipped() == anew() and shipped() == anew()
    assert reads == [CONTENT, CONTENT]
    assert not list(tmp_path.rglob("*.new"))


def test_code_that_has_just_changed_is_read_for_once_in_its_process(reads: list[Path], monkeypatch: pytest.MonkeyPatch) -> None:
    code_that_has_just_changed(monkeypatch)
    another_process()
    reads.clear()
    assert library._shipped(CONTENT) is library._shipped(CONTENT)
    assert reads == [CONTENT]


def test_root_makes_no_folder_in_the_home_of_another(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    owner = tmp_path.stat().st_uid
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    monkeypatch.setattr(os, "geteuid", lambda: 0)
    if owner == 0:
        os.chown(tmp_path, 1234, -1)
    keep("1" * 64, "anything")
    assert not (tmp_path / "cache").exists()


@pytest.mark.long
def test_two_that_write_at_once_leave_a_whole_one(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path))
    key, value = "a" * 64, tuple(range(50_000))

    def work(number: int) -> object:
        if number % 2:
            keep(key, value)
        return find(key)

    with ThreadPoolExecutor(8) as pool:
        found = list(pool.map(work, range(120)))
    assert {type(one) for one in found} <= {tuple, type(None)} and all(one in (None, value) for one in found)
    assert find(key) == value and [path.name for path in (tmp_path / folder.NAME).iterdir()] == [key]


def test_old_versions_do_not_gather(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path))
    keep("0" * 64, 0)
    (tmp_path / folder.NAME / "left.new").write_text("by a run that was killed", encoding="utf-8")
    for number in range(1, compiled.MOST[""] + 4):
        keep(f"{number:064}", number)
    left = {path.name for path in (tmp_path / folder.NAME).iterdir()}
    assert left == {f"{number:064}" for number in range(4, compiled.MOST[""] + 4)}


@pytest.mark.usefixtures("reads")
@pytest.mark.parametrize("name", ["read/lye/new.py", *map(with_long, ("words/fold.py", "units.py", "model/place.py"))])
def test_other_code_is_another_version(name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    package = tmp_path / "builder"
    shutil.copytree(ROOT / "builder", package, ignore=shutil.ignore_patterns("__pycache__"))
    monkeypatch.setattr(sums, "PACKAGE", package)
    before = sum_of(CONTENT)
    with (package / name).open("a", encoding="utf-8") as file:
        file.write("\n")
    sums._sum_of_code.cache_clear()
    assert before and sum_of(CONTENT) not in (None, before)


@pytest.mark.usefixtures("reads")
def test_a_renamed_file_is_another_version_and_a_link_has_none(tmp_path: Path) -> None:
    (tmp_path / "one").write_text("1", encoding="utf-8")
    before = sum_of(tmp_path)
    (tmp_path / "one").rename(tmp_path / "two")
    assert before and sum_of(tmp_path) not in (None, before)
    (tmp_path / "three").symlink_to(tmp_path / "two")
    assert sum_of(tmp_path) is None and sum_of(tmp_path / "none") is None


@pytest.mark.long
def test_all_code_that_reads_is_summed() -> None:
    ask = "import sys, builder.read.library_files; print(*(name for name in sys.modules if name.partition('.')[0] == 'builder'))"
    done = subprocess.run([sys.executable, "-c", ask], capture_output=True, text=True, check=True, cwd=ROOT)
    rooms = {[*name.split("."), "__init__.py"][1].removesuffix(".py") for name in done.stdout.split()}
    assert rooms <= {name.removesuffix(".py") for name in sums.READS}


def test_the_tests_do_not_write_to_the_cache_of_the_user() -> None:
    assert not sure(folder.cache_folder()).is_relative_to(Path.home())


@pytest.mark.parametrize(("system", "stated", "path"), [
    ("linux", "", "/home/x/.cache/stillroom"),
    ("linux", "not/absolute", "/home/x/.cache/stillroom"),
    ("linux", "/var/kept", "/var/kept/stillroom"),
    ("darwin", "", "/home/x/Library/Caches/stillroom"),
])  # fmt: skip
def test_it_lies_where_the_system_has_it(system: str, stated: str, path: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """Source: XDG Base Directory Specification 0.8; File System Programming Guide (Apple), "Library directories"."""
    monkeypatch.setenv("HOME", "/home/x")
    monkeypatch.setenv("XDG_CACHE_HOME", stated)
    monkeypatch.setattr(sys, "platform", system)
    assert folder.cache_folder() == Path(path)
