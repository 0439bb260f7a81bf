"""One studio is tried with one command: what must hold whatever it holds. The findings are taken as they are handed to the terminal."""

import contextlib
import io
import re
import tempfile
import traceback
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path
from unittest.mock import patch

from builder import cli
from builder.cache import compiled, results
from builder.cache.folder import open_folder
from builder.model.finding import Finding
from builder.model.place import Place
from builder.press import missing_pdf_engine, pool
from builder.read.text.source_lines import SourceLines
from builder.tasks import told
from builder.terminal.findings import print_findings
from tests.fuzz.bases import SOUND
from tests.fuzz.spoiling import lay_out, spoilt
from tests.fuzz.watching import TooSlowError, watched
from tests.published import only_pages

SECONDS = 5
_OURS = re.compile(r"Traceback|\bFraction\(|\bDecimal\(|object at 0x|<class '|<function |Error\b.*\bline \d+, in ")
_COMMANDS = ("publish", "weigh", "plan", "shop", *["check"] * 8)
CONTENT = Path(__file__).parent.parent.parent


@dataclass
class Trial:
    """What came of one seed; `faults` is empty where all is as it should be."""

    seed: int
    command: str
    done: list[str]
    status: object = None
    err: str = ""
    findings: tuple[Finding, ...] = ()
    faults: list[str] = field(default_factory=list)


def try_seed(seed: int, folder: Path, *, pdf: bool = False, small: bool = False) -> Trial:
    """Spoil a studio into an empty folder, run a command on it, and judge what came of it."""
    files, done = spoilt(seed, small=small)
    studio = folder / "studio"
    lay_out(files, studio)
    _load_what_is_shared()
    trial = Trial(seed, _COMMANDS[seed % len(_COMMANDS)], done)
    output = folder / "to"
    output.mkdir()
    arguments = [trial.command, str(studio), *_more(trial.command, files, output), "--today", "2027-01-01"]
    allowed = [output] if trial.command == "publish" else []
    written = io.BytesIO()
    out, err = io.TextIOWrapper(io.BytesIO(), encoding="utf-8"), io.TextIOWrapper(written, encoding="utf-8", errors="backslashreplace")
    kept: list[Finding] = []
    with (
        patch.object(told, "print_findings", _keeping(kept)),
        patch.object(compiled, "open_folder", _without_keeping),  # the cache is no place of a studio
        patch.object(results, "sum_of_run", lambda *_, **__: None),
        _without_pdf(pdf),
        patch.object(tempfile, "tempdir", str(output)),
    ):
        try:
            with watched(allowed, SECONDS if not pdf else 60) as watch, contextlib.redirect_stdout(out), contextlib.redirect_stderr(err):
                trial.status = cli.main(arguments)
            trial.faults += watch.breaches
        except TooSlowError:
            trial.faults.append(f"more than {SECONDS} s:\n{traceback.format_exc()[-3000:]}")
        except (Exception, SystemExit):
            trial.faults.append(traceback.format_exc()[-4000:])
    out.flush()
    err.flush()
    trial.err = written.getvalue().decode("utf-8")
    trial.findings = tuple(kept)
    if not trial.faults:
        trial.faults += [*_wrong_status(trial), *_wrong_words(trial), *_wrong_places(trial, studio)]
    return trial


def _more(command: str, files: Mapping[str, bytes], output: Path) -> list[str]:
    first = {kind: next((name.split("/")[1] for name in sorted(files) if name.startswith(kind)), "x") for kind in ("recipes/", "classes/")}
    return {
        "publish": ["--only-sound", "--to", str(output / "out")],
        "weigh": [first["recipes/"].removesuffix(".yaml")],
        "plan": [first["classes/"]],
    }.get(command, [])


@cache
def _load_what_is_shared() -> None:
    """Load what ships, which is kept in the user's cache, and what looks for the PDF engine with the machine's own programs."""
    missing_pdf_engine()
    with contextlib.redirect_stdout(io.StringIO()), contextlib.redirect_stderr(io.StringIO()):
        cli.main(["check", str(SOUND)])


def _without_keeping(make: bool) -> contextlib.AbstractContextManager[int | None]:
    return contextlib.nullcontext() if make else open_folder(make)


def _keeping(kept: list[Finding]) -> Callable[[Sequence[Finding], SourceLines], None]:
    plain = print_findings

    def keep(findings: Sequence[Finding], lines: SourceLines) -> None:
        kept.extend(findings)
        plain(findings, lines)

    return keep


def _without_pdf(pdf: bool) -> contextlib.AbstractContextManager[object]:
    # In this process alone: what others do is not seen here.
    return patch.object(pool, "_cores", lambda: 1) if pdf else only_pages()


def _wrong_status(trial: Trial) -> Iterator[str]:
    stops = any(finding.stops for finding in trial.findings)
    right = {0, 1} if trial.command in ("check", "publish") else {0, 1, 2}
    if trial.status not in right:
        yield f"status {trial.status}"
    elif trial.status != 2 and trial.status != int(stops):
        yield f"status {trial.status}, though there is {'a' if stops else 'no'} stop"
    if trial.status == 2 and not trial.err.strip():
        yield "nothing was said"


def _wrong_words(trial: Trial) -> Iterator[str]:
    found = _OURS.search(trial.err)
    if found:
        yield f"words of ours: {trial.err[max(0, found.start() - 200) : found.end() + 200]}"
    for one in trial.findings:
        if not one.wrong.strip() or not one.remedy.strip():
            yield f"{one.name} says nothing"


def _wrong_places(trial: Trial, studio: Path) -> Iterator[str]:
    for one in trial.findings:
        wrong = _wrong_place(one.place, CONTENT if one.place.file.startswith("content/") else studio)
        if wrong:
            yield f"{one.name} at {one.place}: {wrong}"


def _wrong_place(place: Place, root: Path) -> str:
    path = root / place.file
    if not place.file:
        return "no file"
    if place.line == 0:
        return ""
    if not path.is_file():
        return "there is no such file"
    lines = path.read_bytes().decode("utf-8-sig", "replace").replace("\r\n", "\n").replace("\r", "\n").split("\n")
    if place.line > len(lines):
        return f"the file has {len(lines)} lines"
    return "" if 1 <= place.column <= len(lines[place.line - 1]) + 1 else f"the line has {len(lines[place.line - 1])} signs"
