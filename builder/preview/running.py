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
from threading import Thread

from builder.preview.answers import Answering
from builder.preview.built import Built
from builder.preview.shown import Shown

HOST = "127.0.0.1"
# Tried in this order, so that an address that was kept still leads here the next day; any free one where all are taken.
PORTS = range(8250, 8270)


class PortTakenError(Exception):
    """The port that was asked for is in use, or may not be used."""


class Preview:
    """A studio that is shown, and the server that shows it."""

    def __init__(self, folder: Path, on: Callable[[], date], told: Callable[[Built], None], port: int | None = None) -> None:
        """Take a port. `told` hears each new state, the first of them once it runs. Raises PortTakenError."""
        self.shown = Shown(folder, on, told)
        self._server = _serve(type("_Answering", (Answering,), {"shown": self.shown}), port)
        self.port: int = self._server.server_port

    @property
    def address(self) -> str:
        """Return the address of the overview."""
        return f"http://{HOST}:{self.port}/"

    def run(self) -> None:
        """Answer until it is stopped."""
        watcher = Thread(target=self.shown.watch, daemon=True)
        watcher.start()
        try:
            self._server.serve_forever(poll_interval=0.2)
        finally:
            self.shown.end()
            self._server.server_close()
            watcher.join(timeout=5)

    def stop(self) -> None:
        """End `run`; called from another thread than that in which it runs."""
        self.shown.end()
        self._server.shutdown()


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
        """Print nothing of a browser that went away in the middle of an answer."""
