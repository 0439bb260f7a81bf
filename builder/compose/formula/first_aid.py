"""First aid sentence by sentence, so that what several cautions share can be said once."""

import re

# Between two sentences of first aid, of which each begins with what has happened: "On skin: ... In eyes: ...".
_BETWEEN = re.compile(r"(?<=[.!]) (?=[^.:]{2,30}: )")


def aid_sentences(text: str) -> list[str]:
    """Divide first aid where it begins to speak of another accident."""
    return _BETWEEN.split(text)
