"""Lye that staff dissolve before the students meet it. A solution is never called by the name of its solid."""
