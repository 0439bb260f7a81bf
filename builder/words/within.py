"""How a name stands inside a sentence: decided here, for documents and findings alike.

A card decides for its ingredient, once, where it is read (`Spelled`). Names that have no card, such as those of recipes, are judged by
their first word.
"""

from __future__ import annotations

import re

# First words of names without a card that are names of places, people or things by themselves.
PROPER = frozenset(
    re.findall(
        r"\w+",
        """
        African American Atlantic Atlas Australian Austrian Brazilian British Bulgarian Canadian Celtic Chinese Dead Dutch Egyptian English
        Epsom European French German Greek Haitian Hawaiian Himalayan Hungarian Icelandic Indian Indonesian Irish Italian Jamaican Japanese
        Madagascar Marseille Mediterranean Mexican Moroccan Pacific Persian Peru Peruvian Roman Russian Scots Siam Sicilian Spanish Swiss
        Tahitian Texas Thai Tunisian Turkish Virginian West
        """,
    )
)


class Spelled(str):
    """A name that knows how it stands inside a sentence (`within`). It equals and counts as the plain text."""

    __slots__ = ("within",)
    within: str

    def __new__(cls, name: str, within: str) -> Spelled:
        """Take the name as it stands by itself, and as it stands inside a sentence."""
        made = super().__new__(cls, name)
        made.within = within
        return made

    def __reduce__(self) -> tuple[type[Spelled], tuple[str, str]]:
        """Return what it is made of, for another process."""
        return Spelled, (str(self), self.within)


def spelled(name: str, plain: str = "") -> Spelled:
    """Return the name of a card; where the plain name of its label begins with the same word, that word decides about the capital."""
    first, word = name.partition(" ")[0], plain.partition(" ")[0]
    if word and word.casefold() == first.casefold():
        return Spelled(name, word + name[len(first) :])
    return Spelled(name, within(name))


def within(name: str) -> str:
    """Write a name inside a sentence: as its card has it; else with a small first letter, but for proper names and abbreviations."""
    if isinstance(name, Spelled):
        return name.within
    first, _, rest = name.partition(" ")
    second = rest.partition(" ")[0]
    is_abbreviation = len(first) > 1 and (first[:2].isupper() or first[1] == "-")
    is_proper = first in PROPER or (first.istitle() and len(second) > 1 and second.istitle())
    return name if is_abbreviation or is_proper else name[:1].lower() + name[1:]
