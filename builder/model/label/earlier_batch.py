"""The batch from which students take something home that was made before their class."""

from dataclasses import dataclass, field
from datetime import datetime

from builder.model.place import NOWHERE, Place
from builder.model.recipe.quantity import Mass


@dataclass(frozen=True)
class EarlierBatch:
    """When it was made, its code, and what the lightest of its bars weighed (None: its weight is not declared, or is written by hand)."""

    made_on: datetime
    batch: str
    weighed: Mass | None = None
    place: Place = field(default=NOWHERE, compare=False)
