"""What is said of a column of a roster that stands twice: where the roster is read, and where its choices are looked up."""

from builder.model.finding import Finding, stop
from builder.model.finding_kind import ROSTER_COLUMN_UNCLEAR
from builder.model.place import Name


def column_stands_twice(column: Name) -> Finding:
    """Return what is found of the second of two columns."""
    wrong = f'The column "{column}" stands twice, so nobody can tell which of the two counts.'
    return stop(ROSTER_COLUMN_UNCLEAR.name, column.place, wrong, "Remove one of them.")
