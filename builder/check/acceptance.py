"""Findings that the studio accepts, each with its reason; accepted-without-need: a reason for what was not found."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace

from builder.check.reach import classes_held_back, classes_of_file
from builder.model.finding import Acceptance, Finding, caution
from builder.model.studio import Studio


def accept_findings(findings: Iterable[Finding], studio: Studio, *, only_used: bool = False) -> list[Finding]:
    """Mark the findings that recipe, class or studio accept. A stop that cannot be accepted stays, and says so.

    `only_used` leaves out the cautions on acceptances that met nothing, since a part of the findings cannot tell.
    """
    used: set[tuple[str, str]] = set()
    accepted = [_accept(finding, studio, used) for finding in findings]
    stopped = frozenset().union(*(classes_held_back(finding, studio) for finding in accepted if finding.stops))
    needless = [] if only_used else list(_needless(used, stopped, studio))
    return [*accepted, *needless]


def _needless(used: set[tuple[str, str]], stopped: frozenset[str], studio: Studio) -> Iterator[Finding]:
    for file, accepts in _lists(studio):
        # What is held back or cannot be read has not been worked out, so nobody knows yet whether the acceptance is needed.
        if classes_of_file(file, studio) & stopped or (studio.unread.classes and not file.startswith("classes/")):
            continue
        for name, acceptance in accepts.items():
            if (file, name) not in used:
                wrong = f'"{name}" is accepted here, but nothing of that name was found.'
                yield caution("accepted-without-need", acceptance.place, wrong, "Remove it from `accepts:`, or correct the name.")


def _accept(finding: Finding, studio: Studio, used: set[tuple[str, str]]) -> Finding:
    held = classes_held_back(finding, studio)
    for file, accepts in _lists(studio):
        if finding.name in accepts and _speaks_for(file, finding, held, studio):
            used.add((file, finding.name))
            if finding.acceptable:
                return replace(finding, accepted=accepts[finding.name].reason)
            return replace(finding, remedy=f"{finding.remedy} This finding cannot be accepted.")
    return finding


def _speaks_for(file: str, finding: Finding, held: frozenset[str], studio: Studio) -> bool:
    if finding.place.file == file or file == "studio.yaml":
        return True
    key = file.split("/")[1] if file.startswith("classes/") else ""
    return key in studio.classes and held <= {key}


def _lists(studio: Studio) -> list[tuple[str, Mapping[str, Acceptance]]]:
    found = [("studio.yaml", studio.profile.accepts)]
    found += [(recipe.place.file, recipe.accepts) for recipe in studio.recipes.values()]
    found += [(a_class.place.file, a_class.accepts) for a_class in studio.classes.values()]
    return found
