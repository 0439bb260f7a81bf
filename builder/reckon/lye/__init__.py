"""Lye in mol of hydroxide: need, check of what is weighed, range both ways, what becomes of it."""
