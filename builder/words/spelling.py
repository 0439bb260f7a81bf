"""American and British spelling of the words that this trade types: compared as one, and printed as the region writes them.

Decided: a list of words, and no rule about endings. Why: "color" is "colour", and "doctor" stays what it is.
"""

import re
from functools import lru_cache

# Beginnings of words, British and American; what follows is the same in both (colours, moulding, flavoured).
_PAIRS = {
    "colour": "color", "mould": "mold", "unmould": "unmold",
    "flavour": "flavor", "odour": "odor", "vapour": "vapor", "aluminium": "aluminum",
    "grey": "gray", "centre": "center", "fibre": "fiber", "neutralise": "neutralize", "neutralising": "neutralizing",
    "catalogue": "catalog", "labelled": "labeled", "labelling": "labeling", "cancelled": "canceled", "practised": "practiced",
    "millilitre": "milliliter", "litre": "liter", "millimetre": "millimeter", "centimetre": "centimeter", "spilt": "spilled",
    "learnt": "learned", "draught": "draft", "solubiliser": "solubilizer", "moisturise": "moisturize",
}  # fmt: skip
_BRITISH = {american: british for british, american in _PAIRS.items()}
_ENDINGS = r"(?=(?:s|d|ed|ing|ant|ants|less|ful)?\b)"
_AMERICAN_WORD = re.compile(rf"\b(?:{'|'.join(_BRITISH)}){_ENDINGS}", re.IGNORECASE)
_BRITISH_WORD = re.compile(rf"\b(?:{'|'.join(_PAIRS)}){_ENDINGS}", re.IGNORECASE)
# A temperature on both scales, each a number or the name of one.
_BOTH_SCALES = re.compile(r"([\d.]+|\{\w+\})([ \u00a0])°C \(([\d.]+|\{\w+\})[ \u00a0]°F\)")
# What is no prose within a message: names in braces, and marks of HTML with their addresses.
_NO_PROSE = re.compile(r"(\{[^{}]*\}|<[^<>]*>)")


def british(text: str) -> str:
    """Return a text in British spelling."""
    return _AMERICAN_WORD.sub(lambda word: _like(word[0], _BRITISH), text)


def american(text: str) -> str:
    """Return a text in American spelling."""
    return _BRITISH_WORD.sub(lambda word: _like(word[0], _PAIRS), text)


@lru_cache(4096)
def american_around(message: str) -> str:
    """Return a message in American spelling and degrees Fahrenheit first; the names in its braces and its marks of HTML stay."""
    message = _BOTH_SCALES.sub(r"\3\2°F (\1\2°C)", message)
    return "".join(part if at % 2 else american(part) for at, part in enumerate(_NO_PROSE.split(message)))


def _like(word: str, pairs: dict[str, str]) -> str:
    other = pairs[word.lower()]
    if word.isupper():
        return other.upper()
    return other.capitalize() if word[0].isupper() else other
