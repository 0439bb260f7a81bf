"""What a page of the guide shows is done, in its order, in an empty folder. To write the answers anew: `python -m tests.guide.doing`."""

import os
import shlex
from collections.abc import Iterator
from contextlib import contextmanager, redirect_stderr, redirect_stdout
from io import StringIO
from pathlib import Path
from tempfile import TemporaryDirectory

from builder import cli
from builder.guide.pages import TOLD, WORKED
from builder.guide.shown import Change, ShownFile, what_is_done
from builder.library import CONTENT


def text_of(key: str) -> str:
    return (CONTENT / "guide" / f"{key}.md").read_text(encoding="utf-8")


@contextmanager
def being_in(folder: Path) -> Iterator[None]:
    before = Path.cwd()
    os.chdir(folder)
    try:
        yield
    finally:
        os.chdir(before)


def answered_anew(text: str, scratch: Path) -> str:
    """Do all of a page in a folder, and give the page with what the program answers now."""
    folder, done, at = scratch, [], 0
    for one in what_is_done(text):
        if isinstance(one, ShownFile):
            (folder / one.name).parent.mkdir(parents=True, exist_ok=True)
            (folder / one.name).write_text(one.text, encoding="utf-8")
        elif isinstance(one, Change):
            changed = one.made_in((folder / one.name).read_text(encoding="utf-8"))
            (folder / one.name).write_text(changed, encoding="utf-8")
        elif one.command.startswith("cd "):
            folder /= one.command.removeprefix("cd ")
        else:
            done += [text[at : one.at[0]], answer_to(one.command, folder)]
            at = one.at[1]
    return "".join((*done, text[at:]))


def answer_to(command: str, folder: Path) -> str:
    """Return what a command prints, results and findings, in a window that is as wide as a page."""
    name, *words = shlex.split(command)
    assert name == "stillroom", command
    said = StringIO()
    with being_in(folder), redirect_stdout(said), redirect_stderr(said):
        cli.main(words)
    return "".join(f"{line.rstrip()}\n" for line in said.getvalue().rstrip("\n").split("\n"))


def main() -> None:
    for key in (*TOLD, *WORKED):
        with TemporaryDirectory() as scratch:
            anew = answered_anew(text_of(key), Path(scratch))
        (CONTENT / "guide" / f"{key}.md").write_text(anew, encoding="utf-8")


if __name__ == "__main__":
    main()
