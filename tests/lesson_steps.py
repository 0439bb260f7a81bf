"""The steps of Markdown files as they are written, for tests of their wording: amounts in braces and marks are left out."""

import re
from collections.abc import Iterator
from pathlib import Path

_STEP = re.compile(r"\s*\d+\.\s+(.*)")


def steps_in(folder: Path) -> Iterator[tuple[str, str]]:
    """Yield the place and the text of each step of the Markdown files below a folder."""
    for file in sorted(folder.rglob("*.md")):
        steps: list[tuple[int, str]] = []
        goes_on = False
        for number, line in enumerate(file.read_text(encoding="utf-8").splitlines(), 1):
            if begun := _STEP.match(line):
                steps.append((number, begun[1]))
                goes_on = True
            elif goes_on and line.startswith("   ") and line.strip():
                steps[-1] = (steps[-1][0], f"{steps[-1][1]} {line.strip()}")
            else:
                goes_on = False
        for number, text in steps:
            yield f"{file.name}:{number}", re.sub(r"\{[^}]*\}|\[\[[^\]]*\]\]|\*", "", text)
