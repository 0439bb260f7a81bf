"""A real browser for tests: Chromium, spoken to through two pipes in the open DevTools protocol. Debian's package has it.

There is no skipping: where no Chromium is found, the test fails and says what to install.
"""

import base64
import json
import os
import shutil
import subprocess
from collections.abc import Iterator
from contextlib import contextmanager
from importlib import metadata
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

NAMES = ("chromium", "chromium-browser", "google-chrome")
# It opens files of this machine alone, and asks for nothing from elsewhere.
FLAGS = (
    *("--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking"),
    *("--disable-component-update", "--disable-sync", "--disable-extensions", "--hide-scrollbars", "--force-color-profile=srgb"),
    *("--disable-dev-shm-usage", "--remote-debugging-pipe"),
)
PATIENCE = 120
# What is answered by a page that is being left: its end, or no context to run a script in.
BETWEEN_PAGES = ("navigated or closed", "context was destroyed", "Cannot find context", "Cannot find default execution context")


def axe_source() -> str:
    """Return the program of axe-core, which checks a page by rules on accessibility; its package is read and never imported."""
    files = metadata.distribution("axe-playwright-python").files or ()
    (script,) = (file for file in files if file.name == "axe.min.js")
    return Path(str(script.locate())).read_text(encoding="utf-8")


class Browser:
    """One page of a running Chromium. Whatever it says on its console, and whatever it asks for, is noted."""

    def __init__(self, into: int, out: int) -> None:
        self._into, self._out, self._said = into, out, bytearray()
        self._number, self._session = 0, ""
        self._events: list[dict[str, Any]] = []
        target = self.send("Target.createTarget", url="about:blank")["targetId"]
        self._session = self.send("Target.attachToTarget", targetId=target, flatten=True)["sessionId"]
        for domain in ("Page", "Runtime", "Log", "Network"):
            self.send(f"{domain}.enable")

    def send(self, method: str, **parameters: Any) -> Any:
        """Do one thing and give its result."""
        self._number += 1
        message = {"id": self._number, "method": method, "params": parameters}
        if self._session:
            message["sessionId"] = self._session
        whole = json.dumps(message).encode() + b"\0"
        while whole:
            whole = whole[os.write(self._into, whole) :]
        while (answer := self._read()).get("id") != self._number:
            self._events.append(answer)
        if "error" in answer:
            raise AssertionError(f"{method}: {answer['error']}")
        return answer["result"]

    def _read(self) -> dict[str, Any]:
        while b"\0" not in self._said:
            more = os.read(self._out, 1 << 20)
            assert more, "Chromium has ended by itself"
            self._said += more
        said, _, rest = self._said.partition(b"\0")
        self._said = bytearray(rest)
        answer: dict[str, Any] = json.loads(said)
        return answer

    def open(self, page: Path | str) -> None:
        """Open a page and wait until it is loaded."""
        self._events.clear()
        self.send("Page.navigate", url=page if isinstance(page, str) else page.resolve().as_uri())
        while not any(event.get("method") == "Page.loadEventFired" for event in self._events):
            self._events.append(self._read())

    @property
    def complaints(self) -> list[str]:
        """Return what the console says of the page that is open."""
        self.evaluate("1")
        logged = [event["params"] for event in self._events if event.get("method") in ("Log.entryAdded", "Runtime.exceptionThrown")]
        return [str(one.get("entry", one.get("exceptionDetails", {})).get("text", one)) for one in logged]

    @property
    def asked_for(self) -> list[str]:
        """Return every address that the page has asked for."""
        return [event["params"]["request"]["url"] for event in self._events if event.get("method") == "Network.requestWillBeSent"]

    def evaluate(self, script: str) -> Any:
        """Return what a script comes to on the page."""
        done = self.send("Runtime.evaluate", expression=script, awaitPromise=True, returnByValue=True)
        if "exceptionDetails" in done:
            raise AssertionError(done["exceptionDetails"])
        return done["result"].get("value")

    def evaluate_between_pages(self, script: str) -> Any:
        """Return what a script comes to, and None where the page gives way to another in the meantime."""
        try:
            return self.evaluate(script)
        except AssertionError as gone:
            if any(words in str(gone) for words in BETWEEN_PAGES):
                return None
            raise

    def size(self, width: int, height: int = 900, scale: float = 1) -> None:
        """Make the window so many CSS pixels wide and high; `scale` is the zoom, or the density of the screen."""
        self.send("Emulation.setDeviceMetricsOverride", width=width, height=height, deviceScaleFactor=scale, mobile=False)

    def look(self, media: str = "", **features: str) -> None:
        """Set the medium, and what the reader prefers, such as `prefers_color_scheme="dark"`."""
        preferred = [{"name": name.replace("_", "-"), "value": value} for name, value in features.items()]
        self.send("Emulation.setEmulatedMedia", media=media, features=preferred)

    def press_key(self, key: str) -> None:
        """Press a key and let it go."""
        code = {"Tab": 9, "Enter": 13}[key]
        text = {"text": "\r"} if key == "Enter" else {}
        self.send("Input.dispatchKeyEvent", type="keyDown", key=key, code=key, windowsVirtualKeyCode=code, **text)
        self.send("Input.dispatchKeyEvent", type="keyUp", key=key, code=key, windowsVirtualKeyCode=code)

    def pdf(self, width: float = 8.5, height: float = 11) -> bytes:
        """Print the page, on paper of a size in inches; without tags, which say nothing of what is printed and take half the time."""
        how = {"preferCSSPageSize": False, "printBackground": False, "generateTaggedPDF": False}
        done = self.send("Page.printToPDF", paperWidth=width, paperHeight=height, **how)
        return base64.b64decode(done["data"])

    def picture(self, *, whole: bool = True) -> bytes:
        """Take a picture (PNG) of the page, or of what is seen of it."""
        return base64.b64decode(self.send("Page.captureScreenshot", captureBeyondViewport=whole, optimizeForSpeed=True)["data"])

    def close(self) -> None:
        """End it."""
        self._session = ""
        self.send("Browser.close")


@contextmanager
def browser() -> Iterator[Browser]:
    """Start Chromium, and end it."""
    found = next(filter(None, map(shutil.which, NAMES)), None)
    assert found, "No Chromium here: `bash .ci/set-up` installs it on Debian, `apt-get install chromium` by hand."
    with TemporaryDirectory(prefix="browser-", ignore_cleanup_errors=True) as home:
        theirs_in, ours_out = os.pipe()
        ours_in, theirs_out = os.pipe()

        def joined() -> None:
            spare = [os.dup2(fd, target) for fd, target in ((theirs_in, 13), (theirs_out, 14))]
            os.dup2(spare[0], 3)
            os.dup2(spare[1], 4)

        command = [found, *FLAGS, f"--user-data-dir={home}", "about:blank"]
        process = subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, close_fds=False, preexec_fn=joined)
        os.close(theirs_in)
        os.close(theirs_out)
        try:
            opened = Browser(ours_out, ours_in)
            yield opened
            opened.close()
            process.wait(PATIENCE)
        finally:
            if process.poll() is None:
                process.kill()
                process.wait()
