"""Allergies in words, for the staff alone."""
