"""One browser for all files of tests here that one process runs; each test finds it as it was opened."""

from collections.abc import Iterator

import pytest

from tests.browser import Browser, browser


@pytest.fixture(scope="session")
def opened() -> Iterator[Browser]:
    with browser() as opened:
        yield opened


@pytest.fixture
def chromium(opened: Browser) -> Browser:
    opened.look()
    opened.size(1280)
    return opened
