"""Settings for all tests: property tests draw the same examples on every run."""

from hypothesis import HealthCheck, settings

settings.register_profile("steady", derandomize=True, deadline=None, max_examples=60, suppress_health_check=[HealthCheck.too_slow])
settings.load_profile("steady")
