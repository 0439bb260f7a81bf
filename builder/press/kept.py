"""Sheets that were pressed before: one whose ingredients are all as they were is taken from the last publication.

What goes into a sheet is its finished HTML, its styles, the engine with all that it depends on, and each file that the engine opened for
it. Whoever opens files for the engine notes them; they are listed nowhere by hand. `.pressed.json` in the output holds all that, and the
sum of the PDF itself, so that a PDF that somebody has changed is pressed again.

Decided: a sheet is known by its HTML, styles, engine and each file that the engine opened; notes lie in the output. Why: derived, so that
nothing can be forgotten in a list.
"""

import hashlib
import json
import re
import sys
import zlib
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import asdict, dataclass
from functools import cache
from importlib import metadata
from itertools import chain
from pathlib import Path
from typing import Any

from builder import fonts, joined, pictures
from builder.fonts.files import all_files
from builder.model.document import Document

FILE = ".pressed.json"
ENGINES = ("weasyprint", "pikepdf")


@dataclass(frozen=True)
class PressedSheet:
    """A PDF with so many pages, and what the engine had to say about it. `opened` are the files that were opened for it, as "root/path",
    with their sums: empty where there was no such file. Of a sheet that others are joined to `pages` are its own.
    """

    pdf: bytes
    pages: int
    warnings: tuple[str, ...]
    opened: Mapping[str, str]


@dataclass(frozen=True)
class Record:
    """What is known of a sheet that was pressed: the sums of what goes into it and of the PDF, its pages, and what the engine said."""

    made_of: str
    opened: Mapping[str, str]
    pdf: str
    pages: int
    warnings: tuple[str, ...]


class Kept:
    """The sheets of the last publication, and those of this one as they come."""

    def __init__(self, last: Path, engine: str, roots: Mapping[str, Path], layout_folders: tuple[Path, ...]) -> None:
        """Read what the last publication noted. `engine` is the sum of the engine, `roots` the folders that files may be opened in."""
        self._last, self._engine, self._roots, self._layouts = last, engine, roots, layout_folders
        self._before = _read(last / FILE)
        self._now: dict[str, Record] = {}
        self._styles: dict[str, str] = {}

    def find(self, document: Document, others: Sequence[str] = ()) -> PressedSheet | None:
        """Return the sheet as it was pressed before; None where anything that goes into it has changed.

        `others` are the sums of the sheets that are joined to it.
        """
        record = self._before.get(_name(document.folder, document.path))
        if record is None or record.made_of != self._made_of(document, others):
            return None
        if any(self._sum_of(name) != known for name, known in record.opened.items()):
            return None
        try:
            pdf = (self._last / document.folder / document.path).read_bytes()
        except OSError:
            return None
        if sum_of(pdf) != record.pdf:
            return None
        self._now[_name(document.folder, document.path)] = record
        return PressedSheet(pdf, record.pages, record.warnings, record.opened)

    def note(self, document: Document, pressed: PressedSheet, others: Sequence[str] = ()) -> None:
        """Note a sheet that has just been pressed."""
        made_of, pdf = self._made_of(document, others), sum_of(pressed.pdf)
        self._now[_name(document.folder, document.path)] = Record(made_of, pressed.opened, pdf, pressed.pages, pressed.warnings)

    def known(self, folder: str, path: str) -> Record | None:
        """Return what is known of a sheet of this publication; None as long as there is none."""
        return self._now.get(_name(folder, path))

    def write(self, folder: Path) -> None:
        """Write down for the next publication what this one is made of."""
        text = json.dumps({name: asdict(record) for name, record in sorted(self._now.items())}, indent=1)
        (folder / FILE).write_text(text, encoding="utf-8")

    def _made_of(self, document: Document, others: Sequence[str]) -> str:
        return sum_of("\n".join((self._engine, *others, *map(self._style, document.styles), document.html)).encode())

    def _style(self, name: str) -> str:
        if name not in self._styles:
            self._styles[name] = sum_of_file(style_file(name, self._layouts))
        return f"{name} {self._styles[name]}"

    def _sum_of(self, name: str) -> str:
        root, _, path = name.partition("/")
        return sum_of_file(self._roots[root] / path) if root in self._roots else ""


def style_file(name: str, layout_folders: tuple[Path, ...]) -> Path:
    """Return the file of a stylesheet: that of the first folder that has one."""
    files = [folder / "styles" / name for folder in layout_folders]
    return next((file for file in files if file.is_file()), files[-1])


def sum_of(data: bytes) -> str:
    """Return a sum that no other data has."""
    return hashlib.sha256(data).hexdigest()


def sum_of_file(file: Path) -> str:
    """Return the sum of a file; empty where it cannot be read."""
    try:
        return sum_of(file.read_bytes())
    except OSError:
        return ""


@cache
def engine_sum(libraries: tuple[str, ...]) -> str:
    """Return the sum of all that makes PDFs.

    That is this stage, what cleans pictures and joins sheets, the engines and what they require, Python, fonts, and the system's libraries.
    """
    made_of = (
        sys.version,
        zlib.ZLIB_RUNTIME_VERSION,
        *libraries,
        *sorted(versions(*ENGINES)),
        *sum_of_code(),
        *map(sum_of_file, all_files()),
    )
    return sum_of("\n".join(made_of).encode())


@cache
def sum_of_code() -> tuple[str, ...]:
    """Return the sums of the files of this stage, of what makes pictures, of what knows the fonts, and of what joins sheets."""
    folders = (Path(one).parent for one in (pictures.__file__, fonts.__file__, __file__))
    files = (*chain.from_iterable(sorted(folder.rglob("*.py")) for folder in folders), Path(joined.__file__))
    return tuple(map(sum_of_file, files))


def versions(*packages: str) -> Iterable[str]:
    """Return the versions of installed packages and of all that they require, as far as that is installed."""
    found: dict[str, str] = {}
    waiting = [*packages]
    while waiting:
        name = waiting.pop()
        if name not in found:
            try:
                one = metadata.distribution(name)
            except metadata.PackageNotFoundError:
                continue
            found[name] = f"{name} {one.version}"
            waiting += [re.split(r"[^\w.-]", required, maxsplit=1)[0].lower() for required in one.requires or ()]
    return found.values()


def _read(file: Path) -> Mapping[str, Record]:
    try:
        read = json.loads(file.read_text(encoding="utf-8"))
        return {str(name): _record(one) for name, one in read.items()}
    except (OSError, ValueError, KeyError, TypeError, AttributeError):
        return {}


def _record(one: Mapping[str, Any]) -> Record:
    return Record(one["made_of"], dict(one["opened"]), one["pdf"], int(one["pages"]), tuple(one["warnings"]))


def _name(folder: str, path: str) -> str:
    return f"{folder}/{path}"
