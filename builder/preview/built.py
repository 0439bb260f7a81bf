"""A studio folder to what the preview can show of it: its findings, and every document that nothing holds back, made when it is asked for.

Decided: what a stop holds back is shown as it last was sound, with the stop above it. Why: a slip of the pen takes no page away from
whoever is at work on it.
"""

import hashlib
from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import date
from pathlib import Path

from builder import pipeline
from builder.compose.on_demand import Entry, OnDemand
from builder.library import CONTENT
from builder.model.document import CopiedFile, Document, Origin
from builder.model.finding import Finding
from builder.model.roster.roster_file import is_roster
from builder.model.studio import Studio
from builder.model.subject import TextPage
from builder.read.text.source_lines import SourceLines
from builder.rules.reach import classes_concerned, subjects_of
from builder.words.say import speaking

NOTHING = OnDemand({}, {})


@dataclass(frozen=True)
class Passage:
    """A finding with the line of the studio's text where it stands; None where there is none, or where it names somebody."""

    finding: Finding
    line: str | None
    classes: frozenset[str]
    pages: frozenset[str]


@dataclass(frozen=True)
class Built:
    """What came of one look at the folder. `trouble` says why the folder could not be worked out at all; empty where it could."""

    folder: Path
    name: str = ""
    studio: Studio | None = None
    listed: OnDemand = NOTHING
    passages: tuple[Passage, ...] = ()
    trouble: str = ""
    made: dict[str, Document | None] = field(default_factory=dict)

    @property
    def layouts(self) -> tuple[Path, ...]:
        """Return the folders of templates and styles, the studio's own first."""
        return pipeline.layouts_of(self.folder)

    def of_layouts(self, name: str) -> Path | None:
        """Return a file of the layouts by its path there, the studio's own before ours."""
        return _first(self.layouts, name)

    def document(self, path: str) -> Document | None:
        """Make a document, or give it again; None where there is nothing to show. Raises KeyError for a path that is none."""
        if path not in self.made:
            entry = self.listed.entries[path]
            assert self.studio is not None
            with speaking(self.studio.speaks.messages):
                self.made[path] = entry.make()
        return self.made[path]

    def about(self, entry: Entry | None) -> tuple[Passage, ...]:
        """Return the findings that concern a document: those of its class or page, and all of them for what is about neither."""
        if entry is None or not (entry.class_key or entry.page_key):
            return self.passages
        return tuple(one for one in self.passages if entry.class_key in one.classes or entry.page_key in one.pages)

    def picture(self, path: str) -> Path | None:
        """Return a picture of the studio by its path in the folder, where it is one that was read."""
        return self.folder / path if self.studio and path in self.studio.pictures else None

    def copied(self, path: str) -> CopiedFile | None:
        """Return the file that lies at a path of the output, beside the documents."""
        return self.listed.files.get(path)

    def source_of(self, file: CopiedFile) -> Path | None:
        """Return where such a file is copied from."""
        return _first(self.layouts if file.origin is Origin.LAYOUTS else (self.folder,), file.source)


def _first(roots: tuple[Path, ...], name: str) -> Path | None:
    return next((root / name for root in roots if (root / name).is_file()), None)


def build(folder: Path, on: Callable[[], date]) -> Built:
    """Look at the folder as it is now. Whatever is in it, there is an answer: `trouble` where the program itself did not get on."""
    try:
        outcome, listed = pipeline.preview(folder, on=on())
    except Exception as error:
        return Built(folder, trouble=f"{type(error).__name__}: {error}")
    if outcome.studio is None or listed is None:
        return Built(folder, passages=tuple(Passage(one, None, frozenset(), frozenset()) for one in outcome.findings))
    lines, studio = SourceLines(folder, CONTENT), outcome.studio
    passages = tuple(_passage(finding, studio, lines) for finding in outcome.findings)
    return Built(folder, studio.profile.name, studio, listed, passages)


def _passage(finding: Finding, studio: Studio, lines: SourceLines) -> Passage:
    about = subjects_of(finding, studio)
    pages = frozenset(one.key for one in about if isinstance(one, TextPage))
    line = None if is_roster(finding.place.file) else lines.at(finding.place)
    return Passage(finding, line, classes_concerned(finding, studio), pages)


def sum_of(text: str) -> str:
    """Return a short sum that tells one state of a page from another."""
    return hashlib.sha256(text.encode()).hexdigest()[:16]
