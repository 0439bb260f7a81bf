"""Model to findings: one rule, one file, one function; `rules.py` lists them all.

Decided: what cannot be worked out is less than what is held back: only stops of reading and of `STUDIO_UNWORKED` keep a class from its
sums. Why: no finding hides another.
"""

from collections.abc import Collection, Iterable
from datetime import date

from builder.check.acceptance import accept_findings
from builder.check.batches import Batch, BatchFinding, batches_of, nominal_batch, say_once, unite
from builder.check.in_part import check_in_part
from builder.check.rule import (
    ALL_CLASSES,
    BATCH,
    CLASS,
    CLASS_IN_STUDIO,
    FINDINGS,
    LABELS,
    LAYOUTS,
    STUDIO,
    STUDIO_ON_A_DAY,
    STUDIO_UNWORKED,
    Found,
    NotWorkedOut,
)
from builder.check.rules import RULES, run
from builder.model.finding import Finding
from builder.model.label.label_fit import LabelFit
from builder.model.own_document import FaultyLayout
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.remembered import remembered
from builder.model.seen_from import seen_from
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan

__all__ = [
    "RULES",
    "accept_findings",
    "check_acceptances",
    "check_batch",
    "check_before_the_sums",
    "check_in_part",
    "check_labels",
    "check_layouts",
    "check_plans",
    "check_recipes",
    "check_studio",
]


def check_before_the_sums(studio: Studio) -> list[Finding]:
    """Run every rule on what has to be sound before anything is worked out."""
    return _said_once(run(STUDIO_UNWORKED, studio))


def check_studio(studio: Studio, today: date) -> list[Finding]:
    """Run every other rule for which nothing has to be worked out."""
    return _said_once([*run(STUDIO, studio), *run(STUDIO_ON_A_DAY, studio, today)])


def check_batch(batch: Batch) -> list[Finding]:
    """Run every rule on one batch."""
    return _said_once(run(BATCH, batch))


def check_plans(plans: Iterable[ClassPlan], studio: Studio) -> list[Finding]:
    """Run every rule on every date of a class, and on its batches."""
    plans = tuple(plans)
    found = [one for plan in plans for one in _found_in(plan, seen_from(studio, plan.studio_class))]
    return _said_once([*found, *run(ALL_CLASSES, plans, studio)])


@remembered(256)
def _found_in(plan: ClassPlan, seen: Studio) -> tuple[Found, ...]:
    """Run every rule on one date of a class and on its batches, with what the class sees of its studio."""
    of_batches = (one for batch in batches_of(plan, seen) for one in run(BATCH, batch))
    return (*run(CLASS, plan), *run(CLASS_IN_STUDIO, plan, seen), *of_batches)


def check_recipes(batches: Iterable[WorkedBatch], studio: Studio) -> list[Finding]:
    """Run every rule on the nominal batches of recipes that are worked out for no class."""
    return _said_once(found for batch in batches for found in run(BATCH, nominal_batch(batch, studio)))


def check_labels(fits: Iterable[LabelFit]) -> list[Finding]:
    """Run every rule on how labels fit."""
    return _said_once(run(LABELS, tuple(fits)))


def check_layouts(faults: Iterable[FaultyLayout]) -> list[Finding]:
    """Run the rule on the studio's own documents and templates."""
    return _said_once(run(LAYOUTS, tuple(faults)))


def check_acceptances(findings: Iterable[Finding], studio: Studio, not_worked_out: NotWorkedOut, names: Collection[str]) -> list[Finding]:
    """Run every rule on what all other rules have found. `names` are those of all kinds of finding."""
    return _said_once(run(FINDINGS, tuple(findings), studio, not_worked_out, names))


def _said_once(found: Iterable[Found]) -> list[Finding]:
    """Return what several dates, classes or batches have alike as one finding."""
    found = tuple(found)
    of_batches = [one for one in found if isinstance(one, BatchFinding)]
    return [*unite(one for one in found if isinstance(one, Finding)), *say_once(of_batches)]
