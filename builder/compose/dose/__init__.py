"""Doses and choices in words: drops and grams that stay within every limit."""
