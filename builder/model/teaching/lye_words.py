"""How lye and raw soap are spoken of, as the rows of `content/tables/lye_words.yaml` tell."""

from collections.abc import Mapping
from dataclasses import dataclass

from builder.model.teaching.word_pattern import WordPattern


@dataclass(frozen=True)
class HandledWords:
    """How one hazard is spoken of: in the title of a part, in its orders, and what in the same sentence turns it off."""

    in_titles: tuple[WordPattern, ...]
    says: tuple[WordPattern, ...]
    unless: tuple[WordPattern, ...]


LyeWords = Mapping[str, HandledWords]
