"""Which pages of the site are looked at in the browser: with `--long` all of them, without it one of each kind."""

import os
from pathlib import Path

from tests.published import page_of_each_kind, published
from tests.whole_run import LONG


def site() -> Path:
    return published()[0] / "site"


def every_page() -> list[Path]:
    return sorted(site().rglob("*.html"))


def chosen() -> list[Path]:
    """Return the pages that this run looks at."""
    return every_page() if LONG in os.environ else page_of_each_kind()
