"""How far a publication has come: a bar on a terminal, a plain line for each document elsewhere; both on stderr."""

from __future__ import annotations

from types import TracebackType

from rich.progress import BarColumn, MofNCompleteColumn, TaskID, TextColumn
from rich.progress import Progress as Bar

from builder.terminal.consoles import open_console, plain, say

_WIDEST = 48


class Progress:
    """Hears how many documents there will be, and of each that is written."""

    def __init__(self) -> None:
        """Make ready; nothing shows before the first document."""
        self._console = open_console(error=True)
        self._bar: Bar | None = None
        self._task: TaskID | None = None
        self._done = self._total = 0

    def __enter__(self) -> Progress:
        return self

    def start(self, total: int) -> None:
        """Show how many documents there will be."""
        self._total = total
        if self._console.is_terminal:
            columns = (TextColumn("{task.description}", markup=False), BarColumn(), MofNCompleteColumn())
            self._bar = Bar(*columns, console=self._console, transient=True)
            self._bar.start()
            self._task = self._bar.add_task("writing", total=total)

    def step(self, place: str) -> None:
        """Show that one more is written, by its place in the output, the end of which tells most."""
        self._done += 1
        if self._bar is not None and self._task is not None:
            self._bar.update(self._task, advance=1, description=plain(place if len(place) <= _WIDEST else f"…{place[1 - _WIDEST :]}"))
        else:
            say(self._console, f"[{self._done}/{self._total}] {place}")

    def wait(self) -> None:
        """Show that another run is writing to the same folder."""
        say(self._console, "Another run is writing to this folder. This one waits until it is done.")

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None) -> None:
        if self._bar is not None:
            self._bar.stop()
