"""What the studio buys: a pack of something with its price, as `shelf/supplies.yaml` lists it."""

from dataclasses import dataclass, field
from enum import StrEnum
from fractions import Fraction

from builder.model.keeping.durability import Durability
from builder.model.place import NOWHERE, Name, Place, Placed
from builder.model.recipe.ingredient import Ingredient
from builder.model.recipe.quantity import Density, Mass, Volume


class SupplyKind(StrEnum):
    """What a pack holds: an ingredient, containers, or things that are used up in class."""

    INGREDIENT = "ingredient"
    CONTAINER = "container"
    ITEM = "item"


@dataclass(frozen=True)
class Pump:
    """The pump on a jug: what one stroke gives, and how the studio measured it."""

    stroke: Mass | Volume
    measured: str
    place: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True)
class Use:
    """How much of an item is used up, in pieces (a part of one where it lasts longer). `classes` are keys; none means every class."""

    each_student: Fraction = Fraction(0)
    each_group: Fraction = Fraction(0)
    each_class: Fraction = Fraction(0)
    each_container: Fraction = Fraction(0)
    classes: tuple[Name, ...] = ()


def density_on_card(card: Ingredient) -> Density | None:
    """Return the density through which a volume of an ingredient becomes a weight, of a powder that in bulk; None where none is known."""
    figure = card.figure("bulk density") or card.figure("density")
    return Density(figure.typical) if figure else None


@dataclass(frozen=True)
class Supply(Placed):
    """One pack that can be bought. `price` is in the studio's currency, exact; `written` is the size as the studio wrote it.

    `size` is a weight or a volume for an ingredient, a number of pieces for anything else. `weighs` is what the studio found that a
    pack by volume weighs. `use` is given for an item, on one of its packs. `keeps` is how long an ingredient keeps once it is bought.
    """

    kind: SupplyKind
    name: Name
    size: Mass | Volume | int
    written: str
    price: Fraction
    weighs: Mass | None = None
    measured: str = ""
    pump: Pump | None = None
    use: Use | None = None
    keeps: Durability | None = None

    def density(self, card: Ingredient) -> Density | None:
        """Return the density through which a volume of it becomes a weight: the pack's own, or the card's."""
        if isinstance(self.size, Volume) and self.weighs is not None:
            return Density(self.weighs.grams / self.size.millilitres)
        return density_on_card(card)

    def weight(self, card: Ingredient) -> Mass | None:
        """Return what a pack of this ingredient weighs; None for a volume whose density nobody knows, and for pieces."""
        return self.weighs or self._mass_of(self.size, card)

    def stroke(self, card: Ingredient) -> Mass | None:
        """Return what one stroke of the pump weighs; None without a pump, or where it is a volume of unknown density."""
        return self._mass_of(self.pump.stroke, card) if self.pump else None

    def _mass_of(self, size: Mass | Volume | int, card: Ingredient) -> Mass | None:
        match size:
            case Mass():
                return size
            case Volume():
                density = self.density(card)
                return density.mass_of(size) if density else None
            case _:
                return None
