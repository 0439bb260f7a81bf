"""Packs with their prices, and what has been counted."""
