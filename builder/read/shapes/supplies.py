"""The shapes of the packs in `supplies.yaml` and of what is in stock in `inventory.yaml`: one for each kind of thing."""

from fractions import Fraction
from typing import Annotated, Self

from pydantic import BeforeValidator, model_validator

from builder.model.finding_kind import STOP, FindingKind
from builder.model.keeping.durability import Durability
from builder.model.recipe.quantity import Mass, Volume
from builder.model.supplies.inventory import InventoryEntry
from builder.model.supplies.supply import Pump, Supply, Use
from builder.read.makes import Makes, becomes
from builder.read.shapes.fields import (
    NOT_EMPTY,
    Day,
    Named,
    PositiveNumber,
    Price,
    Text,
    Weight,
    WholeAboveZero,
    as_written,
    one_as_list,
    reads,
)
from builder.read.shapes.shape import Shape, maybe, needed
from builder.read.text.placed_data import PlacedData
from builder.read.text.text_error import TextError
from builder.read.values.amounts import parse_pack, parse_pieces, parse_pieces_left
from builder.read.values.bounds import IN_STOCK, PACK, PACK_DENSITY, STROKE
from builder.read.values.values import parse_keeps

FINDS = (
    FindingKind("pack-weight-unclear", STOP, "A pack is given by weight twice."),
    FindingKind("pump-unclear", STOP, "It is not clear how much one stroke of a pump gives."),
)

Pack = Annotated[Mass | Volume, reads(parse_pack)]
Keeps = Annotated[Durability, reads(parse_keeps)]
Pieces = Annotated[int, reads(parse_pieces)]
AmountLeft = Annotated[Mass | Volume, reads(lambda text: parse_pack(text, zero=True))]
PiecesLeft = Annotated[Fraction, reads(parse_pieces_left)]


class PumpShape(Shape, Makes[Pump]):
    """What one stroke of a pump gives: a volume or a weight, or so many strokes and what they weighed."""

    given: Pack | None = maybe("stroke", example="8 mL")
    """What one stroke gives, as a volume or a weight."""
    strokes: WholeAboveZero | None = maybe("strokes", example="10")
    """How many strokes you have weighed together."""
    weigh: Weight | None = maybe("weigh", example="78 g")
    """What they weighed together."""
    measured: Text = needed("measured", '"how and when"')
    """How and when you found out."""

    @property
    def stroke(self) -> Mass | Volume:
        """Return one stroke."""
        if self.given is not None:
            return self.given
        assert self.weigh is not None and self.strokes is not None
        return self.weigh / self.strokes

    @model_validator(mode="after")
    def _says_one_thing(self) -> Self:
        weighed = (self.strokes is not None, self.weigh is not None)
        if any(weighed) != all(weighed) or (self.given is not None) == all(weighed):
            wrong = "It is not clear how much one stroke of this pump gives."
            raise TextError("pump-unclear", wrong, 'Write "stroke: 8 mL", or weigh ten strokes and write "strokes: 10, weigh: 78 g".')
        one = self.stroke
        number = one.grams if isinstance(one, Mass) else one.millilitres
        if not STROKE.hold(number):
            wrong = f"No pump gives so much or so little with one stroke: {STROKE.reason}."
            raise TextError("figure-out-of-range", wrong, STROKE.remedy(number), ("stroke" if self.given else "weigh",))
        return self


