"""The two studios that tests leave as they are, each read once in a process: what is worked out of it is known to all tests."""

from functools import cache
from pathlib import Path

from builder.library import CONTENT
from builder.model.finding import Finding
from builder.model.studio import Studio
from builder.read.studios import read_studio

HERE = Path(__file__).parent
Read = tuple[Studio, list[Finding]]


@cache
def sound_studio() -> Read:
    """Return the studio in which nothing is found, and what was found."""
    return read_studio(HERE / "findings" / "_sound", CONTENT)


@cache
def example_studio() -> Read:
    """Return the example studio, and what was found while it was read."""
    return read_studio(HERE.parent / "site_example", CONTENT)
