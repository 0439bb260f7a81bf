"""`shelf/supplies.yaml` becomes the packs that the studio buys. What cannot be read is left out, and everything else is read.

Decided: a supply that cannot be read stops, one that can be read but is doubtful cautions. Why: prices hurt nobody.
"""

from builder.model.finding import Finding
from builder.model.finding_kind import STOP, FindingKind
from builder.model.supplies.supply import Supply, SupplyKind
from builder.read.makes import Makes
from builder.read.recipe.things import ThingWords, read_things
from builder.read.shapes.supplies import ContainerPackShape, IngredientPackShape, ItemPackShape
from builder.read.text.placed_data import PlacedData

FINDS = (FindingKind("supply-unclear", STOP, "It is not clear what is in a pack."),)

WORDS = ThingWords("packs", "pack", "what is in this pack", "- {ingredient: lotion base, pack: 1 gal, price: 68.00}")

_SHAPES: dict[SupplyKind, type[Makes[Supply]]] = {
    SupplyKind.INGREDIENT: IngredientPackShape,
    SupplyKind.CONTAINER: ContainerPackShape,
    SupplyKind.ITEM: ItemPackShape,
}


def read_supplies(placed: PlacedData, findings: list[Finding]) -> tuple[Supply, ...]:
    """Read the packs of one file, in order."""
    return read_things("supply-unclear", WORDS, _SHAPES, placed, findings)
