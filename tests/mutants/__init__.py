"""Whether the tests notice when a rule or a sum is changed: `python -m tests.mutants`."""
