"""A folder of text files becomes texts: the only place that opens what a studio has written.

Files are met in the order of their names. What leads out of the folder, leads nowhere, is no plain file, is not UTF-8 or is far too
large is a finding.
"""

import codecs
import errno
import os
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from functools import cached_property
from pathlib import Path

from builder.model.finding import Finding, caution, stop
from builder.model.finding_kind import CAUTION, STOP, FindingKind
from builder.model.place import Place
from builder.read.text.file_names import is_of_a_device, is_picture_name, is_plain_name, plain_name

FINDS = (
    FindingKind("file-name-not-plain", STOP, "The name of a file or folder cannot stand in a web address, or on no computer with Windows."),
    FindingKind("file-not-utf-8", STOP, "A file is not text in UTF-8."),
    FindingKind("file-outside-studio", STOP, "A link leads to a file outside of the studio's folder."),
    FindingKind("file-too-large", STOP, "A file is too large to be what it is said to be."),
    FindingKind("table-read-as-windows", CAUTION, "A roster is not in UTF-8, and was read as Windows-1252."),
    FindingKind("file-unreadable", STOP, "A file cannot be opened."),
)

MOST_BYTES = 1_000_000


@dataclass(frozen=True)
class TextFolder:
    """A folder with the prefix under which its files are shown, and the list to which its findings are added.

    `met` says of each name that has come up whether it can be opened, so that it is judged once.
    """

    root: Path
    findings: list[Finding]
    shown_as: str = ""
    met: dict[str, bool] = field(default_factory=dict)

    def files(self, folder: str, *endings: str) -> Iterator[str]:
        """Yield the files of one folder that have one of the endings, in order, relative to the root."""
        names = (name for name in self._entries(folder) if name.endswith(endings) and not _leads_to(self.root / name, Path.is_dir))
        yield from (name for name in names if self.is_sound(name))

    def folders(self, folder: str) -> Iterator[str]:
        """Yield the folders in a folder, in order, relative to the root."""
        yield from (name for name in self._entries(folder) if _leads_to(self.root / name, Path.is_dir) and self.is_sound(name))

    def walk(self) -> Iterator[str]:
        """Yield every file below the root, in order, without hidden files and without following links to folders."""
        for folder, folders, files in os.walk(self.root):
            folders[:] = sorted(name for name in folders if not name.startswith("."))
            here = Path(folder).relative_to(self.root)
            yield from ((here / name).as_posix() for name in sorted(files) if not name.startswith("."))

    def has(self, name: str) -> bool:
        """Tell whether there is such a file, or something that stands in its place."""
        path = self.root / name
        return _leads_to(path, Path.is_file) or (os.path.lexists(path) and not _leads_to(path, Path.is_dir))

    def holds(self, name: str) -> bool:
        """Tell whether there is anything of that name."""
        return os.path.lexists(self.root / name)

    def place(self, name: str) -> Place:
        """Return the place of a file as a whole."""
        return Place(self.shown_as + name)

    def text(self, name: str, *, is_table: bool = False) -> str | None:
        """Read a file, or find why it cannot be read. A table is also read as spreadsheets write it where they do not write UTF-8."""
        data = self.data(name, "a recipe or a lesson")
        if data is None:
            return None
        other = self._of_spreadsheet(data, name) if is_table else None
        return self._decoded(data, name) if other is None else other

    def data(self, name: str, what: str) -> bytes | None:
        """Read the bytes of a file, or find why it cannot be read; `what` is the most that it can be."""
        path = self.root / name
        if not self.can_be_opened(name):
            return None
        try:
            data = path.read_bytes() if path.stat().st_size <= MOST_BYTES else None
        except OSError:
            self._stop("file-unreadable", name, "This file cannot be opened.", "Look whether it is a plain file that you may read.")
            return None
        if data is None:
            wrong = f"This file is larger than 1 MB, far more than {what}."
            self._stop("file-too-large", name, wrong, "Divide it, or take out what is not text.")
        return data

    def is_sound(self, name: str) -> bool:
        """Tell whether a file or folder can be used, and find a name that cannot stand in a web address as it is."""
        stem = Path(name).name.rsplit(".", 1)[0]
        if not is_plain_name(stem):
            wrong = f'The name "{stem}" has signs that cannot stand in a web address.'
            remedy = f'Use small letters, figures and hyphens only, for example "{plain_name(stem)}".'
            self._stop("file-name-not-plain", name, wrong, remedy)
        self._see_device(name, stem)
        return self.can_be_opened(name)

    def is_sound_picture(self, name: str) -> bool:
        """Tell whether a picture can be used: as cameras name them, `IMG_2041.JPG` is fine."""
        stem = Path(name).stem
        if not is_picture_name(stem):
            wrong = f'The name "{stem}" has signs that cannot stand in a web address.'
            remedy = f'Use letters, figures, hyphens and underscores only, for example "{plain_name(stem)}".'
            self._stop("file-name-not-plain", name, wrong, remedy)
        self._see_device(name, stem)
        return self.can_be_opened(name)

    def _see_device(self, name: str, stem: str) -> None:
        if is_of_a_device(stem):
            wrong = f'Windows keeps the name "{stem}" for a device, so that this can be copied to no computer with Windows.'
            self._stop("file-name-not-plain", name, wrong, f'Call it, for example, "{plain_name(stem)}".')

    def _of_spreadsheet(self, data: bytes, name: str) -> str | None:
        """Read UTF-16, which says of itself what it is, or what can be Windows-1252, of which nothing does; None where it is neither."""
        try:
            if data.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)):
                return _with_plain_ends(data.decode("utf-16"))
            data.decode("utf-8-sig")
        except UnicodeDecodeError:
            try:
                text = data.decode("cp1252")
            except UnicodeDecodeError:
                return None
            wrong = (
                "This file is not in UTF-8, and was read as Windows-1252, as spreadsheets often write. Other letters may have become these."
            )
            remedy = "See on the printed roster that names and allergies are as they should be, or save the file again as CSV UTF-8."
            self.findings.append(caution("table-read-as-windows", self.place(name), wrong, remedy))
            return _with_plain_ends(text)
        return None

    def _decoded(self, data: bytes, name: str) -> str | None:
        try:
            return _with_plain_ends(data.decode("utf-8-sig"))
        except UnicodeDecodeError as error:
            before = _with_plain_ends(error.object[: error.start].decode("utf-8"))
            place = Place(self.shown_as + name, before.count("\n") + 1, len(before) - before.rfind("\n"))
            wrong = f"The text is not in UTF-8: line {place.line} holds a sign that cannot be read."
            self.findings.append(stop("file-not-utf-8", place, wrong, "Save the file with the encoding UTF-8."))
            return None

    def _entries(self, folder: str) -> list[str]:
        path = self.root / folder
        if not _leads_to(path, Path.is_dir):
            return []
        try:
            names = sorted(entry.name for entry in path.iterdir())
        except OSError:
            self._stop(
                "file-unreadable", folder, "This folder cannot be looked into.", "Look whether you may read it and all that is in it."
            )
            return []
        return [f"{folder}/{name}" for name in names if not name.startswith(".")]

    def can_be_opened(self, name: str) -> bool:
        """Tell whether a name is that of a plain file or a folder that lies inside; whatever else could be endless or anything at all."""
        if name not in self.met:
            self.met[name] = self._judge(name)
        return self.met[name]

    @cached_property
    def _inside(self) -> str:
        """Return what the real path of the folder, and of all that lies in it, begins with."""
        return os.path.realpath(self.root).rstrip(os.sep) + os.sep

    def _judge(self, name: str) -> bool:
        path = self.root / name
        if not (_leads_to(path, Path.is_file) or _leads_to(path, Path.is_dir)):
            wrong = "This is no plain file: a link that leads nowhere, or something else from which no text can be read."
            self._stop("file-unreadable", name, wrong, "Put a plain file in its place, or remove it.")
            return False
        if not f"{os.path.realpath(path)}{os.sep}".startswith(self._inside):
            wrong = "This is a link that leads out of the folder, so it may name anything on this computer."
            self._stop("file-outside-studio", name, wrong, "Put a copy of the file in its place.")
            return False
        return True

    def _stop(self, finding: str, name: str, wrong: str, remedy: str) -> None:
        self.findings.append(stop(finding, self.place(name), wrong, remedy))


def _leads_to(path: Path, kind: Callable[[Path], bool]) -> bool:
    """Tell whether a path is that of a file or folder; a link to a name longer than any file's leads nowhere."""
    try:
        return kind(path)
    except OSError as error:
        if error.errno == errno.ENAMETOOLONG:
            return False
        raise


def _with_plain_ends(text: str) -> str:
    """Return a text whose lines all end alike. No other sign ends a line, not even those that part lines or pages elsewhere."""
    return text.replace("\r\n", "\n").replace("\r", "\n")
