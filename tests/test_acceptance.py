"""Every finding that may be accepted is accepted once: nothing else falls silent, and all that it held back is made.

Without `--long` every acceptable stop, and each eighth of the cautions by name: how a reason is read and what it frees is the same for all
of them, and what a finding holds back is its own. That a stop holds something back is tried with its case, in `test_findings.py`.
"""

import contextlib
import io
import re
from collections.abc import Callable, Iterator
from datetime import date
from pathlib import Path

import pytest
from _pytest.mark.structures import ParameterSet

from builder import cli, pipeline
from builder.compose.publication import compose_documents, editions
from builder.finding_kinds import finding_kinds
from builder.library import LAYOUTS
from builder.model.document import Folder
from builder.model.finding import Finding, Weight
from builder.model.finding_kind import ACCEPTABLE_STOP
from builder.model.subject import Labels, WholeStudio
from builder.pipeline import Outcome
from tests.making import sure
from tests.test_findings import CASES, lay_out

TODAY = date(2027, 1, 1)
REASON = "The studio has looked at it and nobody is harmed."
# One case for each finding: the one that bears its name alone, or the first.
ONE_EACH = {case.name.split("--")[0]: case for case in reversed(CASES)}


def look(studio: Path, name: str) -> tuple[Outcome, list[Finding]]:
    outcome = pipeline.check(studio, on=TODAY)
    return outcome, [finding for finding in outcome.findings if finding.name == name]


def accept(studio: Path, name: str) -> None:
    """Accept a finding in studio.yaml, with whatever is accepted there already."""
    file = studio / "studio.yaml"
    text, line = file.read_text(encoding="utf-8"), f"  {name}: {REASON}\n"
    marked = re.sub(r"^accepts:.*\n", lambda found: found.group() + line, text, flags=re.MULTILINE)
    file.write_text(marked if marked != text else f"{text}\naccepts:\n{line}", encoding="utf-8")


def told(outcome: Outcome, name: str) -> set[tuple[str, str, str, str]]:
    others = (finding for finding in outcome.findings if finding.name not in (name, "accepted-without-need"))
    return {(finding.name, finding.weight, finding.place.file, finding.wrong) for finding in others}


def documents_of(outcome: Outcome) -> set[str]:
    made = compose_documents(
        *editions(sure(outcome.studio), outcome.plans, outcome.findings, (LAYOUTS,), today=TODAY, held=outcome.held)
    ).documents
    return {f"{one.folder}/{one.path}" for one in made}


def acceptable() -> Iterator[ParameterSet]:
    cautions = 0
    for name, kind in finding_kinds().items():
        if kind.acceptable and name in ONE_EACH and name not in ("accepted-without-need", "reason-unclear"):
            holds_back = bool(kind.comes_as & ACCEPTABLE_STOP)
            cautions += not holds_back
            yield pytest.param(name, marks=() if holds_back or cautions % 8 == 0 else pytest.mark.long)


@pytest.mark.parametrize("name", list(acceptable()))
def test_an_accepted_finding_changes_nothing_else(name: str, tmp_path: Path) -> None:
    studio = tmp_path / "studio"
    lay_out(ONE_EACH[name], studio)
    before, found = look(studio, name)
    assert found
    stands = [finding for finding in found if finding.acceptable and finding.accepted is None]
    if not stands:
        return  # The case is of what cannot be accepted, or has accepted it already.
    accept(studio, name)
    after, found = look(studio, name)
    assert found
    assert all(finding.accepted for finding in found if finding.acceptable)
    assert told(before, name) <= told(after, name)
    # What is composed follows what is held back: where that is as before, accepting it can give nothing free.
    if any(finding.stops for finding in after.findings) or before.held == after.held:
        return
    assert all(isinstance(subject, Labels) for subject in after.held.subjects)
    assert not after.left_out
    made = documents_of(after)
    for sheet in after.plans:
        key = sheet.studio_class.key
        assert f"{Folder.SITE}/classes/{key}.html" in made
        own = {path for path in made if path.startswith(f"{Folder.PRINT}/{key}/")}
        assert any(path.endswith("/teacher.pdf") for path in own)
        for one in sheet.made:
            without = any(Labels(one.make.recipe.text, key) == subject for subject in after.held.subjects)
            labels = [path for path in own if f"/labels-{one.make.recipe.text}" in path]
            assert bool(labels) != without
        with contextlib.redirect_stdout(io.StringIO()), contextlib.redirect_stderr(io.StringIO()):
            assert cli.main(["plan", str(studio), key, "--today", "2027-01-01"]) == 0


def test_a_stop_about_the_studio_hides_nothing_of_recipes_and_classes(tmp_path: Path) -> None:
    """Whatever is wrong in studio.yaml, what is found in recipes and classes is found as without it."""
    unsound = next(case for case in CASES if case.name == "lye-too-strong")
    whole, broken = tmp_path / "whole", tmp_path / "broken"
    lay_out(unsound, whole)
    without = told(pipeline.check(whole, on=TODAY), "")
    assert without
    spoilings: tuple[Callable[[str], str], ...] = (
        lambda text: text.replace("region: US", "region: Atlantis"),
        lambda text: text.replace("currency: USD", "currency: shells"),
        lambda text: text + "\nunknown key: 1\n",
        lambda text: text + "\n  : [\n",
        lambda text: re.sub(r"reads to: \S+ g", "reads to: ten", text, count=1),
        lambda text: text[:0],
    )
    for number, spoil in enumerate(spoilings):
        studio = broken / str(number)
        lay_out(unsound, studio)
        file = studio / "studio.yaml"
        spoilt = spoil(file.read_text(encoding="utf-8"))
        assert spoilt != file.read_text(encoding="utf-8")
        file.write_text(spoilt, encoding="utf-8")
        outcome = pipeline.check(studio, on=TODAY)
        assert without <= told(outcome, "")
        assert WholeStudio() in outcome.held.subjects
        assert any(finding.place.file == "studio.yaml" and finding.weight is Weight.STOP for finding in outcome.findings)
