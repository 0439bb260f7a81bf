"""Printing: findings to stderr with the studio's own line, results to stdout, progress as a bar on a terminal or plain lines."""

from __future__ import annotations

import sys
from collections.abc import Sequence
from pathlib import Path
from types import TracebackType

from rich.console import Console
from rich.markup import escape
from rich.progress import BarColumn, MofNCompleteColumn, TaskID, TextColumn
from rich.progress import Progress as Bar
from rich.table import Table

from builder.compose.card_text import CardLine
from builder.compose.weigh_table import HEADINGS, WeighTable
from builder.model.document import Folder
from builder.model.finding import Finding, Weight
from builder.pipeline import Outcome
from builder.read.source_lines import SourceLines

# A line is never cut or folded where the output is not a terminal: others may read it with a program.
_WIDE = 10_000


def _console(*, error: bool = False) -> Console:
    stream = sys.stderr if error else sys.stdout
    return Console(stderr=error, highlight=False, soft_wrap=True, width=None if stream.isatty() else _WIDE)


class Progress:
    """A progress bar on a terminal, a plain line per document elsewhere; both on stderr."""

    def __init__(self) -> None:
        """Make ready; nothing shows before the first document."""
        self._console = _console(error=True)
        self._bar: Bar | None = None
        self._task: TaskID | None = None
        self._done = self._total = 0

    def __enter__(self) -> Progress:
        return self

    def start(self, total: int) -> None:
        """Show how many documents there will be."""
        self._total = total
        if self._console.is_terminal:
            columns = (TextColumn("{task.description}"), BarColumn(), MofNCompleteColumn())
            self._bar = Bar(*columns, console=self._console, transient=True)
            self._bar.start()
            self._task = self._bar.add_task("writing", total=total)

    def step(self, title: str) -> None:
        """Show that one more is written."""
        self._done += 1
        if self._bar is not None and self._task is not None:
            self._bar.update(self._task, advance=1, description=escape(title[:48]))
        else:
            print(f"[{self._done}/{self._total}] {title}", file=sys.stderr, flush=True)

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None) -> None:
        if self._bar is not None:
            self._bar.stop()


def print_findings(findings: Sequence[Finding], lines: SourceLines) -> None:
    """Print each finding: a place that an editor can open, the studio's own line, what is wrong, what to do."""
    console = _console(error=True)
    for finding in findings:
        place = finding.place
        where = ":".join(str(part) for part in (place.file, place.line, place.column)[: 3 if place.line else 1])
        kind = "accepted" if finding.accepted is not None else str(finding.weight)
        colour = {"stop": "red", "caution": "yellow", "accepted": "green"}[kind]
        console.print(f"[bold]{escape(where)}[/]: [bold {colour}]{finding.name}[/] ({kind})")
        text = lines.at(place)
        if text is not None:
            width = max(1, min(place.width, len(text) - place.column + 1))
            console.print(f"{place.line:>5} | {escape(text)}")
            console.print(f"      | {' ' * (place.column - 1)}[{colour}]{'^' * width}[/]")
        console.print(escape(finding.wrong))
        console.print(escape(f"Accepted: {finding.accepted}" if finding.accepted is not None else finding.remedy))
        console.print()


def tally(findings: Sequence[Finding]) -> str:
    """Say how many findings of each kind there are."""
    stops = sum(finding.stops for finding in findings)
    accepted = sum(finding.accepted is not None for finding in findings)
    cautions = sum(finding.weight is Weight.CAUTION and finding.accepted is None for finding in findings)
    if not findings:
        return "Nothing found: no stop, no caution."
    words = (
        f"{stops} {'stop' if stops == 1 else 'stops'}" if stops else "",
        f"{cautions} {'caution' if cautions == 1 else 'cautions'}" if cautions else "",
        f"{accepted} accepted with a reason" if accepted else "",
    )
    return f"Found: {', '.join(word for word in words if word)}."


def print_tally(findings: Sequence[Finding]) -> None:
    """Print how many findings of each kind there are."""
    _console().print(tally(findings))


def print_published(outcome: Outcome, output: Path) -> None:
    """Print what was written where, what was left out, and what was found."""
    console = _console()
    pressed = outcome.pressed
    if pressed is None:
        console.print("Nothing was written: a stop has to be mended first.")
    else:
        for folder, what in ((Folder.SITE, "to upload"), (Folder.PRINT, "for the studio only")):
            count = sum(where is folder for where, _ in pressed.written)
            console.print(f"Wrote {count} files to {escape(str(output / folder.value))}/ ({what}).")
        if outcome.left_out:
            console.print(f"Left out, since a stop is about them: {', '.join(sorted(outcome.left_out))}.")
        if pressed.pdf_missing:
            console.print(escape(pressed.pdf_missing))
        for warning in pressed.warnings:
            console.print(escape(warning))
    console.print(tally(outcome.findings))


def print_table(table: WeighTable) -> None:
    """Print one batch."""
    console = Console(highlight=False, width=None if sys.stdout.isatty() else 140)
    grid = Table(title=escape(table.title), title_justify="left", title_style="bold", box=None, pad_edge=False, padding=(0, 2, 0, 0))
    for heading in HEADINGS:
        grid.add_column(heading, justify="right" if heading in ("share", "exact", "weigh") else "left", overflow="fold")
    for row in table.rows:
        grid.add_row(*(escape(cell) for cell in row))
    grid.add_section()
    grid.add_row(*(f"[bold]{escape(cell)}[/]" if cell else "" for cell in table.total))
    console.print(grid)
    for note in table.notes:
        console.print(escape(note))
    console.print()


def print_card(lines: Sequence[CardLine]) -> None:
    """Print an ingredient card."""
    console = Console(highlight=False, width=None if sys.stdout.isatty() else 120)
    for line in lines:
        indented = Table.grid()
        indented.add_column(width=2 * line.indent)
        indented.add_column(overflow="fold")
        indented.add_row("", f"[bold]{escape(line.text)}[/]" if line.strong else escape(line.text))
        console.print(indented)
