"""What several commands share: the day, the studio that is meant, what is said of findings, and one date of a class."""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from builder.library import CONTENT
from builder.model.finding import Finding
from builder.read.text.source_lines import SourceLines
from builder.refusals import CommandError
from builder.terminal.findings import print_findings

if TYPE_CHECKING:
    from builder.model.teaching.class_plan import ClassPlan
    from builder.pipeline import Outcome

NOTHING_STOPS, A_STOP = 0, 1


def today(options: argparse.Namespace) -> date:
    """Return the day that is asked for, or the studio's own."""
    day: date = options.today or date.today()  # noqa: DTZ011 (the studio's own day)
    return day


def only(names: Sequence[str], what: str) -> str:
    """Return the name of the only recipe or class of a studio. Raises CommandError where there is none, or more than one."""
    if len(names) != 1:
        several = f"say which {what}: {', '.join(names)}" if names else f"there is no {what} yet; `stillroom add {what}` begins one"
        raise CommandError(several)
    return names[0]


def plan_of(options: argparse.Namespace, outcome: Outcome) -> ClassPlan:
    """Return the plan of the class and date that are asked for, or of its first. Raises CommandError where there is no such date."""
    plans = [plan for plan in outcome.plans if plan.studio_class.key == options.for_class]
    if options.date is None:
        return plans[0]
    for plan in plans:
        if plan.date and options.date in (plan.date.on.date().isoformat(), plan.date.on.isoformat(sep=" ", timespec="minutes")):
            return plan
    days = ", ".join(plan.date.on.isoformat(sep=" ", timespec="minutes") for plan in plans if plan.date) or "none"
    raise CommandError(f"{options.for_class} has no date {options.date} to prepare, or a stop holds it back; its dates are: {days}")


def report(findings: Sequence[Finding], folder: Path) -> None:
    """Print findings, each with the studio's own line."""
    print_findings(findings, SourceLines(folder, CONTENT))


def status_of(findings: Sequence[Finding]) -> int:
    """Return the exit status: 1 where something stops."""
    return A_STOP if any(finding.stops for finding in findings) else NOTHING_STOPS
