"""The output folder changes as a whole, or not at all; what somebody else has put into it stays."""

import os
import shutil
import sys
import threading
from collections.abc import Iterator
from pathlib import Path

import pytest

from builder.press.folder import MARK, FolderError, replaced
from tests.whole_run import LONG


def write(output: Path, text: str, name: str = "page.html") -> None:
    with replaced(output) as building:
        (building.folder / "site").mkdir()
        (building.folder / "site" / name).write_text(text, encoding="utf-8")
        (building.folder / name).write_text(text, encoding="utf-8")


def names(folder: Path) -> list[str]:
    """Return what is in a folder, without the lock, which stays so that no second one is made beside it."""
    return sorted(path.name for path in folder.iterdir() if path.suffix != ".lock")


def test_a_new_folder_is_made_with_its_parents(tmp_path: Path) -> None:
    write(tmp_path / "a" / "output", "one")
    assert names(tmp_path / "a") == ["output"]
    assert names(tmp_path / "a" / "output") == [MARK, "page.html", "site"]


def test_an_empty_folder_may_be_taken(tmp_path: Path) -> None:
    (tmp_path / "output").mkdir()
    write(tmp_path / "output", "one")
    assert (tmp_path / "output" / "page.html").read_text(encoding="utf-8") == "one"


def test_what_was_published_before_goes_and_what_somebody_else_put_there_stays(tmp_path: Path) -> None:
    output = tmp_path / "output"
    write(output, "one", "old.html")
    (output / "CNAME").write_text("mine", encoding="utf-8")
    (output / "site" / ".git" / "objects").mkdir(parents=True)
    (output / "site" / ".git" / "HEAD").write_text("mine", encoding="utf-8")
    write(output, "two")
    write(output, "three")
    assert names(output) == [MARK, "CNAME", "page.html", "site"]
    assert names(output / "site") == [".git", "page.html"]
    assert (output / "site" / ".git" / "HEAD").read_text(encoding="utf-8") == "mine"
    assert (output / "page.html").read_text(encoding="utf-8") == "three"
    assert names(tmp_path) == ["output"]


def test_a_file_of_somebody_else_in_the_way_is_told_and_stays(tmp_path: Path) -> None:
    output = tmp_path / "output"
    write(output, "one", "old.html")
    (output / "page.html").write_text("mine", encoding="utf-8")
    with pytest.raises(FolderError, match=r"page\.html was not written by this program"):
        write(output, "two")
    assert (output / "page.html").read_text(encoding="utf-8") == "mine"
    assert (output / "old.html").read_text(encoding="utf-8") == "one"


def test_an_error_leaves_the_old_output_as_it_was(tmp_path: Path) -> None:
    output = tmp_path / "output"
    write(output, "one")
    with pytest.raises(ZeroDivisionError), replaced(output) as building:
        (building.folder / "page.html").write_text("half", encoding="utf-8")
        raise ZeroDivisionError
    assert (output / "page.html").read_text(encoding="utf-8") == "one"
    assert names(tmp_path) == ["output"]


def test_a_folder_with_other_files_is_never_touched(tmp_path: Path) -> None:
    (tmp_path / "letters").mkdir()
    (tmp_path / "letters" / "letter.txt").write_text("dear", encoding="utf-8")
    with pytest.raises(FolderError) as error, replaced(tmp_path / "letters"):
        pass
    assert "were not written by this program" in error.value.wrong
    assert error.value.remedy == "Choose an empty folder or a new name."
    assert names(tmp_path / "letters") == ["letter.txt"]


def test_a_file_cannot_become_the_output(tmp_path: Path) -> None:
    (tmp_path / "output").write_text("a file", encoding="utf-8")
    with pytest.raises(FolderError, match="is a file"), replaced(tmp_path / "output"):
        pass


# What a run does to the disk, each of which the audit hooks of Python tell before it is done.
TOUCHES = {"open", "os.rename", "os.mkdir", "os.rmdir", "os.remove", "os.chmod", "os.scandir", "os.listdir"}


def cut_short(output: Path, number: int) -> bool:
    """Write a second output in a process that ends at once before its so-manyth touch of the disk; say whether it came so far."""
    child = os.fork()
    if child:
        return os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]) == 9
    left = [number]

    def count(event: str, arguments: tuple[object, ...]) -> None:
        if event in TOUCHES and str(output.parent) in str(arguments[0]):
            left[0] -= 1
            if left[0] < 0:
                os._exit(9)

    sys.addaudithook(count)
    write(output, "two")
    os._exit(0)


