"""The preview as it runs: one thread watches and works out, the others answer; all of them end with it.

Decided: pages come from 127.0.0.1 alone, and only for a request that names this machine as its host. Why: a roster is among the documents,
and a page from elsewhere could otherwise ask for it under a name that leads here.
"""

from __future__ import annotations

import os
from collections.abc import Callable
from datetime import date
from http.server import ThreadingHTTPServer
from pathlib import Path
from threading import Condition, Event, Lock, RLock, Thread

from builder.press import press_one
from builder.preview.built import Built, build
from builder.preview.pages import overview, page_of, page_without
from builder.preview.watching import changes

HOST = "127.0.0.1"
# Tried in this order, so that an address that was kept still leads here the next day; any free one where all are taken.
PORTS = range(8250, 8270)


class PortTakenError(Exception):
    """The port that was asked for is in use, or may not be used."""


class Preview:
    """What is shown of one studio, and the server that shows it."""

    def __init__(self, folder: Path, on: Callable[[], date], told: Callable[[Built], None], port: int | None = None) -> None:
        """Take a port. `told` hears each new state, the first of them once it runs. Raises PortTakenError."""
        from builder.preview.answers import Answering

        self.folder = folder.resolve()
        self._on, self._told = on, told
        self._ended, self._changed, self._at_work, self._in_press = Event(), Condition(), RLock(), Lock()
        # The last state that had a document which the present one has not.
        self._last_sound: dict[str, Built] = {}
        self._version = 0
        handler = type("_Answering", (Answering,), {"preview": self})
        self._server = _serve(handler, port)
        self.port: int = self._server.server_address[1]
        self.built, self._ready = Built(self.folder), Event()

    @property
    def address(self) -> str:
        """Return the address of the overview."""
        return f"http://{HOST}:{self.port}/"

    def run(self) -> None:
        """Answer until it is stopped."""
        watcher = Thread(target=self._watch, daemon=True)
        watcher.start()
        try:
            self._server.serve_forever(poll_interval=0.2)
        finally:
            self._ended.set()
            self._ready.set()
            with self._changed:
                self._changed.notify_all()
            self._server.server_close()
            watcher.join(timeout=5)

    def stop(self) -> None:
        """Let `run` come to its end; for another thread than that in which it runs."""
        self._ended.set()
        self._server.shutdown()

    def _watch(self) -> None:
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


def _serve(handler: type, port: int | None) -> ThreadingHTTPServer:
    for one in (port,) if port is not None else (*PORTS, 0):
        try:
            return _Server((HOST, one), handler)
        except OSError as error:
            refused = error
    raise PortTakenError(f"port {port} of this machine cannot be used ({refused.strerror}); leave --port out, and a free one is taken")


class _Server(ThreadingHTTPServer):
    daemon_threads = True
    block_on_close = False
    # On Windows this would let two programs share a port.
    allow_reuse_address = os.name != "nt"

    def handle_error(self, request: object, client_address: object) -> None:
        """Say nothing of a browser that went away in the middle of an answer."""
