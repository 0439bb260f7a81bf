"""What a preview shows: one thread watches and works out, the others ask for pages; what they get is of one state."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from pathlib import Path
from threading import Condition, Event, Lock, RLock

from builder.press import press_one
from builder.preview.built import Built, build
from builder.preview.pages import overview, page_of, page_without
from builder.preview.watching import changes


class Shown:
    """What is shown of one studio, from one state of its files to the next."""

    def __init__(self, folder: Path, on: Callable[[], date], told: Callable[[Built], None]) -> None:
        """Take a studio's folder. `told` hears each new state, the first of them once it is watched."""
        self.folder = folder.resolve()
        self._on, self._told = on, told
        self._ended, self._changed, self._at_work, self._in_press = Event(), Condition(), RLock(), Lock()
        # The last state that had a document which the present one has not.
        self._last_sound: dict[str, Built] = {}
        self._version = 0
        self.built, self._ready = Built(self.folder), Event()

    def watch(self) -> None:
        """Work out each state of the files, until it is ended."""
        for _ in changes(self.folder, self._ended):
            with self._at_work:
                self._last_sound |= dict.fromkeys(self.built.listed.entries, self.built)
                self.built = build(self.folder, self._on)
                for path in self.built.listed.entries:
                    self._last_sound.pop(path, None)
            self._ready.set()
            self._told(self.built)
            with self._changed:
                self._version += 1
                self._changed.notify_all()

    def end(self) -> None:
        """End all threads that watch or wait."""
        self._ended.set()
        self._ready.set()
        with self._changed:
            self._changed.notify_all()

    def html(self, path: str) -> tuple[int, str]:
        """Return a page of the preview with its status; an empty path is the overview. Whoever asks at once waits for the first look."""
        self._ready.wait()
        with self._at_work:
            built = self.built
            if not path:
                return 200, overview(built)
            try:
                document = built.document(path)
            except KeyError:
                return self._as_it_was(built, path)
            except Exception as error:
                return 200, page_without(built, path, path, f"This page cannot be made: {error}")
            if document is None:
                return 200, page_without(built, path, path, "There is nothing on this sheet now, and so it is not printed.")
            return 200, page_of(built, path, document, last_sound=False)

    def _as_it_was(self, built: Built, path: str) -> tuple[int, str]:
        document = self._last_sound[path].document(path) if path in self._last_sound else None
        if document is not None:
            return 200, page_of(built, path, document, last_sound=True)
        note = "This page is not among those that can be made now: what stands below holds it back, or it is named otherwise."
        return 404, page_without(built, path, path, note)

    def text(self, path: str) -> str | None:
        """Return what is no page as it will be published: a calendar, a feed; None where there is none."""
        with self._at_work:
            document = self.built.document(path) if path in self.built.listed.entries else None
            return document.html if document else None

    def pdf(self, path: str) -> bytes | None:
        """Press a sheet; None where there is none. Raises OSError where this machine cannot."""
        with self._at_work:
            document = self.built.document(path) if path in self.built.listed.entries else None
        with self._in_press:
            return press_one(document, self.folder, self.built.layouts) if document else None

    def wait_for_change(self, path: str, seen: str, said: Callable[[], None]) -> bool:
        """Wait until a page looks otherwise than it was seen, and say whether it does; False at the end. `said` is called now and then."""
        while not self._ended.is_set():
            with self._changed:
                version = self._version
            if f'data-seen="{seen}"' not in self.html(path)[1]:
                return True
            with self._changed:
                while self._version == version and not self._ended.is_set():
                    if not self._changed.wait(timeout=10):
                        said()
        return False
