"""The guide and its examples."""
