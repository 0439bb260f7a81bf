"""Waits until files of a studio change. The only module that knows the library that watches.

Decided: what the program writes itself (an output folder, its work folder) and what editors keep beside a file is not watched. Why: a
publication must not set off the preview, and a swap file is no change.
"""

from collections.abc import Iterator
from pathlib import Path
from threading import Event

from watchfiles import Change, watch

from builder.press.folder import MARK

_QUIET = 50  # milliseconds without a change until several quick ones count as one
_LONGEST = 400  # and the longest that a row of changes is waited for
_LOOKS_UP = 300  # and how often it is seen whether the preview has ended


def changes(folder: Path, ended: Event) -> Iterator[None]:
    """Yield something once it is watched, and each time that files of the folder have changed, until it is ended.

    It goes on where the folder goes away and comes back.
    """

    def counts(_: Change, path: str) -> bool:
        return _is_ours(folder, Path(path))

    begun = False
    while not ended.is_set():
        try:
            for changed in watch(
                folder,
                watch_filter=counts,
                stop_event=ended,
                step=_QUIET,
                debounce=_LONGEST,
                raise_interrupt=False,
                rust_timeout=_LOOKS_UP,
                yield_on_timeout=True,
            ):
                if changed or not begun:
                    begun = True
                    yield
        except OSError:
            # The folder is gone, perhaps for a moment: a program that keeps histories of folders does so.
            ended.wait(1)
            yield


def _is_ours(folder: Path, path: Path) -> bool:
    try:
        inside = path.relative_to(folder)
    except ValueError:
        return False
    if any(part.startswith((".", "#")) or part.endswith(("~", ".tmp", ".swp")) for part in inside.parts):
        return False
    return not any((above / MARK).exists() for above in path.parents if above != folder and above.is_relative_to(folder))
