"""The lesson and the day in words: parts, steps, watching, weighing, preparing."""
