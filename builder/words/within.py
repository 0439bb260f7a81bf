"""How a name stands inside a sentence: decided here, for documents and findings alike."""

import re

# First words of names that are names of places, people or things by themselves.
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


def within(name: str) -> str:
    """Write a name inside a sentence: its first letter small, unless it is that of a proper name or of an abbreviation."""
    first, _, rest = name.partition(" ")
    second = rest.partition(" ")[0]
    is_abbreviation = len(first) > 1 and (first[:2].isupper() or first[1] == "-")
    is_proper = first in PROPER or (first.istitle() and len(second) > 1 and second.istitle())
    return name if is_abbreviation or is_proper else name[:1].lower() + name[1:]
