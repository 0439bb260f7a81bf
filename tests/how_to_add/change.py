"""An addition: the files that somebody writes or changes for it by hand, and the tests by which it is shown to work."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path, PurePosixPath

# What becomes of the text of a file, which is empty where there is none yet.
Change = Callable[[str], str]


@dataclass(frozen=True)
class Addition:
    """`entry` is what section 5 of DEVELOPERS.md calls it; `shown_by` are tests of the copy."""

    entry: str
    changes: Mapping[str, Change]
    shown_by: tuple[str, ...]

    @property
    def files(self) -> int:
        """Return how many files it touches; the folder of a finding's case, or of a starter, counts as one."""
        return len({_counted(PurePosixPath(path)) for path in self.changes})

    def apply(self, root: Path) -> None:
        """Make the changes in a copy."""
        for name, change in self.changes.items():
            path = root / name
            before = path.read_text(encoding="utf-8") if path.exists() else ""
            after = change(before)
            assert after != before, f"{name} is as it was"
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(after, encoding="utf-8")


def _counted(path: PurePosixPath) -> PurePosixPath:
    for folder in ("tests/findings", "content/starters"):
        if path.is_relative_to(folder) and len(path.parts) > len(PurePosixPath(folder).parts) + 1:
            return PurePosixPath(*path.parts[: len(PurePosixPath(folder).parts) + 1])
    return path


def new(text: str) -> Change:
    """Write a new file."""

    def write(before: str) -> str:
        assert not before, "there is such a file already"
        return text.lstrip("\n")

    return write


def at_the_end(text: str) -> Change:
    """Write lines at the end of a file."""
    return lambda before: before.rstrip("\n") + "\n" + text.rstrip("\n") + "\n"


def after(*pairs: tuple[str, str]) -> Change:
    """Write lines after the first line that begins with some words, in several places of a file."""

    def write(before: str) -> str:
        lines = before.splitlines()
        for beginning, text in pairs:
            at = next(number for number, line in enumerate(lines) if line.startswith(beginning))
            lines[at + 1 : at + 1] = text.strip("\n").splitlines()
        return "\n".join(lines) + "\n"

    return write


def both(*changes: Change) -> Change:
    """Make one change after the other."""

    def write(before: str) -> str:
        for change in changes:
            before = change(before)
        return before

    return write


def one_more(before: str, number: int) -> Change:
    """Raise a number by one that a test states, after some words."""

    def write(text: str) -> str:
        assert text.count(f"{before}{number},") == 1
        return text.replace(f"{before}{number},", f"{before}{number + 1},")

    return write
