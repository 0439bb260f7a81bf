"""New files for a studio: what is there is never written over, and of several files either all are written or none."""

import os
from collections.abc import Mapping
from contextlib import suppress
from pathlib import Path


class AlreadyThereError(Exception):
    """A file or a folder is already there, by its name."""


def write_new_files(folder: Path, files: Mapping[str, str]) -> None:
    """Write files by their names in a folder, which is made. Raises AlreadyThereError where one is there, and OSError."""
    for name in files:
        if os.path.lexists(folder / name):
            raise AlreadyThereError(str(folder / name))
    written: list[Path] = []
    try:
        for name, text in files.items():
            path = folder / name
            path.parent.mkdir(parents=True, exist_ok=True)
            with path.open("x", encoding="utf-8", newline="\n") as file:
                written.append(path)
                file.write(text)
    except FileExistsError as error:
        _take_back(written)
        raise AlreadyThereError(str(error.filename)) from error
    except OSError:
        _take_back(written)
        raise


def _take_back(written: list[Path]) -> None:
    for path in written:
        with suppress(OSError):
            path.unlink()


def replace_text(path: Path, text: str) -> None:
    """Put a text in place of a file of ours or of the studio's, as a whole: a run that is cut short leaves the old one."""
    replace_bytes(path, text.encode("utf-8"))


def replace_bytes(path: Path, data: bytes) -> None:
    """Put bytes in place of a file in the same way, for a text of which not all can be read."""
    beside = path.with_name(f".{path.name}.new")
    beside.write_bytes(data)
    beside.replace(path)
