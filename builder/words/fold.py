"""The one form in which names are compared."""


def fold(text: str) -> str:
    """Give a text in small letters, each run of spaces as one space, none at its ends."""
    return " ".join(text.split()).casefold()
