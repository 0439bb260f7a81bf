"""American and British spelling of the words that this trade types: compared as one, and printed as the region writes them.

Decided: a list of words, and no rule about endings. Why: "color" is "colour", and "doctor" stays what it is.
"""

import re

# Beginnings of words, British and American; what follows is the same in both (colours, moulding, flavoured).
_PAIRS = {
    "colour": "color", "mould": "mold", "flavour": "flavor", "odour": "odor", "aluminium": "aluminum", "grey": "gray", "centre": "center",
    "fibre": "fiber", "neutralise": "neutralize", "neutralising": "neutralizing",
}  # fmt: skip
_BRITISH = {american: british for british, american in _PAIRS.items()}
_AMERICAN_WORD = re.compile(rf"\b(?:{'|'.join(_BRITISH)})(?=(?:s|d|ed|ing|ant|ants|less|ful)?\b)", re.IGNORECASE)
_BRITISH_WORD = re.compile(rf"\b(?:{'|'.join(_PAIRS)})(?=(?:s|d|ed|ing|ant|ants|less|ful)?\b)", re.IGNORECASE)


def british(text: str) -> str:
    """Give a text in British spelling."""
    return _AMERICAN_WORD.sub(lambda word: _like(word[0], _BRITISH), text)


def american(text: str) -> str:
    """Give a text in American spelling."""
    return _BRITISH_WORD.sub(lambda word: _like(word[0], _PAIRS), text)


def _like(word: str, pairs: dict[str, str]) -> str:
    other = pairs[word.lower()]
    if word.isupper():
        return other.upper()
    return other.capitalize() if word[0].isupper() else other
