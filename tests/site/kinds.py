"""Which pages of the site are looked at in the browser: with `--long` all of them, without it one of each kind or of some kinds."""

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
    return some(0, of=1)


def some(first: int, of: int) -> list[Path]:
    """Return the pages that this run looks at where each takes long: without `--long` a page of each second or third kind, from `first`."""
    return every_page() if LONG in os.environ else page_of_each_kind()[first::of]
