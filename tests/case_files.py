"""Number cases that are text: the files of `cases/`, to which a line can be added without Python."""

import csv
from pathlib import Path

CASES = Path(__file__).parent / "cases"
# How a figure is known: seen in its source or a copy of it, worked out by hand, remembered, or no source but custom.
KNOWN = ("read", "computed", "memory", "common practice")

Row = dict[str, str]


def read_cases(name: str) -> list[Row]:
    """Return the rows of a file of cases by their columns; a line that begins with # is a remark."""
    with (CASES / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(line for line in file if not line.startswith("#")))


def name_of(row: Row) -> str:
    """Name a row for whoever reads that it fails: by its first column."""
    return next(iter(row.values()))
