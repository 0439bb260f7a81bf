"""A folder of text files becomes texts: the only place that opens what a studio has written.

Files are met in the order of their names. A file that leads out of the folder, is not UTF-8 or is far too large is a finding.
"""

import os
import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

from builder.model.finding import Finding, stop
from builder.model.place import Place

MOST_BYTES = 1_000_000
_PLAIN_NAME = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")


@dataclass(frozen=True)
class TextFolder:
    """A folder with the prefix under which its files are shown, and the list to which its findings are added."""

    root: Path
    findings: list[Finding]
    shown_as: str = ""
    met: set[str] = field(default_factory=set)

    def files(self, folder: str, *endings: str) -> Iterator[str]:
        """Give the files of one folder that have one of the endings, in order, relative to the root."""
        names = (name for name in self._entries(folder) if name.endswith(endings) and (self.root / name).is_file())
        yield from (name for name in names if self.is_sound(name))

    def folders(self, folder: str) -> Iterator[str]:
        """Give the folders in a folder, in order, relative to the root."""
        yield from (name for name in self._entries(folder) if (self.root / name).is_dir() and self.is_sound(name))

    def walk(self) -> Iterator[str]:
        """Give every file below the root, in order, without hidden files and without following links to folders."""
        for folder, folders, files in os.walk(self.root):
            folders[:] = sorted(name for name in folders if not name.startswith("."))
            here = Path(folder).relative_to(self.root)
            yield from ((here / name).as_posix() for name in sorted(files) if not name.startswith("."))

    def has(self, name: str) -> bool:
        """Say whether there is such a file."""
        return (self.root / name).is_file()

    def place(self, name: str) -> Place:
        """Give the place of a file as a whole."""
        return Place(self.shown_as + name)

    def text(self, name: str) -> str | None:
        """Read a file, or find why it cannot be read."""
        self.met.add(name)
        if not self._is_inside(name):
            return None
        try:
            data = (self.root / name).read_bytes()
        except OSError:
            self._stop("file-unreadable", name, "This file cannot be opened.", "Look whether it is a plain file that you may read.")
            return None
        if len(data) > MOST_BYTES:
            self._stop(
                "file-too-large",
                name,
                "This file is larger than 1 MB, far more than a recipe or a lesson.",
                "Divide it, or take out what is not text.",
            )
            return None
        try:
            text = data.decode("utf-8-sig")
        except UnicodeDecodeError as error:
            line = data.count(b"\n", 0, error.start) + 1
            wrong = f"The text is not in UTF-8: line {line} holds a sign that cannot be read."
            self.findings.append(
                stop("file-not-utf-8", Place(self.shown_as + name, line, 1), wrong, "Save the file with the encoding UTF-8.")
            )
            return None
        return text.replace("\r\n", "\n").replace("\r", "\n")

    def _entries(self, folder: str) -> list[str]:
        path = self.root / folder
        if not path.is_dir():
            return []
        return [f"{folder}/{name}" for name in sorted(entry.name for entry in path.iterdir()) if not name.startswith(".")]

    def is_sound(self, name: str) -> bool:
        """Say whether a file or folder lies inside, and find a name that cannot stand in a web address as it is."""
        self.met.add(name)
        stem = Path(name).name.rsplit(".", 1)[0]
        if not _PLAIN_NAME.fullmatch(stem):
            plain = "-".join(re.findall(r"[a-z0-9]+", stem.lower())) or "another-name"
            wrong = f'The name "{stem}" has signs that cannot stand in a web address.'
            self._stop("file-name-not-plain", name, wrong, f'Use small letters, figures and hyphens only, for example "{plain}".')
        return self._is_inside(name)

    def _is_inside(self, name: str) -> bool:
        path = self.root / name
        if path.resolve().is_relative_to(self.root.resolve()):
            return True
        wrong = "This is a link that leads out of the folder, so it may name anything on this computer."
        self._stop("file-outside-studio", name, wrong, "Put a copy of the file in its place.")
        return False

    def _stop(self, finding: str, name: str, wrong: str, remedy: str) -> None:
        self.findings.append(stop(finding, self.place(name), wrong, remedy))
