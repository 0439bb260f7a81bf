"""The preview over real HTTP on this machine: what it shows, to whom, and what it lives through."""

import http.client
import os
import re
import shutil
import signal
import socket
import subprocess
import sys
from collections.abc import Callable, Iterator
from contextlib import closing, contextmanager
from datetime import date
from pathlib import Path
from queue import Queue
from threading import Thread

import pytest

from builder.model.finding import Finding, Weight
from builder.model.place import Place
from builder.press.folder import FolderError
from builder.preview import PortTakenError, Preview
from builder.preview.built import Built, Passage
from builder.preview.marks import flagged
from tests.making import sure
from tests.test_findings import FINDINGS

TODAY = date(2027, 1, 1)
WAITS = 60  # seconds; far more than it takes, for a machine that is busy


class Shown:
    """A preview that runs in a thread of this test."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.states: Queue[Built] = Queue()
        self.preview = Preview(folder, lambda: TODAY, self.states.put)
        self.thread = Thread(target=self.preview.run)
        self.thread.start()
        self.states.get(timeout=WAITS)

    def ask(self, path: str, host: str | None = None, method: str = "GET") -> tuple[int, str, dict[str, str]]:
        with closing(http.client.HTTPConnection("127.0.0.1", self.preview.port, timeout=WAITS)) as line:
            line.putrequest(method, path, skip_host=True)
            if host != "":
                line.putheader("Host", host or f"127.0.0.1:{self.preview.port}")
            line.endheaders()
            answer = line.getresponse()
            return answer.status, answer.read().decode("utf-8", "replace"), dict(answer.getheaders())

    def page(self, path: str) -> str:
        return self.ask(path)[1]

    def until(self, holds: Callable[[set[str]], bool]) -> Built:
        """Wait for the state after a change for which something holds."""
        while True:
            state = self.states.get(timeout=WAITS)
            if holds({one.finding.name for one in state.passages}):
                return state


@contextmanager
def showing(folder: Path) -> Iterator[Shown]:
    shown = Shown(folder)
    try:
        yield shown
    finally:
        shown.preview.stop()
        shown.thread.join(timeout=WAITS)
    assert not shown.thread.is_alive()


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return Path(shutil.copytree(FINDINGS / "_sound", tmp_path / "studio"))


@pytest.fixture
def shown(folder: Path) -> Iterator[Shown]:
    """Yield a preview of a studio that a test changes."""
    with showing(folder) as one:
        yield one


@pytest.fixture(scope="module")
def unchanged(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Shown]:
    """Yield a preview of a studio that stays as it is, for all who ask alone."""
    with showing(Path(shutil.copytree(FINDINGS / "_sound", tmp_path_factory.mktemp("unchanged") / "studio"))) as one:
        yield one


def a_class(shown: Shown) -> tuple[str, Path]:
    """Return the path of a page of a class, and the file of a recipe that it makes."""
    entry = next(one for one in shown.preview.shown.built.listed.entries.values() if one.kind == "class page")
    recipe = sure(shown.preview.shown.built.studio).classes[entry.class_key].recipe_keys[0]
    return f"/{entry.path}", shown.folder / "recipes" / f"{recipe}.yaml"


def test_pages_and_sheets_are_shown_and_only_those_of_the_preview_have_a_script(unchanged: Shown) -> None:
    path, _ = a_class(unchanged)
    status, html, headers = unchanged.ask(path)
    assert status == 200
    assert re.findall(r'<script[^>]*src="([^"]*)"', html) == ["/_preview/refresh.js"]
    assert "script-src 'self'" in headers["Content-Security-Policy"]
    assert "http-equiv" not in html
    for address in re.findall(r'<link rel="(?:stylesheet|icon)"[^>]*href="([^"]*)"', html):
        assert unchanged.ask(address if address.startswith("/") else f"/site/{address.removeprefix('../')}")[0] == 200, address
    overview = unchanged.page("/")
    sheets = re.findall(r'href="(/print/[^"]*teacher\.pdf)"', overview)
    assert sheets
    sheet = unchanged.page(sheets[0])
    fonts = re.findall(r'url\("([^"]*)"\)', unchanged.page("/_preview/fonts.css"))
    assert fonts
    assert all(address.startswith("/_preview/fonts/") for address in fonts)
    assert unchanged.ask(fonts[0])[0] == unchanged.ask(fonts[-1])[0] == 200
    assert "<!DOCTYPE html>" in sheet
    assert f'href="{sheets[0]}?pdf"' in sheet
    # What the composer makes, and so what is published, holds no script of the preview.
    assert all("_preview" not in document.html for document in unchanged.preview.shown.built.made.values() if document)


def test_a_sheet_is_pressed_when_it_is_asked_for(unchanged: Shown) -> None:
    sheet = next(path for path in unchanged.preview.shown.built.listed.entries if path.endswith("checklist.pdf"))
    status, body, headers = unchanged.ask(f"/{sheet}?pdf")
    assert (status, headers["Content-Type"], body[:5]) == (200, "application/pdf", "%PDF-")
    assert not list(unchanged.folder.rglob("*.pdf"))


def test_a_sheet_that_the_engine_cannot_make_says_so(unchanged: Shown, monkeypatch: pytest.MonkeyPatch) -> None:
    def fail(*_: object) -> bytes:
        raise FolderError("checklist.pdf cannot be made.", "Take out what was written last.")

    monkeypatch.setattr("builder.preview.shown.press_one", fail)
    sheet = next(path for path in unchanged.preview.shown.built.listed.entries if path.endswith("checklist.pdf"))
    status, body, _ = unchanged.ask(f"/{sheet}?pdf")
    assert (status, body) == (503, "checklist.pdf cannot be made. Take out what was written last.\n")


@pytest.mark.parametrize("host", ["", "127.0.0.1", "studio.example", "127.0.0.1.studio.example:8250", "0.0.0.0:8250"])
def test_who_asks_under_another_name_is_told_nothing(unchanged: Shown, host: str) -> None:
    for path in ("/", "/site/index.html", "/_preview/refresh.js", "/_preview/events?at=&seen="):
        status, body, _ = unchanged.ask(path, host)
        assert status == 403
        assert unchanged.preview.shown.built.name not in body
    assert unchanged.ask("/", f"localhost:{unchanged.preview.port}")[0] == 200


def test_only_this_machine_is_listened_to(unchanged: Shown) -> None:
    assert unchanged.preview._server.server_address[0] == "127.0.0.1"


@pytest.mark.parametrize(
    "path",
    [
        "/site/../studio.yaml", "/studio.yaml", "/_preview/studio/studio.yaml", "/_preview/studio/../studio.yaml",
        "/_preview/styles/../frames/page.html", "/_preview/styles/%2e%2e%2fframes%2fpage.html", "/_preview/running.py", "/%2e%2e/x",
        "/_preview/fonts/0/../x",
        "/_preview/fonts/99/x.ttf", "/_preview/fonts/0/",
    ],
)  # fmt: skip
def test_no_path_leads_to_a_file_of_the_disk(unchanged: Shown, path: str) -> None:
    status, body, _ = unchanged.ask(path)
    assert status == 404
    assert "name:" not in body


def test_a_finding_stands_at_the_head_of_the_page_and_beside_its_passage(shown: Shown) -> None:
    path, _ = a_class(shown)
    lesson = shown.folder / "classes" / path.split("/")[-1].removesuffix(".html") / "lesson.md"
    before = shown.page(path)
    assert "preview-flag" not in before
    text = lesson.read_text(encoding="utf-8")
    assert "1. " in text
    lesson.write_text(text.replace("1. ", "1. Pour the water into the lye.\n1. ", 1), encoding="utf-8")
    shown.until(lambda names: "unsafe-step" in names)
    html = shown.page(path)
    assert "Pour the water into the lye" in html
    assert "unsafe-step" in html
    assert re.search(r"lesson\.md:\d+", html)


def test_a_caution_about_a_line_is_flagged_where_the_sheet_says_it() -> None:
    finding = Finding("a-name", Weight.CAUTION, Place("recipes/x.yaml", 3, 7, 9), "Something.", "Do it.")
    passage = Passage(finding, "      olive oil: 65 %", frozenset(), frozenset())
    html = (
        "<html><head><title>Olive oil</title></head><body><svg><text>olive oil</text></svg>"
        '<p title="olive oil">Of Olive&nbsp;oil</p></body>'
    )
    marked, found = flagged(html, [passage])
    assert found == {0}
    assert re.search(r'<p title="olive oil"><a class="preview-flag caution" id="at-0"[^>]*>caution</a> Of Olive&nbsp;oil</p>', marked)
    assert marked.count("preview-flag") == 1


def test_a_half_written_file_ends_nothing_and_the_last_sound_page_stays(shown: Shown) -> None:
    path, recipe = a_class(shown)
    sound = recipe.read_bytes()
    for part in (sound[: len(sound) // 2], b"name: [", b"\xff\xfe\x00", b""):
        recipe.write_bytes(part)
        shown.until(bool)
        status, html, _ = shown.ask(path)
        assert status == 200
        assert "when it was last sound" in html
    recipe.unlink()
    shown.until(bool)
    recipe.write_bytes(sound)
    shown.until(lambda names: not names)
    assert "when it was last sound" not in shown.page(path)


@pytest.mark.long
def test_quick_saves_end_in_the_last_of_them(shown: Shown) -> None:
    path, recipe = a_class(shown)
    text = recipe.read_text(encoding="utf-8")
    name = sure(re.search(r"^name: (.*)$", text, re.MULTILINE))[1]
    for number in range(12):
        # As editors save: a new file takes the place of the old one.
        beside = recipe.with_name(f".{recipe.name}.swp")
        beside.write_text(text.replace(f"name: {name}", f"name: {name} {number}", 1), encoding="utf-8")
        beside.replace(recipe)
    while f"{name} 11" not in shown.page(path):
        shown.states.get(timeout=WAITS)


@pytest.mark.long
def test_the_browser_hears_of_a_change_of_its_page_and_not_of_others(shown: Shown) -> None:
    path, recipe = a_class(shown)
    seen = sure(re.search(r'data-seen="(\w+)"', shown.page(path)))[1]
    other = sure(re.search(r'data-seen="(\w+)"', shown.page("/site/404.html")))[1]
    heard: Queue[tuple[str, str]] = Queue()

    def listen(what: str, at: str, sum_: str) -> None:
        heard.put((what, shown.ask(f"/_preview/events?at={at}&seen={sum_}")[1]))

    listeners = [Thread(target=listen, args=(path, path[1:], seen)), Thread(target=listen, args=("404", "site/404.html", other))]
    for one in listeners:
        one.start()
    text = recipe.read_text(encoding="utf-8")
    recipe.write_text(re.sub(r"^name: .*$", "name: Another name", text, count=1, flags=re.MULTILINE), encoding="utf-8")
    what, said = heard.get(timeout=WAITS)
    assert what == path
    assert "event: changed" in said
    shown.preview.stop()
    what, said = heard.get(timeout=WAITS)
    assert what == "404"
    assert "event: ended" in said
    for one in listeners:
        one.join(timeout=WAITS)


@pytest.mark.long
def test_a_port_that_is_taken_is_refused_and_without_one_a_free_one_is_found(folder: Path) -> None:
    with closing(socket.socket()) as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        with pytest.raises(PortTakenError, match=str(taken.getsockname()[1])):
            Preview(folder, lambda: TODAY, lambda _: None, taken.getsockname()[1])
    with showing(folder) as one, showing(folder) as other:
        assert one.preview.port != other.preview.port


@pytest.mark.long
@pytest.mark.skipif(os.name == "nt", reason="signals are sent otherwise there")
def test_the_command_ends_on_ctrl_c_and_leaves_nothing_behind(folder: Path, tmp_path: Path) -> None:
    scratch = tmp_path / "scratch"
    scratch.mkdir()
    before = sorted(folder.rglob("*"))
    command = [sys.executable, "-m", "builder", "preview", str(folder), "--today", "2027-01-01"]
    running = subprocess.Popen(
        command,
        stdout=subprocess.PIPE,
        text=True,
        env={**os.environ, "TMPDIR": str(scratch)},
        preexec_fn=lambda: signal.signal(signal.SIGINT, signal.default_int_handler),
    )
    said = ""
    while "Ctrl-C" not in said:
        line = sure(running.stdout).readline()
        assert line, said
        said += line
    port = int(sure(re.search(r"http://127\.0\.0\.1:(\d+)/", said))[1])
    with closing(http.client.HTTPConnection("127.0.0.1", port, timeout=WAITS)) as asked:
        asked.request("GET", "/")
        assert asked.getresponse().status == 200
    running.send_signal(signal.SIGINT)
    out, _ = running.communicate(timeout=WAITS)
    assert running.returncode == 0
    assert "Ended; nothing was written." in out
    assert sorted(folder.rglob("*")) == before
    assert not list(scratch.iterdir())
