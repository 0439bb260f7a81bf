"""Settings for all tests: property tests draw the same examples on every run, and what reads one publication runs in one process."""

import pytest
from hypothesis import HealthCheck, settings

settings.register_profile("steady", derandomize=True, deadline=None, max_examples=60, suppress_health_check=[HealthCheck.too_slow])
settings.load_profile("steady")


@pytest.hookimpl(tryfirst=True)
def pytest_collection_modifyitems(items):
    """Keep the tests of one module together, and those that read the published example studio back in one group."""
    for item in items:
        reads_it = any(getattr(thing, "__module__", "") == "tests.published" for thing in vars(item.module).values())
        item.add_marker(pytest.mark.xdist_group("published" if reads_it else item.module.__name__))
