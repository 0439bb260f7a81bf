"""Ingredient lists and the proof of their order, in exact fractions."""
