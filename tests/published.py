"""The example studio, published once for all the tests that read it back.

Every document is composed and every page written, by the command itself. Of the sheets the default run presses some with most to warn of,
and of each other kind the one with least to say of those whose text `gold/` keeps (`sample`); with `--long` all are pressed. `sheet_text`
reads a sheet that was not pressed from what was composed for it, so that a test of what sheets say is one of all sheets in either run.
"""

import contextlib
import fcntl
import io
import json
import os
import re
from collections.abc import Callable, Iterable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, replace
from datetime import date
from functools import cache
from math import hypot
from pathlib import Path, PurePosixPath
from tempfile import TemporaryDirectory
from typing import Any, TypeVar, cast
from unittest.mock import patch

import pikepdf
import pypdfium2
from bs4 import BeautifulSoup

from builder import cli, pipeline
from builder.cache.constants import dumps, loads
from builder.compose import publication
from builder.compose.document_table import DOCUMENTS
from builder.compose.edition import Edition
from builder.compose.templates import Templates
from builder.library import LAYOUTS
from builder.model.document import Document, Publication
from builder.press.pool import Presses
from tests.making import sure
from tests.page_text import text_of
from tests.whole_run import LONG, SHARED

T = TypeVar("T")
EXAMPLE = Path(__file__).parent.parent / "site_example"
GOLD = Path(__file__).parent / "gold"
TODAY = "2027-01-02"


@dataclass(frozen=True)
class Run:
    """What one run of the command printed, and how it ended."""

    status: int
    out: str
    err: str


def run(*arguments: object) -> Run:
    out, err = io.StringIO(), io.StringIO()
    with contextlib.redirect_stdout(out), contextlib.redirect_stderr(err):
        status = cli.main([str(argument) for argument in arguments])
    return Run(status, out.getvalue(), err.getvalue())


_OWN = TemporaryDirectory(prefix="published-")
_compose = publication.compose_documents


def kind_of(path: str) -> str:
    """Return the name of a document in the table of documents, by its path: of several that it may be, the closest."""
    paths = {path: kind.name for kind in DOCUMENTS for path in (kind.path, kind.public_path) if path}
    found = [one for one in paths if re.fullmatch(re.sub(r"\\{\w+\\}", "[^/]+", re.escape(one)), path)]
    return paths[max(found, key=lambda one: len(re.sub(r"{\w+}", "", one)))]


def _first_of_each_kind(worth: Mapping[str, tuple[bool, int]]) -> set[str]:
    """Return of each kind of document the path that is worth most."""
    chosen: dict[str, str] = {}
    for path in sorted(worth, key=lambda path: worth[path]):
        chosen[kind_of(path)] = path
    return set(chosen.values())


# By kind, pieces of the paths of the sheets with most to warn of in least room.
MOST_TO_WARN = {
    "take-home sheet": ("orchard-sugar-scrub--2", "gallon-jug-lotion--4"),
    "take-home sheet in large print": ("mint-tin",),
    "steps at the bench": ("bath-tea-and-lip-balm/2027-02-06",),
    "check list": ("lotion-from-scratch/2027-03-06",),
}


def sample(sheets: Iterable[Document]) -> set[str]:
    """Return the paths of the sheets with most to warn of, and of one sheet of each other kind: the one with least to say, of those whose
    text is kept in `gold/` where some are.
    """
    by_kind = [(kind_of(one.path), one) for one in sheets]
    warning = {one.path: kind for kind, one in by_kind if any(part in one.path for part in MOST_TO_WARN.get(kind, ()))}
    others = (one for kind, one in by_kind if kind not in warning.values())
    worth = {one.path: ((GOLD / f"{one.folder}/{one.path}.txt").exists(), -len(one.html)) for one in others}
    return warning.keys() | _first_of_each_kind(worth)


def _is_sheet(document: Document) -> bool:
    return document.path.endswith(".pdf")


@contextmanager
def only_pages() -> Iterator[None]:
    """Let a publication press no sheet, for what looks at pages alone, and start no process that would."""
    with patch("builder.press._press_sheets", lambda *_: (None, (), 0)), patch.object(Presses, "start_early"):
        yield


def named(*names: str) -> Callable[[Iterable[Document]], set[str]]:
    """Return what chooses the sheets whose files have these names."""
    return lambda sheets: {one.path for one in sheets if PurePosixPath(one.path).name in names}


@contextmanager
def sheets_pressed(
    choose: Callable[[Iterable[Document]], set[str]] = sample, note: Callable[[Document], object] = lambda _: None
) -> Iterator[None]:
    """Let a publication press the sheets that are chosen, with `--long` all. `note` is given each sheet, pressed or not."""

    def compose(*arguments: Any, **named: Any) -> Publication:
        whole = _compose(*arguments, **named)
        composed = [document for document in whole.documents if _is_sheet(document)]
        for sheet in composed:
            note(sheet)
        pressed = {sheet.path for sheet in composed} if LONG in os.environ else choose(composed)
        return replace(whole, documents=tuple(one for one in whole.documents if not _is_sheet(one) or one.path in pressed))

    with patch.object(publication, "compose_documents", compose):
        yield


def _shared() -> Path:
    return Path(os.environ.get(SHARED, _OWN.name))


