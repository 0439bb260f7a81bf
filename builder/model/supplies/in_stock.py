"""What the studio has counted on its shelf, as its `stock.yaml` lists it."""

from dataclasses import dataclass, field
from datetime import date
from fractions import Fraction

from builder.model.place import NOWHERE, Name, Place
from builder.model.recipe.quantity import Mass, Volume
from builder.model.supplies.supply import SupplyKind


@dataclass(frozen=True)
class InStock:
    """What there is of one thing: a weight or a volume of an ingredient, pieces of anything else (a part of one too), zero or above.

    `written` is the amount as the studio wrote it, `counted` the day on which it was found.
    """

    kind: SupplyKind
    name: Name
    have: Mass | Volume | Fraction
    written: str
    counted: date
    place: Place = field(default=NOWHERE, compare=False)
    have_place: Place = field(default=NOWHERE, compare=False)
    counted_place: Place = field(default=NOWHERE, compare=False)
