"""The files of a class that list people, and of which no line is shown anywhere."""

ROSTER_TABLE, ROSTER_WORKBOOK = "roster.csv", "roster.xlsx"


def is_roster(file: str) -> bool:
    """Tell whether a file of a studio lists people."""
    return file.endswith((f"/{ROSTER_TABLE}", f"/{ROSTER_WORKBOOK}"))
