"""Who comes to a class, and words about allergies. No finding repeats a line of a roster."""
