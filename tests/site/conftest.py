"""One browser for each file of tests."""

from collections.abc import Iterator

import pytest

from tests.browser import Browser, browser


@pytest.fixture(scope="module")
def chromium() -> Iterator[Browser]:
    with browser() as opened:
        yield opened
