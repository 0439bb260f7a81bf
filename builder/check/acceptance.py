"""Findings that the studio accepts, each with its reason.

Decided: a reason of fewer than three words accepts nothing. Why: the teacher's sheet prints it for those who work by it.
"""

from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import replace

from builder.check.rule import FINDINGS, STUDIO, NotWorkedOut, rule_on
from builder.model.finding import Acceptance, Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.studio import Studio
from builder.model.subject import WholeClass, WholeRecipe
from builder.rules.reach import classes_concerned, classes_of, subjects_of_file
from builder.words.nearest import did_you_mean
from builder.words.reason import is_reason

CANNOT = "This finding cannot be accepted."
Accepts = Mapping[str, Acceptance]


def accept_findings(findings: Iterable[Finding], studio: Studio) -> list[Finding]:
    """Mark the findings that recipe, class or studio accept. A stop that cannot be accepted stays, and says so."""
    lists = _lists(studio)
    return [_accept(finding, lists, studio) for finding in findings]


@rule_on(
    STUDIO,
    FindingKind("reason-unclear", CAUTION, "A reason under `accepts:` is no sentence that others could follow, and accepts nothing."),
)
def find_unclear_reasons(studio: Studio) -> Iterator[Finding]:
    """Look for reasons that nobody could read on the teacher's sheet."""
    for _, accepts in _lists(studio):
        for name, acceptance in accepts.items():
            if not is_reason(acceptance.reason):
                wrong = (
                    f'"{acceptance.reason}" is no reason that others could follow, so "{name}" is not accepted. '
                    "The teacher's sheet prints the reason for those who work by it."
                )
                remedy = f"Write in a sentence why nobody is harmed, for example `{name}: The supplier stated it in writing in May.`"
                yield caution("reason-unclear", acceptance.place, wrong, remedy)


@rule_on(
    FINDINGS,
    FindingKind(
        "accepted-without-need",
        CAUTION,
        "A reason under `accepts:` names a finding that nothing has brought, so that it may hide a mistake in the name.",
    ),
)
def find_needless_acceptances(
    findings: Iterable[Finding], studio: Studio, not_worked_out: NotWorkedOut, names: Collection[str]
) -> Iterator[Finding]:
    """Look for reasons for what is not among the findings of a run.

    Of classes and recipes that are not worked out nobody knows yet what would be found. `names` are those of all kinds of finding.
    """
    met = [finding for finding in findings if finding.accepted is not None or not finding.acceptable]
    for file, accepts in _lists(studio):
        if _is_open(file, studio, not_worked_out):
            continue
        for name, acceptance in accepts.items():
            if is_reason(acceptance.reason) and not any(one.name == name and _speaks_for(file, one, studio) for one in met):
                wrong = f'"{name}" is accepted here, but nothing of that name was found.'
                meant = "" if name in names else did_you_mean(name, names)
                yield caution("accepted-without-need", acceptance.place, wrong, f"Remove it from `accepts:`, or correct the name.{meant}")


def _is_open(file: str, studio: Studio, not_worked_out: NotWorkedOut) -> bool:
    """Tell whether an acceptance of a file may still be needed for what is not worked out."""
    if file == "studio.yaml":
        return bool(not_worked_out)
    own = subjects_of_file(file, studio)
    classes = {WholeClass(key) for subject in own for key in classes_of(subject, studio)}
    recipes = {WholeRecipe(make.recipe.text) for one in own if isinstance(one, WholeClass) for make in studio.classes[one.key].makes}
    unread = studio.unread.classes and not file.startswith("classes/")
    return bool(not_worked_out & (own | classes | recipes)) or bool(unread)


def _accept(finding: Finding, lists: list[tuple[str, Accepts]], studio: Studio) -> Finding:
    for file, accepts in lists:
        acceptance = accepts.get(finding.name)
        if acceptance and is_reason(acceptance.reason) and _speaks_for(file, finding, studio):
            if finding.acceptable:
                return replace(finding, accepted=acceptance.reason)
            return replace(finding, remedy=f"{finding.remedy} {CANNOT}")
    return finding


def _speaks_for(file: str, finding: Finding, studio: Studio) -> bool:
    """Tell whether the acceptances of a file hold for a finding: it stands there, or is about nothing beyond the class of that file."""
    if finding.place.file == file or file == "studio.yaml":
        return True
    concerned = classes_concerned(finding, studio)
    return bool(concerned) and concerned <= {subject.key for subject in subjects_of_file(file, studio) if isinstance(subject, WholeClass)}


def _lists(studio: Studio) -> list[tuple[str, Accepts]]:
    found = [("studio.yaml", studio.profile.accepts)]
    found += [(recipe.place.file, recipe.accepts) for recipe in studio.recipes.values()]
    found += [(a_class.place.file, a_class.accepts) for a_class in studio.classes.values()]
    return found
