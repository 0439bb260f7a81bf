"""How long it takes: the goals as ratios of two things measured in one run (`python -m tests.bench`). No test of the suite is timed."""
