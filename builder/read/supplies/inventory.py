"""`inventory.yaml` becomes what the studio has counted on its shelf. What cannot be read is left out, and everything else is read."""

from builder.model.finding import Finding
from builder.model.finding_kind import STOP, FindingKind
from builder.model.place import Name
from builder.model.supplies.inventory import InventoryEntry
from builder.model.supplies.supply import SupplyKind
from builder.read.recipe.things import ThingWords, read_things
from builder.read.shapes.inventory import ContainerInventoryShape, IngredientInventoryShape, InventoryShape, ItemInventoryShape
from builder.read.yaml.fit import fit
from builder.read.yaml.placed_yaml import PlacedYaml

FINDS = (FindingKind("inventory-unclear", STOP, "It is not clear what is in stock."),)

WORDS = ThingWords("what is in stock", "entry", "what this is in stock", "- {ingredient: olive oil, have: 2.3 kg, counted: 2027-02-20}")

_SHAPES: dict[SupplyKind, type[InventoryShape]] = {
    SupplyKind.INGREDIENT: IngredientInventoryShape,
    SupplyKind.CONTAINER: ContainerInventoryShape,
    SupplyKind.ITEM: ItemInventoryShape,
}


def read_inventory(placed: PlacedYaml, findings: list[Finding]) -> tuple[InventoryEntry, ...]:
    """Read what is in stock, in order."""
    return read_things("inventory-unclear", WORDS, placed, findings, lambda kind, number: _read(placed, kind, number, findings))


def _read(placed: PlacedYaml, kind: SupplyKind, number: int, findings: list[Finding]) -> InventoryEntry | None:
    shape = fit(_SHAPES[kind], placed, findings, number)
    if shape is None:
        return None
    return shape.make(
        InventoryEntry,
        kind=kind,
        name=Name(str(getattr(shape, kind)), placed.place(number, kind)),
        written=" ".join(str(placed.at(number, "have")).split()),
        counted=shape.counted.date(),
        place=placed.place(number),
        places=placed.places(number),
    )
