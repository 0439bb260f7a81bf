"""A container by its generic size: a capacity is a volume, never a weight."""

from dataclasses import dataclass, field

from builder.model.place import NOWHERE, Place
from builder.model.recipe.container_form import ContainerForm
from builder.model.recipe.figure import Known, Source
from builder.model.recipe.product import Product
from builder.model.recipe.quantity import Box, Length, Mass, Share, Volume


@dataclass(frozen=True)
class Outside:
    """The outside of a container as far as it is known: the straight part of its side, the way around it, its width, its lid across."""

    height: Length | None = None
    around: Length | None = None
    width: Length | None = None
    lid: Length | None = None

    @property
    def measured(self) -> tuple[tuple[str, Length], ...]:
        """Return what has been measured, each with the key that it has in a file."""
        lengths = (("height", self.height), ("around", self.around), ("width", self.width), ("lid", self.lid))
        return tuple((name, length) for name, length in lengths if length is not None)


NOT_MEASURED = Outside()


@dataclass(frozen=True)
class Container:
    """A bottle, jar, tin, bag or mould cavity that holds one portion.

    `capacity` is None where it has none that matters (a tea bag); `inside` is the inner size of a mould. `head_space` is the share of the
    capacity that stays empty, where it is not the usual one. `fill_weight` is what the trade fills it with, of the kinds of product in
    `fill_weight_of`; of every kind where none is named.
    """

    name: str
    capacity: Volume | None
    shape: ContainerForm
    source: Source
    at: str
    known: Known
    inside: Box | None = None
    fill_weight: Mass | None = None
    fill_weight_of: tuple[str, ...] = ()
    head_space: Share | None = None
    outside: Outside = NOT_MEASURED
    place: Place = field(default=NOWHERE, compare=False)

    def takes_by_custom(self, weight: Mass, product: Product) -> bool:
        """Tell whether the trade fills it with so much of a kind of product."""
        is_meant = not self.fill_weight_of or product.is_any_of(self.fill_weight_of)
        return is_meant and self.fill_weight is not None and weight <= self.fill_weight

    @property
    def is_mould(self) -> bool:
        """Tell whether it is a mould, which the studio keeps and uses again."""
        return self.shape in (ContainerForm.CAVITY, ContainerForm.RECTANGLE)
