"""What recipes and lessons draw on: read once for each state of its files, and what ships once for each version.

Decided: the code that reads is loaded where something has to be read. Why: to load it takes a third as long as to weigh a recipe.
"""

from collections.abc import Mapping
from pathlib import Path

from builder.cache import find, keep, sum_of, with_code
from builder.model.finding import Finding
from builder.model.label.language import ENGLISH, Language
from builder.model.recipe.ingredient import Ingredient
from builder.model.remembered import remembered
from builder.model.teaching.lesson import Block
from builder.read.drawn_on import DrawnOn, Shipped
from builder.read.known import NamesKnown
from builder.read.read_once import read_once
from builder.read.text.text_files import TextFolder
from builder.sums import sum_of_files

_SHELF = "shelf"
Passages = Mapping[str, tuple[Block, ...]]


def read_library(content: Path, studio: TextFolder) -> DrawnOn:
    """Read the library, and the studio's shelf over it."""
    shipped = _shipped(content)
    studio.findings.extend(shipped.findings)
    return _with_shelf(shipped, studio) if studio.holds(_SHELF) else _without_shelf(shipped)


def _with_shelf(shipped: Shipped, studio: TextFolder) -> DrawnOn:
    """Return the library with a shelf over it: read once in a process for each state of its files, where that can be told."""
    files = sum_of_files(studio.root / _SHELF)
    if files is None:
        return _drawn_on(shipped, studio)
    try:
        drawn_on, found, met = _shelf_read(shipped, files, str(studio.root))
    except _ChangedError:
        return _drawn_on(shipped, studio)
    studio.findings.extend(found)
    studio.met.update(met)
    return drawn_on


class _ChangedError(Exception):
    """Files changed while they were read."""


@remembered(8)
def _shelf_read(shipped: Shipped, files: str, root: str) -> tuple[DrawnOn, tuple[Finding, ...], Mapping[str, bool]]:
    folder = TextFolder(Path(root), [])
    read = _drawn_on(shipped, folder)
    if sum_of_files(folder.root / _SHELF) != files:
        raise _ChangedError
    return read, tuple(folder.findings), folder.met


@remembered(4)
def _without_shelf(shipped: Shipped) -> DrawnOn:
    """Return the library as it is."""
    return _drawn_on(shipped, TextFolder(Path("no shelf"), []))


def passages_in(language: Language, drawn_on: DrawnOn, findings: list[Finding]) -> Passages:
    """Return the passages of a studio in its language: those that ship as the language says them, its own as they are written."""
    if language == ENGLISH:
        return drawn_on.passages
    return _said_in(findings, language, drawn_on.passages, drawn_on.written, drawn_on.known)


@read_once(4)
def _said_in(findings: list[Finding], language: Language, passages: Passages, written: Mapping[str, str], known: NamesKnown) -> Passages:
    from builder.read.teaching.passages import said_in

    said = {key: said_in(language, passages[key], text, f"content/passages/{key}.md", known, findings) for key, text in written.items()}
    return {**passages, **said}


def _shipped(content: Path) -> Shipped:
    """Return what ships: read once in a process for each state of its files, and once for each version where that can be told."""
    files = sum_of_files(content)
    return _kept(files, str(content)) if files else _read_shipped(content)


@remembered(4)
def _kept(files: str, folder: str) -> Shipped:
    content, key = Path(folder), with_code(files)
    found = find(key) if key else None
    if isinstance(found, Shipped):
        return found
    read = _read_shipped(content)
    if key and sum_of(content) == key:  # it has not changed meanwhile
        keep(key, read)
    return read


def _read_shipped(content: Path) -> Shipped:
    from builder.read.library_files import read_shipped

    return read_shipped(content)


def _drawn_on(shipped: Shipped, studio: TextFolder) -> DrawnOn:
    from builder.read.library_files import drawn_on

    return drawn_on(shipped, studio)


def read_shelf(folder: Path | None, content: Path) -> tuple[Mapping[str, Ingredient], list[Finding]]:
    """Read every card by the names it answers to; `folder` is a studio whose shelf comes first, or None."""
    findings: list[Finding] = []
    studio = TextFolder(folder, findings) if folder else TextFolder(content / "no studio", findings)
    return read_library(content, studio).library.ingredients, findings