def shared(name: str, make: Callable[[], T]) -> T:
    """Return what the processes of one run share by a name: the first that asks makes it, while the others wait."""
    kept = _shared() / name
    with (_shared() / f"{name}.lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        if kept.exists():
            return cast(T, loads(kept.read_bytes()))
        made = make()
        kept.write_bytes(dumps(made))
        return made


@cache
def published() -> tuple[Path, Run]:
    """Publish the example studio and give its output folder and what the command said. The processes of one run of tests share it."""
    kept = _shared()

    def note(sheet: Document) -> None:
        file = kept / f"composed/{sheet.folder}/{sheet.path}"
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(sheet.html, encoding="utf-8")

    def said() -> Run:
        with sheets_pressed(note=note):
            done = run("publish", EXAMPLE, "--to", kept / "out", "--today", TODAY)
        example()  # It is known here now.
        return done

    return kept / "out", shared("said", said)


def is_beside_a_sheet(page: Path) -> bool:
    """Tell whether a file is a sheet once more, for a browser: it alone has the fonts of the sheets."""
    return "styles/faces.css" in page.read_text(encoding="utf-8")


def pages() -> list[Path]:
    """Return every page of the output, without what lies beside a sheet and says the same."""
    folder, _ = published()
    return sorted(page for page in folder.rglob("*.html") if not is_beside_a_sheet(page))


def page_of_each_kind() -> list[Path]:
    """Return of each kind of page of the site the one with most to say."""
    site = published()[0] / "site"
    chosen = _first_of_each_kind({page.relative_to(site).as_posix(): (True, page.stat().st_size) for page in site.rglob("*.html")})
    return [site / path for path in sorted(chosen)]


def pdfs() -> list[Path]:
    """Return every PDF of the output: with `--long` all sheets, without it one of each kind."""
    folder, _ = published()
    return sorted(folder.rglob("*.pdf"))


def sheets() -> list[Path]:
    """Return where each sheet lies or would lie, pressed or not."""
    folder, _ = published()
    composed = folder.parent / "composed"
    return sorted(folder / path.relative_to(composed) for path in composed.rglob("*.pdf"))


def sheets_of(kind: str, parts: Iterable[str]) -> list[Path]:
    """Return where the sheets of a kind lie of whose paths one of some pieces is a part."""
    here = {sheet: "/".join(sheet.relative_to(published()[0]).parts[1:]) for sheet in sheets()}
    return [sheet for sheet, path in here.items() if any(part in path for part in parts) and kind_of(path) == kind]


def composed_for(sheet: Path) -> Path:
    """Return the HTML that a sheet is pressed from."""
    folder, _ = published()
    return folder.parent / "composed" / sheet.relative_to(folder)


@cache
def soup(path: Path) -> BeautifulSoup:
    """Parse one HTML file."""
    return BeautifulSoup(path.read_text(encoding="utf-8"), "html.parser")


def squeeze(text: str) -> str:
    """Return a text with every run of spaces, also those that do not break, as one space."""
    return " ".join(text.replace("\u00a0", " ").replace("\u202f", " ").split())


@cache
def pdf_pages(path: Path) -> tuple[tuple[tuple[float, float], str], ...]:
    """Return each page of a PDF as its size in points and its text."""
    pdf = pypdfium2.PdfDocument(path)
    try:
        return tuple((page.get_size(), squeeze(page.get_textpage().get_text_bounded())) for page in pdf)
    finally:
        pdf.close()


def pdf_text(path: Path) -> str:
    """Return the text of all pages of a PDF."""
    return " ".join(text for _, text in pdf_pages(path))


def sheet_text(path: Path) -> str:
    """Return the text of a sheet: of the PDF where it was pressed, else of what was composed for it."""
    return pdf_text(path) if path.exists() else html_text(composed_for(path))


def pdf_small_text(path: Path, points: float) -> str:
    """Return all of a PDF that is set in type smaller than this."""
    small = ""
    pdf = pypdfium2.PdfDocument(path)
    try:
        for text in (page.get_textpage() for page in pdf):
            for number in range(text.count_chars()):
                drawn = pypdfium2.raw.FS_MATRIX()
                pypdfium2.raw.FPDFText_GetMatrix(text, number, drawn)
                size = pypdfium2.raw.FPDFText_GetFontSize(text, number) * hypot(drawn.c, drawn.d)
                small += chr(pypdfium2.raw.FPDFText_GetUnicode(text, number)) if size < points - 0.1 else ""
    finally:
        pdf.close()
    return "".join(small.split())


def pdf_fonts(path: Path) -> set[str]:
    """Return the names of the fonts that a PDF holds, without the tag of the subset."""
    with pikepdf.open(path) as pdf:
        names = [str(one.FontName) for one in pdf.objects if isinstance(one, pikepdf.Dictionary) and "/FontName" in one]
    return {name.partition("+")[2] for name in names}


@cache
def html_text(path: Path) -> str:
    """Return the text of an HTML file."""
    return squeeze(text_of(path.read_text(encoding="utf-8")))


_check = pipeline.check


@cache
def example() -> pipeline.Outcome:
    """Return the example studio, read, checked and worked out. The processes of one run of tests share it."""
    return shared("example", lambda: _check(EXAMPLE, on=date.fromisoformat(TODAY)))


@cache
def edition() -> Edition:
    """Return what the documents of the example are composed from."""
    found = example()
    return Edition(sure(found.studio), found.plans, found.findings, Templates((LAYOUTS,)), date.fromisoformat(TODAY))


@cache
def weighed(class_key: str, recipe: str, date: str = "") -> Any:
    """Give what `weigh --json` says of one product of a class. The studio is the same each time, and so worked out once for all of them."""
    dated = ("--date", date) if date else ()
    with patch.object(pipeline, "check", lambda *_, **__: example()):
        done = run("weigh", EXAMPLE, recipe, "--class", class_key, "--today", TODAY, "--json", *dated)
    return json.loads(done.out)
