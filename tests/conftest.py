"""Settings for all tests: property tests draw the same examples on every run; the example studio is published once for all processes."""

import os
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from hypothesis import HealthCheck, settings

from tests.published import SHARED
from tests.settled import settle

settings.register_profile("steady", derandomize=True, deadline=None, max_examples=60, suppress_health_check=[HealthCheck.too_slow])
settings.load_profile("steady")


def pytest_configure(config: pytest.Config) -> None:
    """Make a folder that the processes of this run find by their environment, and settle what stays as it is."""
    settle()
    if not hasattr(config, "workerinput"):
        folder = TemporaryDirectory(prefix="published-")
        os.environ[SHARED] = folder.name
        os.environ["XDG_CACHE_HOME"] = str(Path(folder.name, "cache"))  # not the user's own
        config.add_cleanup(folder.cleanup)
