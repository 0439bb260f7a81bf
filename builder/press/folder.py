"""An output folder that changes as a whole: it is built beside the old one, then put in its place.

Only one run at a time builds for one output: a second one waits. A folder that we have written holds the hidden file `.stillroom`, which
lists what was written; any other folder with something in it is never touched, and of ours only what is listed is ever removed. All that a
run needs lies in `.NAME.work` beside the output. A run that was cut short leaves the old output as it was, or, between the two renames,
in there, from where the next run fetches it.

Decided: what an output holds that we did not write is taken over into the next one. Why: a site is often put on the web from there, with
files of its host's.
"""

import json
import os
import posixpath
import shutil
import stat
import tempfile
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from pathlib import Path

from filelock import FileLock, Timeout

MARK = ".stillroom"
ABOUT = "This folder is written by stillroom. What is listed here is replaced as a whole, and removed when it is no longer published."


class FolderError(Exception):
    """The output cannot be written where it was asked for. `wrong` says why, `remedy` what to do; both are sentences."""

    def __init__(self, wrong: str, remedy: str) -> None:
        """Hold the two sentences."""
        super().__init__(f"{wrong} {remedy}")
        self.wrong = wrong
        self.remedy = remedy

    def __reduce__(self) -> tuple[type["FolderError"], tuple[str, str]]:
        """Go from one process to another as the two sentences."""
        return FolderError, (self.wrong, self.remedy)


@dataclass(frozen=True)
class Building:
    """Where a run writes: `folder` becomes the output, `scratch` goes with the run; `last` is the output of the run before, if any."""

    folder: Path
    scratch: Path
    last: Path


@contextmanager
def replaced(output: Path, waits: Callable[[], None] = lambda: None) -> Iterator[Building]:
    """Return an empty folder to write into; once that is done without an error, it takes the place of the old output.

    `waits` is called once where another run is writing the same output. Raises FolderError, with the old output as it was.
    """
    output = output.resolve()
    _refuse_what_cannot_be_replaced(output)
    work = output.with_name(f".{output.name}.work")
    with _alone(output, waits):
        building = _begin(output, work)
        try:
            yield building
            _finish(output, building, work)
        except OSError as error:
            at = f" ({error.filename})" if error.filename else ""
            raise FolderError(f"The publication could not be written: {error.strerror or error}{at}.", AS_IT_WAS) from error
        finally:
            _clear(work)


AS_IT_WAS = "The old output is as it was. Mend that (room on the disk, rights, a program that holds a file open), and publish again."


@contextmanager
def _alone(output: Path, waits: Callable[[], None]) -> Iterator[None]:
    try:
        output.parent.mkdir(parents=True, exist_ok=True)
        lock = FileLock(output.with_name(f".{output.name}.lock"))
        try:
            lock.acquire(timeout=0)
        except Timeout:
            waits()
            lock.acquire()
    except OSError as error:
        raise FolderError(f"Nothing can be written to {output.parent}: {error.strerror}.", "Choose another folder.") from error
    try:
        yield
    finally:
        lock.release()


def _begin(output: Path, work: Path) -> Building:
    try:
        _recover(output, work / "old")
        _refuse_what_is_not_ours(output)
        _refuse_what_cannot_be_removed(output)
        _clear(work)
        if (work / "old").exists():
            raise OSError("not all in it can be removed")
        (work / "new").mkdir(parents=True)
        # Of a name of its own: processes of a run that was killed a moment ago may still write into theirs.
        scratch = Path(tempfile.mkdtemp(prefix="scratch-", dir=work))
    except OSError as error:
        wrong = f"{work} is left from a run that was cut short, and cannot be put away: {error.strerror or error}."
        raise FolderError(wrong, "Remove that folder, and publish again.") from error
    return Building(work / "new", scratch, output)


def _finish(output: Path, building: Building, work: Path) -> None:
    """Put the new output in place of the old one, and take over into it what somebody else has put there."""
    top = len(str(building.folder)) + 1
    listed = sorted(f"{at}/{name}"[top:].replace(os.sep, "/") for at, _, names in os.walk(building.folder) for name in names)
    mark = {"about": ABOUT, "files": listed}
    (building.folder / MARK).write_text(json.dumps(mark, indent=1), encoding="utf-8")
    taken = [path for path in _others(output) if (building.folder / path).exists()]
    if taken:
        wrong = f"{output / taken[0]} was not written by this program, and a page or sheet of that name is to stand there."
        raise FolderError(wrong, "Move it to another place, and publish again.")
    old = work / "old"
    if output.exists():
        output.rename(old)
    try:
        building.folder.rename(output)
    except OSError:
        _recover(output, old)
        raise
    _take_over(old, output)


