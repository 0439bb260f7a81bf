"""Lessons, and classes worked out. What is said of people is kept apart from what is published."""
