"""What the studio has counted on its shelf, as its `inventory.yaml` lists it."""

from dataclasses import dataclass
from datetime import date
from fractions import Fraction

from builder.model.place import Name, Placed
from builder.model.recipe.quantity import Mass, Volume
from builder.model.supplies.supply import SupplyKind


@dataclass(frozen=True)
class InventoryEntry(Placed):
    """What there is of one thing: a weight or a volume of an ingredient, pieces of anything else (a part of one too), zero or above.

    `written` is the amount as the studio wrote it, `counted` the day on which it was found.
    """

    kind: SupplyKind
    name: Name
    have: Mass | Volume | Fraction
    written: str
    counted: date
