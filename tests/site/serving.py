"""The site as a host of files serves it: from its root or from a folder of it, with the site's own page for what is not there.

In pieces it comes as over a poor line: the text of a page a little at a time, a drawing or a style a moment after it is asked for.
"""

import time
from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from http import HTTPStatus
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from threading import Thread
from typing import Any

PIECES = 25
_PAUSE, _LATE = 0.02, 0.1


class _Host(SimpleHTTPRequestHandler):
    """Answers from the files of a site that lie under some path of the host."""

    def __init__(self, *arguments: Any, site: Path, under: str, in_pieces: bool) -> None:
        self._site, self._under, self._in_pieces = site, under, in_pieces
        super().__init__(*arguments, directory=str(site))

    def do_GET(self) -> None:
        path = self.path.partition("?")[0].partition("#")[0]
        file = self._site / path.removeprefix(self._under).lstrip("/")
        if not path.startswith(f"{self._under}/") or not file.is_file():
            self._send(self._site / "404.html", HTTPStatus.NOT_FOUND)
        else:
            self._send(file, HTTPStatus.OK)

    def _send(self, file: Path, status: HTTPStatus) -> None:
        content = file.read_bytes()
        self.send_response(status)
        self.send_header("Content-Type", self.guess_type(str(file)))
        self.send_header("Content-Length", str(len(content)))
        self.end_headers()
        if not self._in_pieces:
            self.wfile.write(content)
        elif file.suffix == ".html":
            piece = len(content) // PIECES + 1
            for begin in range(0, len(content), piece):
                self.wfile.write(content[begin : begin + piece])
                time.sleep(_PAUSE)
        else:
            time.sleep(_LATE)
            self.wfile.write(content)

    def log_message(self, *_: Any) -> None:
        """Say nothing."""


@contextmanager
def served(site: Path, under: str = "", *, in_pieces: bool = False) -> Iterator[str]:
    """Serve a site to this machine alone, below a path such as `/soap`; give the address of its folder."""
    host = ThreadingHTTPServer(("127.0.0.1", 0), partial(_Host, site=site, under=under, in_pieces=in_pieces))
    thread = Thread(target=host.serve_forever, args=(_PAUSE,), daemon=True)
    thread.start()
    try:
        yield f"http://127.0.0.1:{host.server_port}{under}/"
    finally:
        host.shutdown()
        thread.join()
        host.server_close()
