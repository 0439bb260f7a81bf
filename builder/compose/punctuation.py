"""Signs that a language sets in its own way: the colon between a word and what it is said of, and quotation marks."""

from builder.words.say import say


def labelled(name: object, value: object) -> str:
    """Write a value after its name, with a colon between them."""
    return f"{name}{say(':')} {value}"


def quoted(text: str) -> str:
    """Write what somebody has written in the quotation marks of the language."""
    return say("“{text}”", text=text)
