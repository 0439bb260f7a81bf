"""`synonyms.yaml` becomes what people mean by the words that they type."""

from builder.model.synonyms import NO_SYNONYMS, Synonyms
from builder.read.yaml.placed_yaml import PlacedYaml
from builder.words.fold import fold


def read_synonyms(placed: PlacedYaml | None) -> Synonyms:
    """Read the words of the file that ships; nothing where there is none."""
    if placed is None:
        return NO_SYNONYMS
    ingredients, containers = (
        {fold(word): tuple(str(name) for name in placed.at(part, word)) for word in placed.places(part)}
        for part in ("ingredients", "containers")
    )
    return Synonyms({fold(word): str(placed.at("kinds", word)) for word in placed.places("kinds")}, ingredients, containers)
