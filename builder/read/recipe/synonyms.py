"""`synonyms.yaml` becomes what people mean by the words that they type."""

from builder.model.synonyms import NO_SYNONYMS, Synonyms
from builder.read.text.placed_data import Data, PlacedData
from builder.words.fold import fold


def read_synonyms(placed: PlacedData | None) -> Synonyms:
    """Read the words of the file that ships; nothing where there is none."""
    if placed is None:
        return NO_SYNONYMS
    kinds, ingredients, containers = (_by_word(placed.inside(part).data) for part in ("kinds", "ingredients", "containers"))
    meant, held = ({word: tuple(map(str, names)) for word, names in one.items()} for one in (ingredients, containers))
    return Synonyms({word: str(kind) for word, kind in kinds.items()}, meant, held)


def _by_word(data: Data) -> dict[str, Data]:
    return {fold(word): meant for word, meant in data.items()} if isinstance(data, dict) else {}
