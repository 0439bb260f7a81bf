"""How fire and heat in the room are spoken of, as the rows of `content/tables/flame_words.yaml` tell."""

from collections.abc import Mapping
from dataclasses import dataclass

from builder.model.teaching.word_pattern import WordPattern

BURNS, PUT_OUT, OVER_HEAT, ALCOHOL = "burns", "put out", "over heat", "alcohol in hand"


@dataclass(frozen=True)
class SpokenOf:
    """How something is spoken of, and what in the same sentence turns it off."""

    says: tuple[WordPattern, ...]
    unless: tuple[WordPattern, ...]


FlameWords = Mapping[str, SpokenOf]
