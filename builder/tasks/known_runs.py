"""What a run found, for the next one of which everything is as it was: it says the same, and nothing is worked out again.

Decided: a run is known by all that it reads (the whole folder of the studio, what ships, all code, the last publication), and not by a
list of what matters. A result is kept where all of that was the same before and after the run. Why: what is on no list would
leave a danger unsaid.

Decided: a publication is known once it has come out as it lay there before. Why: it reads the dates that the last one showed.

Decided: nothing is kept of what names somebody on a roster. Why: the cache lies outside of the studio's folder.
"""

from __future__ import annotations

import os
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from builder.cache import find, keep, sum_of_run
from builder.library import CONTENT, LAYOUTS
from builder.model.finding import Finding
from builder.words.fold import fold

if TYPE_CHECKING:
    from builder.model.studio import Studio


@dataclass(frozen=True)
class KnownRun:
    """What was found, and what was said of it all."""

    findings: tuple[Finding, ...]
    lines: tuple[str, ...]


@dataclass(frozen=True)
class Run:
    """What a run is asked for, and the sum of all that it depends on as it begins; None where that cannot be told."""

    words: tuple[str, ...]
    folder: Path
    output: Path
    begun: str | None

    @classmethod
    def begin(cls, words: Sequence[str], folder: Path, output: Path, day: date) -> Run:
        """Look at everything before a run begins. `words` are the command and what is asked of it."""
        words = (*words, str(folder), str(output), str(output.resolve()), day.isoformat())
        return cls(words, folder, output, _sum(words, folder, output))

    def find(self) -> KnownRun | None:
        """Return what was found and said when everything was as it is."""
        found = find(self.begun) if self.begun else None
        return found if isinstance(found, KnownRun) else None

    def keep(self, run: KnownRun, studio: Studio | None) -> None:
        """Keep what was found and said, where everything is still as it was when the run began."""
        if (
            self.begun
            and studio is not None
            and not _names_somebody(run, studio)
            and _sum(self.words, self.folder, self.output) == self.begun
        ):
            keep(self.begun, run)


def _sum(words: tuple[str, ...], folder: Path, output: Path) -> str | None:
    beside = tuple(output.with_name(f".{output.name}.{end}") for end in ("lock", "work")) if output.name else ()
    # What is no output of ours is not read: it may be a whole disk, and is refused.
    outputs = (output,) if os.path.isdir(output / "site") else ()  # noqa: PTH112  nor what may not be looked into
    return sum_of_run(words, (folder,), (*beside, output, folder / ".git"), outputs, (CONTENT, LAYOUTS))


def _names_somebody(run: KnownRun, studio: Studio) -> bool:
    texts = fold(" ".join((*run.lines, *(text for one in run.findings for text in (one.wrong, one.remedy, one.accepted or "")))))
    names = {piece for roster in studio.rosters.values() for row in roster.rows for piece in fold(str(row.name.text)).split()}
    return any(one.place.file.endswith(".csv") for one in run.findings) or any(name in texts for name in names)