def _recover(output: Path, old: Path) -> None:
    """Bring back the old output after a run that was cut short between the two renames, or what is not ours of it after the second."""
    if not old.exists():
        return
    if output.exists() and (output / MARK).is_file():
        _take_over(old, output)
    else:
        if output.exists():
            output.rmdir()
        old.rename(output)


def _take_over(old: Path, output: Path) -> None:
    for path in _others(old):
        target = output / path
        if not target.exists():
            try:
                target.parent.mkdir(parents=True, exist_ok=True)
                _move(old / path, target)
            except OSError as error:
                wrong = f"{old / path} was not written by this program, and cannot be moved into the new output: {error.strerror}."
                raise FolderError(wrong, f"Move it to {target} yourself, and publish again.") from error


def _move(source: Path, target: Path) -> None:
    """Move a file or folder; a folder that may not be written to is opened for as long as that takes."""
    mode = source.lstat().st_mode
    if stat.S_ISDIR(mode) and not os.access(source, os.W_OK):
        source.chmod(stat.S_IRWXU)
        source.rename(target)
        target.chmod(stat.S_IMODE(mode))
    else:
        source.rename(target)


def _ours(folder: Path) -> frozenset[str]:
    """Return the files that we have written into an output, by what is listed there."""
    try:
        listed = json.loads((folder / MARK).read_text(encoding="utf-8"))["files"]
        return frozenset({MARK, *(posixpath.normpath(name) for name in listed)})
    except (OSError, ValueError, KeyError, TypeError):
        return frozenset()


def _folders_of(files: Iterable[str]) -> frozenset[str]:
    """Return the folders in which some files lie, one within another; that of all is nothing."""
    found: set[str] = set()
    for path in files:
        above = posixpath.dirname(path)
        while above not in found:
            found.add(above)
            above = posixpath.dirname(above)
    return frozenset(found)


def _others(folder: Path) -> list[str]:
    """Return what somebody else has put into an output: files, and folders as a whole that hold nothing of ours."""
    ours = _ours(folder)
    folders = _folders_of(ours)

    def within(at: str) -> Iterator[str]:
        for entry in sorted(os.scandir(folder / at), key=lambda one: one.name):
            path = posixpath.join(at, entry.name)
            if path in folders and entry.is_dir():
                yield from within(path)
            elif path not in ours:
                yield path

    return list(within("")) if ours else []


def _clear(work: Path) -> None:
    """Remove the folder of a run, also where rights were taken away inside it.

    What cannot be removed stays, and so does an old output from which something of somebody else could not be moved; the next run tells.
    """
    if not work.exists() or _others(work / "old"):
        return
    for folder, _, _ in os.walk(work):
        if not os.access(folder, os.W_OK | os.X_OK):
            with suppress(OSError):
                Path(folder).chmod(stat.S_IRWXU)
    shutil.rmtree(work, ignore_errors=True)


def _refuse_what_cannot_be_replaced(output: Path) -> None:
    if output.parent == output:
        raise FolderError(f"{output} is a whole disk.", "Name a folder for the output.")
    try:
        if output.is_mount():
            raise FolderError(f"{output} is the top of a disk or of a shared folder, and cannot be replaced.", "Name a folder in it.")
        _refuse_what_is_not_ours(output)
    except OSError as error:
        raise FolderError(f"{output} cannot be looked into: {error.strerror}.", "Choose a folder that you may write to.") from error


def _refuse_what_is_not_ours(folder: Path) -> None:
    if not folder.exists():
        return
    if not folder.is_dir():
        raise FolderError(f"{folder} is a file, so it cannot become the output folder.", "Choose another name for the output folder.")
    if any(folder.iterdir()) and not (folder / MARK).is_file():
        raise FolderError(
            f"{folder} holds files that were not written by this program, and the output replaces its folder as a whole.",
            "Choose an empty folder or a new name.",
        )


def _refuse_what_cannot_be_removed(output: Path) -> None:
    """Refuse an output in which a folder is another user's: it could be put aside, and never be removed."""
    for folder in (output / one for one in sorted(_folders_of(_ours(output)))):
        is_there, may_change = os.access(folder, os.F_OK), os.access(folder, os.W_OK | os.X_OK)
        if is_there and not may_change and folder.stat().st_uid != os.geteuid():
            wrong = f"{folder} belongs to another user of this machine, so that it cannot be replaced."
            raise FolderError(wrong, f"Make it yours or remove it, or choose another folder than {output} for the output.")
