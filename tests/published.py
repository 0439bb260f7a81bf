"""The example studio, published once for all the tests that read it back."""

import contextlib
import fcntl
import io
import json
import os
import pickle
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any
from unittest.mock import patch

import pdfplumber
import pypdfium2
from bs4 import BeautifulSoup

from builder import cli, pipeline

EXAMPLE = Path(__file__).parent.parent / "site_example"
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


SHARED = "PUBLISHED_FOR_TESTS"
_OWN = TemporaryDirectory(prefix="published-")


@cache
def published() -> tuple[Path, Run]:
    """Publish the example studio and give its output folder and what the command said. The processes of one run of tests share it."""
    kept = Path(os.environ.get(SHARED, _OWN.name))
    said = kept / "said"
    with (kept / "lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        if not said.exists():
            said.write_bytes(pickle.dumps(run("publish", EXAMPLE, "--to", kept / "out", "--today", TODAY)))
    return kept / "out", pickle.loads(said.read_bytes())


def pages() -> list[Path]:
    """Give every HTML file of the output."""
    folder, _ = published()
    return sorted(folder.rglob("*.html"))


def pdfs() -> list[Path]:
    """Give every PDF of the output."""
    folder, _ = published()
    return sorted(folder.rglob("*.pdf"))


@cache
def soup(path: Path) -> BeautifulSoup:
    """Parse one HTML file."""
    return BeautifulSoup(path.read_text(encoding="utf-8"), "html.parser")


def squeeze(text: str) -> str:
    """Give a text with every run of spaces, also those that do not break, as one space."""
    return " ".join(text.replace("\u00a0", " ").replace("\u202f", " ").split())


@cache
def pdf_pages(path: Path) -> tuple[tuple[tuple[float, float], str], ...]:
    """Give each page of a PDF as its size in points and its text."""
    pdf = pypdfium2.PdfDocument(path)
    try:
        return tuple((page.get_size(), squeeze(page.get_textpage().get_text_bounded())) for page in pdf)
    finally:
        pdf.close()


def pdf_text(path: Path) -> str:
    """Give the text of all pages of a PDF."""
    return " ".join(text for _, text in pdf_pages(path))


def pdf_fonts(path: Path) -> set[str]:
    """Give the names of the fonts that a PDF holds, without the tag of the subset."""
    with pdfplumber.open(path) as pdf:
        found = (pdf.doc.getobj(number) for xref in pdf.doc.xrefs for number in xref.get_objids())
        names = [one["FontName"].name for one in found if isinstance(one, dict) and "FontName" in one]
    return {name.partition("+")[2] for name in names}


def html_text(path: Path) -> str:
    """Give the text of an HTML file."""
    return squeeze(soup(path).get_text(" "))


_checked = cache(pipeline.check)


@cache
def weighed(class_key: str, recipe: str, date: str = "") -> Any:
    """Give what `weigh --json` says of one product of a class. The studio is the same each time, and so worked out once for all of them."""
    dated = ("--date", date) if date else ()
    with patch.object(pipeline, "check", _checked):
        done = run("weigh", EXAMPLE, recipe, "--class", class_key, "--today", TODAY, "--json", *dated)
    return json.loads(done.out)
