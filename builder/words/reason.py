"""What counts as a reason that others can follow."""

# The least that a sentence holds: who, does, what.
FEWEST_WORDS = 3


def is_reason(text: str) -> bool:
    """Tell whether a text has at least as many words with letters as the shortest sentence."""
    return sum(any(letter.isalpha() for letter in word) for word in text.split()) >= FEWEST_WORDS
