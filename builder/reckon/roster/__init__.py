"""Allergies met in recipes, and choices counted."""
