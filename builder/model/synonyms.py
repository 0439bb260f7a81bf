"""What people type and what is meant by it: words that are read as a kind of product, and words for which names are offered."""

from collections.abc import Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True)
class Synonyms:
    """`kinds` are kinds of product by the folded words that are read as them; the others are the names meant, by folded words."""

    kinds: Mapping[str, str] = field(default_factory=dict)
    ingredients: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    containers: Mapping[str, tuple[str, ...]] = field(default_factory=dict)


NO_SYNONYMS = Synonyms()
