"""staff-missing: a class, or one date of it, with neither a teacher nor an assistant."""

from collections.abc import Iterator

from builder.model.class_sheet import ClassSheet
from builder.model.finding import Finding, stop
from builder.model.place import Place


def find_staff_missing(sheet: ClassSheet) -> Iterator[Finding]:
    """Look for a class that nobody holds."""
    if sum(sheet.staff) == 0:
        yield stop(
            "staff-missing",
            staff_place(sheet),
            "Neither a teacher nor an assistant is there, so nobody shows anything and nobody watches.",
            'Write who is there: "staff: {teachers: 1, assistants: 0}".',
            about=frozenset({sheet.subject}),
        )


def staff_place(sheet: ClassSheet) -> Place:
    """Give the place of the staff of a date: its own, or that of the class."""
    return sheet.date.at("staff") if sheet.date and sheet.date.staff else sheet.studio_class.at("staff")
