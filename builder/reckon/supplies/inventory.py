"""What is in stock, by the same keys as the packs: grams of an ingredient, pieces of anything else.

Decided: of what stands twice in `inventory.yaml` the first line counts, and a volume without a density counts for nothing. Why: rather a
pack too many than a class without oil.
"""

from datetime import date
from fractions import Fraction

from builder.model.recipe.quantity import Mass, Volume
from builder.model.studio import Studio
from builder.model.supplies.inventory import InventoryEntry
from builder.model.supplies.supply import SupplyKind
from builder.reckon.supplies.packs_by_kind import Key, ingredient_key

CountOnDay = tuple[Fraction, date]


def reckon_inventory(studio: Studio) -> dict[Key, CountOnDay]:
    """Return what there is of each thing and when that was counted; of what stands there twice the first counts."""
    found: dict[Key, CountOnDay] = {}
    for one in studio.inventory:
        card = studio.stocked(one.name) if one.kind is SupplyKind.INGREDIENT else None
        key = ingredient_key(card) if card else (one.kind, one.name.key)
        quantity = _quantity(studio, one)
        if quantity is not None:
            found.setdefault(key, (quantity, one.counted))
    return found


def _quantity(studio: Studio, one: InventoryEntry) -> Fraction | None:
    match one.have:
        case Mass():
            return one.have.grams
        case Volume():
            density = studio.density_as_bought(one.name)
            return density.mass_of(one.have).grams if density else None
        case _:
            return one.have
