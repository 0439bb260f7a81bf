"""Findings on stderr: a place that an editor can open, the studio's own line, what is wrong, what to do; and how many there are.

Decided: of more than 20 findings of a kind in one file a terminal shows 20 and the number of the others. Why: JSON and the exit status
know them all.

Decided: the terminal shows no line of a roster; a finding gives the line's number. Why: a name that was printed is somewhere else.
"""

from collections import Counter
from collections.abc import Sequence

from rich.console import Console

from builder.model.finding import Finding, Weight
from builder.model.place import Place
from builder.model.roster.roster_file import is_roster
from builder.read.text.source_lines import SourceLines
from builder.terminal.consoles import open_console, say, styled
from builder.terminal.excerpt import cut_excerpt

# So many findings of one kind in one file are shown; the others are only counted. JSON and the exit status know them all.
MOST_OF_A_KIND = 20
_COLOUR = {"stop": "red", "caution": "yellow", "accepted": "green"}


def print_findings(findings: Sequence[Finding], lines: SourceLines) -> None:
    """Print each finding, and of many of one kind in one file the first."""
    console = open_console(error=True)
    counts = Counter(_kind(finding) for finding in findings)
    met: Counter[tuple[str, str, str]] = Counter()
    for finding in findings:
        kind = _kind(finding)
        met[kind] += 1
        if met[kind] <= MOST_OF_A_KIND:
            _print(finding, lines, console)
        if met[kind] == MOST_OF_A_KIND < counts[kind]:
            file, name, _ = kind
            say(console, styled(file, "bold"), f": and {counts[kind] - MOST_OF_A_KIND} more of this kind ({name}) in this file\n")


def _kind(finding: Finding) -> tuple[str, str, str]:
    return finding.place.file, finding.name, _standing(finding)


def _standing(finding: Finding) -> str:
    return "accepted" if finding.accepted is not None else str(finding.weight)


def _print(finding: Finding, lines: SourceLines, console: Console) -> None:
    place, standing = finding.place, _standing(finding)
    say(console, styled(_where(place), "bold"), ": ", styled(finding.name, f"bold {_COLOUR[standing]}"), f" ({standing})")
    # A line of a roster names somebody, and a terminal is seen by others.
    text = None if is_roster(place.file) else lines.at(place)
    if text is not None:
        excerpt = cut_excerpt(text, place)
        say(console, f"{place.line:>5} | {excerpt.line}")
        say(console, "      | ", styled(excerpt.mark, _COLOUR[standing]))
    say(console, finding.wrong)
    say(console, finding.answer)
    say(console)


def _where(place: Place) -> str:
    return ":".join(str(part) for part in (place.file, place.line, place.column)[: 3 if place.line else 1])


def tally(findings: Sequence[Finding]) -> str:
    """Return in words how many findings of each kind there are."""
    stops = sum(finding.stops for finding in findings)
    accepted = sum(finding.accepted is not None for finding in findings)
    cautions = sum(finding.weight is Weight.CAUTION and finding.accepted is None for finding in findings)
    if not findings:
        return "Nothing found: no stop, no caution."
    words = (
        f"{stops} {'stop' if stops == 1 else 'stops'}" if stops else "",
        f"{cautions} {'caution' if cautions == 1 else 'cautions'}" if cautions else "",
        f"{accepted} accepted with a reason" if accepted else "",
    )
    return f"Found: {', '.join(word for word in words if word)}."


def print_tally(findings: Sequence[Finding]) -> None:
    """Print how many findings of each kind there are."""
    say(open_console(), tally(findings))
