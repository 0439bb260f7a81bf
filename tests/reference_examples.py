"""The examples that the reference shows of each finding: taken from the findings' own cases, so that what is shown is what is printed.

To write them anew after a change of wording: `python -m tests.reference_examples`.
"""

import difflib
import re

from builder.finding_kinds import finding_kinds
from builder.reference.explanations import BEGINS, EXAMPLES, SHOWN, SOUND
from tests.test_findings import FINDINGS

# Lines that are less alike than this are no twins.
ALIKE = 0.6


def shown_and_line(name: str) -> tuple[str, str, int]:
    """Return a finding as its case prints it, with the file and the line that it is about (0: none)."""
    expected = (FINDINGS / name / "expected.txt").read_text(encoding="utf-8")
    for block in expected.split("\n\n"):
        head = re.match(rf"(.+?)(?::(\d+):\d+)?: {re.escape(name)} \((?:stop|caution)\)$", block, re.MULTILINE)
        if head:
            return block.strip("\n"), head[1], int(head[2] or 0)
    raise AssertionError(f"{name} is not in its own case")


def sound_line(name: str, file: str, line: int) -> str:
    """Return the twin, in the sound studio, of the line that a finding is about; empty where it has none."""
    case, sound = FINDINGS / name / file, FINDINGS / "_sound" / file
    if not (line and case.is_file() and sound.is_file()):
        return ""
    wrong, right = (path.read_text(encoding="utf-8", errors="replace").splitlines() for path in (case, sound))
    for kind, begin, end, start, stop in difflib.SequenceMatcher(None, wrong, right, autojunk=False).get_opcodes():
        if kind == "replace" and begin < line <= end and stop - start == end - begin:
            twin = right[start + line - 1 - begin]
            return twin if difflib.SequenceMatcher(None, wrong[line - 1], twin).ratio() >= ALIKE else ""
    return ""


def examples() -> str:
    """Return the whole file of examples."""
    parts = ["Examples of findings, written from the tests. A line that begins with = names the finding; do not change them by hand.\n"]
    for name in finding_kinds():
        if (FINDINGS / name).is_dir():
            shown, file, line = shown_and_line(name)
            parts.append(f"{BEGINS}{name} {SHOWN}\n{shown}\n")
            if sound := sound_line(name, file, line):
                parts.append(f"{BEGINS}{name} {SOUND}\n{sound}\n")
    return "\n".join(parts)


if __name__ == "__main__":
    EXAMPLES.write_text(examples(), encoding="utf-8")
