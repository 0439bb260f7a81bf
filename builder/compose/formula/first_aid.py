"""First aid sentence by sentence, so that what several cautions share can be said once."""

import re
from collections.abc import Iterable

# Between two sentences of first aid, of which each begins with what has happened: "On skin: ... In eyes: ...".
_BETWEEN = re.compile(r"(?<=[.!]) (?=[^.:]{2,30}: )")
_ACCIDENT = re.compile(r"([^.:]{2,30}:) (.+)", re.DOTALL)


def aid_sentences(text: str) -> list[str]:
    """Divide first aid where it begins to speak of another accident."""
    return _BETWEEN.split(text)


def in_sentences(lines: Iterable[str]) -> tuple[str, ...]:
    """Divide all first aid of a caution, line by line, where it begins to speak of another accident."""
    return tuple(sentence for line in lines for sentence in aid_sentences(line))


def accident_and_aid(sentence: str) -> tuple[str, str]:
    """Divide a sentence of first aid into the accident that it begins with, with its colon (empty where it names none), and what to do."""
    found = _ACCIDENT.match(sentence)
    return (found[1], found[2]) if found else ("", sentence)
