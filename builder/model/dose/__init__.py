"""Limits, and what students may add within them. A limit knows whose rule it is and what it speaks of."""
