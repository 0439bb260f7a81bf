"""Signs that a language sets in its own way: a colon after a word, quotation marks, the sign before decimals."""

from builder.words.say import say, say_in


def labelled(name: object, value: object) -> str:
    """Write a value after its name, with a colon between them."""
    return f"{name}{say(':')} {value}"


def quoted(text: str) -> str:
    """Write what somebody has written in the quotation marks of the language."""
    return say("“{text}”", text=text)


def decimals_spoken(figures: str) -> str:
    """Write figures that have a decimal point with the sign of the language in its place."""
    return figures.replace(".", say_in("before the decimals of a number", "."))
