"""A class, or one date of it, with neither a teacher nor an assistant."""

from collections.abc import Iterator

from builder.check.rule import CLASS, rule_on
from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.place import Place
from builder.model.teaching.class_plan import ClassPlan


@rule_on(CLASS, FindingKind("staff-missing", STOP, "Neither a teacher nor an assistant is there on a date."))
def find_staff_missing(plan: ClassPlan) -> Iterator[Finding]:
    """Look for a class that nobody holds."""
    if sum(plan.staff) == 0:
        yield stop(
            "staff-missing",
            staff_place(plan),
            "Neither a teacher nor an assistant is there, so nobody shows anything and nobody watches.",
            'Write who is there: "staff: {teachers: 1, assistants: 0}".',
            about=frozenset({plan.subject}),
        )


def staff_place(plan: ClassPlan) -> Place:
    """Return the place of the staff of a date: its own, or that of the class."""
    return plan.date.at("staff") if plan.date and plan.date.staff else plan.studio_class.at("staff")
