"""Lessons and passages to parts, steps and holes; the words by which prose is judged."""
