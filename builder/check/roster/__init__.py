"""Who comes, what they chose, what they must not touch. A finding names a line, never a person."""