@pytest.mark.long(sample=True)
def test_a_run_that_is_cut_short_anywhere_loses_nothing(tmp_path: Path) -> None:
    """Without `--long` at each third touch of the disk."""
    number, seen = 0, set()
    while True:
        home = tmp_path / str(number)
        output = home / "output"
        write(output, "one")
        (output / "site" / "mine.txt").write_text("mine", encoding="utf-8")
        if not cut_short(output, number):
            break
        with pytest.raises(ZeroDivisionError), replaced(output):
            raise ZeroDivisionError
        texts = {(output / name).read_text(encoding="utf-8") for name in ("page.html", "site/page.html")}
        assert len(texts) == 1 and names(output) == [MARK, "page.html", "site"], number
        assert (output / "site" / "mine.txt").read_text(encoding="utf-8") == "mine", number
        assert names(home) == ["output"], number
        seen |= texts
        write(output, "three")
        number += 1 if LONG in os.environ else 3
    assert number > 25 and seen == {"one", "two"}


def test_a_process_of_a_killed_run_that_still_writes_is_in_nobodys_way(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    with replaced(tmp_path / "output") as building:
        scratch = building.scratch
    scratch.mkdir(parents=True)
    remove = shutil.rmtree

    def removed_while_it_writes(folder: Path, *, ignore_errors: bool) -> None:
        remove(folder, ignore_errors=ignore_errors)
        scratch.mkdir(parents=True)

    with monkeypatch.context() as patch:
        patch.setattr(shutil, "rmtree", removed_while_it_writes)
        write(tmp_path / "output", "one")
    assert (tmp_path / "output" / "page.html").read_text(encoding="utf-8") == "one"
    write(tmp_path / "output", "two")
    assert names(tmp_path) == ["output"]


def test_a_second_run_waits_for_the_first(tmp_path: Path) -> None:
    output, begun, waits, order = tmp_path / "output", threading.Event(), threading.Event(), []

    def second() -> None:
        begun.wait()
        with replaced(output, waits.set) as building:
            order.append("second")
            (building.folder / "page.html").write_text("two", encoding="utf-8")

    other = threading.Thread(target=second)
    other.start()
    with replaced(output) as building:
        begun.set()
        assert waits.wait(20)
        order.append("first")
        (building.folder / "page.html").write_text("one", encoding="utf-8")
    other.join(20)
    assert order == ["first", "second"]
    assert (output / "page.html").read_text(encoding="utf-8") == "two"
    assert names(tmp_path) == ["output"]


def test_a_disk_that_is_full_is_a_sentence_and_the_old_output_stays(tmp_path: Path) -> None:
    output = tmp_path / "output"
    write(output, "one")
    with pytest.raises(FolderError, match=r"No space left.*page\.html.*old output is as it was"), replaced(output) as building:
        raise OSError(28, "No space left on device", str(building.folder / "page.html"))
    assert (output / "page.html").read_text(encoding="utf-8") == "one"
    assert names(tmp_path) == ["output"]


def test_a_swap_that_fails_puts_the_old_output_back(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    output = tmp_path / "output"
    write(output, "one")
    rename = type(output).rename

    def fail(self: Path, target: Path) -> Path:
        if self.name == "new":
            raise PermissionError(13, "a viewer holds it open", str(self))
        return rename(self, target)

    monkeypatch.setattr(type(output), "rename", fail)
    with pytest.raises(FolderError, match="a viewer holds it open"):
        write(output, "two")
    assert (output / "page.html").read_text(encoding="utf-8") == "one"


def test_what_cannot_be_moved_into_the_new_output_is_never_removed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    output = tmp_path / "output"
    write(output, "one")
    (output / "mine.txt").write_text("mine", encoding="utf-8")
    rename = type(output).rename

    def fail(self: Path, target: Path) -> Path:
        if self.name == "mine.txt":
            raise PermissionError(13, "not yours", str(self))
        return rename(self, target)

    with monkeypatch.context() as patch:
        patch.setattr(type(output), "rename", fail)
        for _ in range(2):
            with pytest.raises(FolderError, match=r"mine\.txt"):
                write(output, "two")
    assert (tmp_path / ".output.work" / "old" / "mine.txt").read_text(encoding="utf-8") == "mine"
    write(output, "three")
    assert (output / "mine.txt").read_text(encoding="utf-8") == "mine"
    assert (output / "page.html").read_text(encoding="utf-8") == "three"
    assert names(tmp_path) == ["output"]


def test_a_whole_disk_and_the_top_of_one_are_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    with pytest.raises(FolderError, match="is a whole disk"), replaced(Path("/")):
        pass
    monkeypatch.setattr(Path, "is_mount", lambda self: self == tmp_path / "output")
    with pytest.raises(FolderError, match="top of a disk"), replaced(tmp_path / "output"):
        pass


def without_rights(output: Path) -> str:
    """Write an output as somebody who is not the master of this machine; give what was said."""
    reader, writer = os.pipe()
    child = os.fork()
    if not child:
        if os.geteuid() == 0:
            os.setgroups([])
            os.setgid(65534)
            os.setuid(65534)
        said = b""
        try:
            with replaced(output) as building:
                (building.folder / "page.html").write_text("two", encoding="utf-8")
        except FolderError as error:
            said = str(error).encode()
        except BaseException as error:
            said = repr(error).encode()
        os.write(writer, said)
        os._exit(0)
    os.close(writer)
    os.waitpid(child, 0)
    with os.fdopen(reader, encoding="utf-8") as told:
        return told.read()


@pytest.fixture
def open_to_all(tmp_path: Path) -> Iterator[Path]:
    """Return a folder that everybody may reach and write into."""
    folder = tmp_path / "home"
    folder.mkdir()
    for one in (folder, *folder.parents[:-2]):
        if one.stat().st_uid == os.geteuid():
            one.chmod(0o777)
    yield folder
    for one in folder.rglob("*"):
        if one.is_dir():
            one.chmod(0o777)
    shutil.rmtree(folder)


def test_where_rights_are_missing_a_sentence_says_so_and_later_runs_go_on(open_to_all: Path) -> None:
    output = open_to_all / "output"
    assert without_rights(output) == ""
    (output / "locked").mkdir()
    (output / "locked" / "mine.txt").write_text("mine", encoding="utf-8")
    for one in (output / "locked", output / "locked" / "mine.txt"):
        os.chown(one, output.stat().st_uid, output.stat().st_gid)
    (output / "locked").chmod(0o555)
    assert without_rights(output) == ""
    assert (output / "locked" / "mine.txt").read_text(encoding="utf-8") == "mine"
    assert (output / "locked").stat().st_mode & 0o777 == 0o555
    assert names(open_to_all) == ["output"]
    open_to_all.chmod(0o555)
    assert "Permission denied" in without_rights(output)
    open_to_all.chmod(0o777)
    assert without_rights(output) == ""
    assert (output / "page.html").read_text(encoding="utf-8") == "two"


def test_an_output_with_a_folder_of_another_user_is_refused_before_anything_is_made(open_to_all: Path) -> None:
    output, writes = open_to_all / "output", os.access
    assert without_rights(output) == ""
    (output / "site").mkdir()
    (output / MARK).write_text('{"files": ["page.html", "site/page.html"]}', encoding="utf-8")
    with pytest.MonkeyPatch.context() as patch:
        if os.geteuid() != 0:
            patch.setattr(os, "access", lambda path, mode: mode == os.F_OK or (Path(path).name != "site" and writes(path, mode)))
            patch.setattr(os, "geteuid", lambda: -1)
        said = without_rights(output)
    assert said.startswith(
        f"{output}/site belongs to another user of this machine, so that it cannot be replaced. Make it yours or remove it"
    )
    assert names(open_to_all) == ["output"] and (output / "page.html").read_text(encoding="utf-8") == "two"


def test_an_old_output_that_nobody_could_remove_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    output, work = tmp_path / "output", tmp_path / ".output.work"
    write(output, "one")
    with monkeypatch.context() as patch:
        patch.setattr(shutil, "rmtree", lambda *_, **__: None)
        write(output, "two")
        with pytest.raises(FolderError) as error:
            write(output, "three")
    assert error.value.wrong == f"{work} is left from a run that was cut short, and cannot be put away: not all in it can be removed."
    assert error.value.remedy == "Remove that folder, and publish again."
    write(output, "four")
    assert (output / "page.html").read_text(encoding="utf-8") == "four" and names(tmp_path) == ["output"]


def test_where_nothing_can_be_written_the_error_says_so(tmp_path: Path) -> None:
    (tmp_path / "a").write_text("a file", encoding="utf-8")
    with pytest.raises(FolderError, match="Nothing can be written"), replaced(tmp_path / "a" / "output"):
        pass