class IngredientPackShape(Shape, Makes[Supply]):
    """A pack of an ingredient."""

    name: Named = needed("ingredient", "lotion base")
    """The ingredient by the name on its card."""
    size: Pack = needed("pack", "1 gal")
    """What is in the pack: a weight (`oz`, `lb`, `kg`) or a volume (`fl oz`, `gal`, `L`). A volume becomes a weight through the density on
    the card, or through `weighs:`."""
    price: Price = needed("price", "68.00")
    """What the pack costs."""
    weighs: Weight | None = maybe("weighs", example="3.75 kg")
    """What the content of a pack sold by volume weighs, as you found it."""
    measured: Text = maybe("measured", "", '"how and when"')
    """How you found the weight. Needed beside `weighs:`."""
    keeps: Keeps | None = maybe("keeps", example="3 months")
    """How long it is good once opened. The shopping list says which dates come too late for it."""
    pump: PumpShape | None = maybe("pump", example='{stroke: 8 mL, measured: "how and when"}')
    """The pump on this pack. `{NAME strokes}` in a lesson is then a number of strokes; at home it is the weight."""

    @becomes("written")
    def _written(self, placed: PlacedData) -> str:
        return as_written(placed.inside("pack"))

    @model_validator(mode="after")
    def _can_be_carried(self) -> Self:
        number = self.size.grams if isinstance(self.size, Mass) else self.size.millilitres
        if not PACK.hold(number):
            wrong = f"No pack is so large or so small: {PACK.reason}."
            raise TextError("figure-out-of-range", wrong, PACK.remedy(number), ("pack",))
        return self

    @model_validator(mode="after")
    def _is_weighed_once(self) -> Self:
        if self.weighs is None:
            return self
        if isinstance(self.size, Mass):
            wrong = "This pack is given by weight twice, and it is not clear which of the two is meant."
            raise TextError("pack-weight-unclear", wrong, 'Take "weighs" out, or give the pack as the volume on its label.', ("weighs",))
        density = self.weighs.grams / self.size.millilitres
        if not PACK_DENSITY.hold(density):
            wrong = f"A pack of this volume cannot weigh so much or so little: {PACK_DENSITY.reason}."
            raise TextError("figure-out-of-range", wrong, "Correct the volume or the weight.", ("weighs",))
        if not self.measured:
            wrong = '"measured" is missing: a weight counts only with how it was found.'
            raise TextError("field-missing", wrong, 'Write for example "measured: full jug less the empty one".', ("weighs",), at_key=True)
        return self


class ContainerPackShape(Shape, Makes[Supply]):
    """A pack of containers."""

    name: Named = needed("container", "4 fl oz bottle")
    """The container by its name."""
    size: Pieces = needed("pack", "24")
    """How many are in the pack."""
    price: Price = needed("price", "21.60")
    """What the pack costs."""

    @becomes("written")
    def _written(self, _: PlacedData) -> str:
        return str(self.size)


class ItemPackShape(Shape, Makes[Supply]):
    """A pack of things that are used up in class."""

    name: Named = needed("item", "nitrile gloves")
    """What it is called."""
    size: Pieces = needed("pack", "100")
    """How many are in the pack."""
    price: Price = needed("price", "12.50")
    """What the pack costs."""
    each_student: PositiveNumber = maybe("each student", Fraction(0), "2")
    """How many each student uses up; a fraction is fine."""
    each_group: PositiveNumber = maybe("each group", Fraction(0), "1")
    """How many each group uses up."""
    each_class: PositiveNumber = maybe("each class", Fraction(0), "1/4")
    """How many each date of a class uses up."""
    each_container: PositiveNumber = maybe("each container", Fraction(0), "1")
    """How many go with each container that is filled."""
    classes: Annotated[tuple[Named, ...], NOT_EMPTY, BeforeValidator(one_as_list)] = maybe("classes", (), "[first-cold-process-bar]")
    """The classes that use it, by the names of their folders. Without it, all."""

    @becomes("written")
    def _written(self, _: PlacedData) -> str:
        return str(self.size)

    @becomes("use")
    def _use(self, placed: PlacedData) -> Use | None:
        use = self.made_as(Use, placed)
        return use if any((use.each_student, use.each_group, use.each_class, use.each_container)) else None


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
    have: AmountLeft = needed("have", "2.3 kg")
    """How much of it is there, by weight or by volume."""


class ContainerInventoryShape(InventoryShape):
    """Containers in stock."""

    name: Named = needed("container", "4 fl oz bottle")
    """The container by its name."""
    have: PiecesLeft = needed("have", "18")
    """How many are there."""


class ItemInventoryShape(InventoryShape):
    """Things in stock that are used up in class; what is half used is a part of one."""

    name: Named = needed("item", "nitrile gloves")
    """The thing by its name in supplies.yaml."""
    have: PiecesLeft = needed("have", "60")
    """How many are there; what is half used is a part of one."""


def _number(have: Mass | Volume | Fraction) -> Fraction:
    match have:
        case Mass():
            return have.grams
        case Volume():
            return have.millilitres
        case _:
            return have
