"""An output folder that changes as a whole: it is built beside the old one, then put in its place.

A folder that we have written holds the hidden file `.stillroom`; any other folder with something in it is never touched. A run that was
cut short leaves the old output as it was, or, between the two renames, under the name `.NAME.before`, from where the next run fetches it.
"""

import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

MARK = ".stillroom"
MARK_TEXT = "This folder is written by the builder and replaced as a whole. Keep nothing of your own in it.\n"


class FolderError(Exception):
    """The output cannot be written where it was asked for. `wrong` says why, `remedy` what to do; both are sentences."""

    def __init__(self, wrong: str, remedy: str) -> None:
        """Hold the two sentences."""
        super().__init__(f"{wrong} {remedy}")
        self.wrong = wrong
        self.remedy = remedy


@contextmanager
def replaced(output: Path) -> Iterator[Path]:
    """Give an empty folder to write into; once that is done without an error, it takes the place of the old output."""
    output = output.resolve()
    building, before = output.with_name(f".{output.name}.building"), output.with_name(f".{output.name}.before")
    _restore(output, before)
    _refuse_what_is_not_ours(output)
    _refuse_what_is_not_ours(building)
    try:
        output.parent.mkdir(parents=True, exist_ok=True)
        shutil.rmtree(building, ignore_errors=True)
        building.mkdir()
        (building / MARK).write_text(MARK_TEXT, encoding="utf-8")
    except OSError as error:
        raise FolderError(f"Nothing can be written to {output.parent}: {error.strerror}.", "Choose another folder.") from error
    try:
        yield building
        _swap(output, building, before)
    finally:
        shutil.rmtree(building, ignore_errors=True)


def _swap(output: Path, building: Path, before: Path) -> None:
    if output.exists():
        output.rename(before)
    try:
        building.rename(output)
    except OSError:
        _restore(output, before)
        raise
    shutil.rmtree(before, ignore_errors=True)


def _restore(output: Path, before: Path) -> None:
    """Bring back the old output after a run that was cut short between the two renames; clear it away after one that had finished."""
    if not (before / MARK).is_file():
        return
    if output.exists():
        shutil.rmtree(before, ignore_errors=True)
    else:
        before.rename(output)


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
