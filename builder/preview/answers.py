"""Requests to answers. Every path is looked up among what the preview holds; none is a path of the disk."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from functools import partial
from http.server import BaseHTTPRequestHandler, HTTPServer
from mimetypes import guess_type
from pathlib import Path
from urllib.parse import parse_qs, unquote, urlsplit

from builder.fonts.files import font_faces, font_folders
from builder.model.document import Origin
from builder.pictures import clean_picture, picture_at
from builder.press.folder import FolderError
from builder.preview.shown import Shown

_OURS = Path(__file__).parent
_OWN_FILES = ("refresh.js", "preview.css")
_FONT = re.compile(r"[\w-]+\.[a-z0-9]+\Z")
_DRAWING = re.compile(r"[\w-]+\.svg\Z")
# The folders of layouts from which a sheet is dressed, with the names of files that are given out.
_OF_LAYOUTS = {"styles": re.compile(r"[\w-]+\.css\Z"), "signs": _DRAWING}
_POLICY = (
    "default-src 'none'; script-src 'self'; connect-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; font-src 'self'; "
    "base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
)
_ALWAYS = {
    "Cache-Control": "no-store",
    "Content-Security-Policy": _POLICY,
    "X-Content-Type-Options": "nosniff",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Referrer-Policy": "no-referrer",
}


class Answering(BaseHTTPRequestHandler):
    """One request. `shown` is set by whoever makes the server."""

    shown: Shown
    server: HTTPServer
    server_version, sys_version = "stillroom", ""
    timeout = 60

    def do_HEAD(self) -> None:
        """Answer as for GET, without the content."""
        self._answer(with_body=False)

    def do_GET(self) -> None:
        """Answer."""
        self._answer(with_body=True)

    def log_message(self, format: str, *args: object) -> None:
        """Print nothing: the terminal shows findings."""

    def _answer(self, *, with_body: bool) -> None:
        self._with_body = with_body
        if self.headers.get("Host", "") not in (f"127.0.0.1:{self.server.server_port}", f"localhost:{self.server.server_port}"):
            self._send(403, b"This preview answers only to the machine on which it runs.\n", "text/plain; charset=utf-8")
            return
        asked = urlsplit(self.path)
        path, query = unquote(asked.path).lstrip("/"), parse_qs(asked.query, keep_blank_values=True)
        if path == "_preview/events":
            self._events(query)
        elif path.startswith("_preview/"):
            self._ours(path.removeprefix("_preview/"))
        elif "pdf" in query and path.endswith(".pdf"):
            self._pdf(path)
        else:
            self._page(path)

    def _page(self, path: str) -> None:
        path = f"{path}index.html" if path.endswith("/") else path
        file = self.shown.built.copied(path)
        if file is not None:
            made = partial(picture_at, width=file.width, wanted=f".{path.rpartition('.')[2]}") if file.origin is Origin.PICTURES else None
            self._file(self.shown.built.source_of(file), made, path)
            return
        if path and not path.endswith((".html", ".pdf")):
            text = self.shown.text(path)
            if text is None:
                self._send(404, b"", "text/plain")
            else:
                self._send(200, text.encode(), f"{guess_type(path)[0] or 'text/plain'}; charset=utf-8")
            return
        status, html = self.shown.html(path)
        self._send(status, html.encode(), "text/html; charset=utf-8")

    def _pdf(self, path: str) -> None:
        try:
            pdf = self.shown.pdf(path)
        except (OSError, FolderError) as error:
            self._send(503, f"{error}\n".encode(), "text/plain; charset=utf-8")
            return
        if pdf is None:
            self._send(404, b"There is no such sheet now.\n", "text/plain; charset=utf-8")
        else:
            self._send(200, pdf, "application/pdf")

    def _ours(self, name: str) -> None:
        kind, _, rest = name.partition("/")
        if name in _OWN_FILES:
            self._file(_OURS / name)
        elif kind in _OF_LAYOUTS and _OF_LAYOUTS[kind].match(rest):
            self._file(self.shown.built.of_layouts(f"{kind}/{rest}"))
        elif kind == "studio":
            self._file(self.shown.built.picture(rest), lambda data, ending: clean_picture(data, ending).data)
        elif name == "fonts.css":
            self._send(200, _faces().encode(), "text/css; charset=utf-8")
        elif kind == "fonts":
            self._file(_font(rest))
        else:
            self._send(404, b"", "text/plain")

    def _file(self, file: Path | None, made: Callable[[bytes, str], bytes] | None = None, name: str = "") -> None:
        try:
            content = file.read_bytes() if file else None
            if content is not None and made is not None and file is not None:
                content = made(content, file.suffix)
        except (OSError, ValueError):
            content = None
        if content is None or file is None:
            self._send(404, b"", "text/plain")
        else:
            self._send(200, content, guess_type(name or file.name)[0] or "application/octet-stream")

    def _events(self, query: Mapping[str, list[str]]) -> None:
        """Hold the connection open until the page would look different, and send one event."""
        self._head(200, "text/event-stream", None)
        self._say(": here\nretry: 1000\n\n")
        at, seen = query.get("at", [""])[0], query.get("seen", [""])[0]
        changed = self.shown.wait_for_change(at, seen, lambda: self._say(": still here\n\n"))
        self._say(f"event: {'changed' if changed else 'ended'}\ndata: {at}\n\n")

    def _say(self, text: str) -> None:
        self.wfile.write(text.encode())
        self.wfile.flush()

    def _send(self, status: int, content: bytes, kind: str) -> None:
        self._head(status, kind, len(content))
        if self._with_body:
            self.wfile.write(content)

    def _head(self, status: int, kind: str, length: int | None) -> None:
        self.send_response(status)
        for name, value in _ALWAYS.items():
            self.send_header(name, value)
        self.send_header("Content-Type", kind)
        if length is not None:
            self.send_header("Content-Length", str(length))
        self.end_headers()


def _faces() -> str:
    """Return the style rules that name each font, each with its address here."""
    numbers = {folder: number for number, folder in enumerate(font_folders())}
    return font_faces(lambda file: f"/_preview/fonts/{numbers[file.parent]}/{file.name}")


def _font(address: str) -> Path | None:
    """Return the font at an address of those rules; None where there is none."""
    number, _, name = address.partition("/")
    folder = dict(enumerate(map(str, font_folders()))).get(int(number) if number.isdecimal() else -1)
    return Path(folder) / name if folder and _FONT.match(name) and (Path(folder) / name).is_file() else None
