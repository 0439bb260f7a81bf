"""The same thing in stock on two lines."""

from collections.abc import Iterator

from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.studio import Studio
from builder.model.supplies.inventory import InventoryEntry
from builder.model.supplies.supply import SupplyKind


@rule_on(STUDIO, FindingKind("inventory-twice", CAUTION, "The same thing is in stock on two lines, and only the first counts."))
def find_inventory_twice(studio: Studio) -> Iterator[Finding]:
    """Compare each line with those above it, whichever of its names a thing is written with."""
    met: dict[tuple[SupplyKind, str], InventoryEntry] = {}
    for one in studio.inventory:
        card = studio.stocked(one.name) if one.kind is SupplyKind.INGREDIENT else None
        first = met.setdefault((one.kind, card.key if card else one.name.key), one)
        if first is not one:
            yield caution(
                "inventory-twice",
                one.name.place,
                f'"{one.name}" is in stock on line {first.place.line} already, and only what stands there is counted.',
                "Write what there is of it in all on one line.",
            )
