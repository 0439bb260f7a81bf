"""`inventory.yaml` becomes what the studio has counted on its shelf. What cannot be read is left out, and everything else is read."""

from builder.model.finding import Finding
from builder.model.finding_kind import STOP, FindingKind
from builder.model.supplies.inventory import InventoryEntry
from builder.model.supplies.supply import SupplyKind
from builder.read.recipe.things import ThingWords, read_things
from builder.read.shapes.inventory import ContainerInventoryShape, IngredientInventoryShape, InventoryShape, ItemInventoryShape
from builder.read.text.placed_data import PlacedData

FINDS = (FindingKind("inventory-unclear", STOP, "It is not clear what is in stock."),)

WORDS = ThingWords("what is in stock", "entry", "what this is in stock", "- {ingredient: olive oil, have: 2.3 kg, counted: 2027-02-20}")

_SHAPES: dict[SupplyKind, type[InventoryShape]] = {
    SupplyKind.INGREDIENT: IngredientInventoryShape,
    SupplyKind.CONTAINER: ContainerInventoryShape,
    SupplyKind.ITEM: ItemInventoryShape,
}


def read_inventory(placed: PlacedData, findings: list[Finding]) -> tuple[tuple[InventoryEntry, ...], tuple[InventoryEntry, ...]]:
    """Read what is in stock, in order, and what of it can be read in part."""
    return read_things("inventory-unclear", WORDS, _SHAPES, placed, findings)
