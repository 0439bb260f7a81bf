"""`shelf/supplies.yaml` becomes the packs that the studio buys. What cannot be read is left out, and everything else is read.

Decided: a supply that cannot be read stops, one that can be read but is doubtful cautions. Why: prices hurt nobody.
"""

from collections.abc import Sequence

from builder.model.finding import Finding
from builder.model.finding_kind import STOP, FindingKind
from builder.model.library import ANY
from builder.model.supplies.supply import Supply, SupplyKind
from builder.read.makes import Makes
from builder.read.recipe.things import ThingWords, read_things
from builder.read.shapes.supplies import ContainerPackShape, IngredientPackShape, ItemPackShape
from builder.read.text.placed_data import PlacedData
from builder.words.fold import fold

FINDS = (FindingKind("supply-unclear", STOP, "It is not clear what is in a pack."),)

WORDS = ThingWords("packs", "pack", "what is in this pack", "- {ingredient: lotion base, pack: 1 gal, price: 68.00}")

_SHAPES: dict[SupplyKind, type[Makes[Supply]]] = {
    SupplyKind.INGREDIENT: IngredientPackShape,
    SupplyKind.CONTAINER: ContainerPackShape,
    SupplyKind.ITEM: ItemPackShape,
}


def read_supplies(placed: PlacedData, findings: list[Finding]) -> tuple[tuple[Supply, ...], tuple[Supply, ...]]:
    """Read the packs of one file, in order, and those that can be read in part."""
    return read_things("supply-unclear", WORDS, _SHAPES, placed, findings)


def unread_items(placed: PlacedData | None, whole: Sequence[Supply], in_part: Sequence[Supply]) -> frozenset[str]:
    """Return the folded names of the items that stand there and cannot be read whole; ANY where not even the names can be."""
    if placed is None or not isinstance(placed.data, list) or len(placed.data) > len(whole) + len(in_part):
        return frozenset({ANY})
    entries = map(placed.inside, range(len(placed.data)))
    names = (entry.inside(SupplyKind.ITEM).data for entry in entries if entry.place() in {one.place for one in in_part})
    return frozenset(fold(name) for name in names if isinstance(name, str))
