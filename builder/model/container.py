"""A container by its generic size: a capacity is a volume, never a weight."""

from dataclasses import dataclass, field

from builder.model.figure import Known, Source
from builder.model.place import NOWHERE, Place
from builder.model.quantity import Box, Mass, Share, Volume


@dataclass(frozen=True)
class Container:
    """A bottle, jar, tin, bag or mould cavity that holds one portion.

    `capacity` is None where it has none that matters (a tea bag); `inside` is the inner size of a mould. `head_space` is the share of the
    capacity that stays empty, where it is not the usual one.
    """

    name: str
    capacity: Volume | None
    shape: str
    source: Source
    at: str
    known: Known
    inside: Box | None = None
    fill_weight: Mass | None = None
    head_space: Share | None = None
    place: Place = field(default=NOWHERE, compare=False)

    @property
    def is_mould(self) -> bool:
        """Say whether it is a mould, which the studio keeps and uses again."""
        return self.shape in ("cavity", "rectangle")
