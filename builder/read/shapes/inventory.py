"""The shapes of what is in stock in `inventory.yaml`: one for each kind of thing."""

from fractions import Fraction
from typing import Annotated, Self

from pydantic import model_validator

from builder.model.recipe.quantity import Mass, Volume
from builder.model.supplies.inventory import InventoryEntry
from builder.read.makes import Makes, becomes
from builder.read.shapes.fields import Day, Named, as_written, reads
from builder.read.shapes.shape import Shape, needed
from builder.read.text.placed_data import PlacedData
from builder.read.text.text_error import TextError
from builder.read.values.amounts import parse_pack, parse_pieces_left
from builder.read.values.bounds import IN_STOCK

Amount = Annotated[Mass | Volume, reads(lambda text: parse_pack(text, zero=True))]
Pieces = Annotated[Fraction, reads(parse_pieces_left)]


class InventoryShape(Shape, Makes[InventoryEntry]):
    """What all of them have in common."""

    have: Mass | Volume | Fraction
    """How much is there."""
    counted: Day = needed("counted", "2027-02-20")
    """The day on which you counted. The list says which classes have been held since, and which counts are old."""

    @becomes("written")
    def _written(self, placed: PlacedData) -> str:
        return as_written(placed.inside("have"))

    @model_validator(mode="after")
    def _can_be_stored(self) -> Self:
        number = _number(self.have)
        if not IN_STOCK.hold(number):
            wrong = f"No studio has so much in stock: {IN_STOCK.reason}."
            raise TextError("figure-out-of-range", wrong, IN_STOCK.remedy(number), ("have",))
        return self


class IngredientInventoryShape(InventoryShape):
    """An ingredient in stock."""

    name: Named = needed("ingredient", "olive oil")
    """The ingredient by the name on its card."""
    have: Amount = needed("have", "2.3 kg")
    """How much of it is there, by weight or by volume."""


class ContainerInventoryShape(InventoryShape):
    """Containers in stock."""

    name: Named = needed("container", "4 fl oz bottle")
    """The container by its name."""
    have: Pieces = needed("have", "18")
    """How many are there."""


class ItemInventoryShape(InventoryShape):
    """Things in stock that are used up in class; what is half used is a part of one."""

    name: Named = needed("item", "nitrile gloves")
    """The thing by its name in supplies.yaml."""
    have: Pieces = needed("have", "60")
    """How many are there; what is half used is a part of one."""


def _number(have: Mass | Volume | Fraction) -> Fraction:
    match have:
        case Mass():
            return have.grams
        case Volume():
            return have.millilitres
        case _:
            return have
