"""What a class or a batch needs of what is bought in packs, and what it costs. Money is exact, in the studio's currency."""

from dataclasses import dataclass
from fractions import Fraction

from builder.model.recipe.quantity import Mass
from builder.model.supplies.supply import Supply, SupplyKind


@dataclass(frozen=True)
class Bought:
    """So many packs of one supply."""

    supply: Supply
    number: int


@dataclass(frozen=True)
class Purchase:
    """The cheapest packs that cover a need: what they cost and hold, and what is left in them (grams, or pieces).

    `proven` is False where there were too many combinations to try them all: cheaper ones may exist then.
    """

    packs: tuple[Bought, ...]
    price: Fraction
    holds: Fraction
    left: Fraction
    proven: bool = True

    def worth(self, quantity: Fraction) -> Fraction:
        """Return what a part of these packs is worth, by its share of what they hold."""
        return self.price * quantity / self.holds


@dataclass(frozen=True)
class Need:
    """What is needed of one thing, in grams or in pieces, and the packs to buy for it (None where no price is known).

    `used` is certain; `if_chosen` is what it takes besides if every portion gets it as its scent, colour or the like, at the most.
    """

    kind: SupplyKind
    name: str
    used: Fraction
    if_chosen: Fraction = Fraction(0)
    purchase: Purchase | None = None

    @property
    def quantity(self) -> Fraction:
        """Return what has to be there."""
        return self.used + self.if_chosen

    @property
    def value(self) -> Fraction:
        """Return what the certain part of it costs, 0 where no price is known."""
        return self.purchase.worth(self.used) if self.purchase else Fraction(0)

    @property
    def left_value(self) -> Fraction:
        """Return what is left in the packs in money."""
        return self.purchase.worth(self.purchase.left) if self.purchase else Fraction(0)


@dataclass(frozen=True)
class ContainerCost:
    """What one filled container of a recipe costs, the container with it."""

    recipe: str
    value: Fraction


@dataclass(frozen=True)
class Cost:
    """What the materials of a class or of a batch cost.

    `choices` counts the dearest option at its most for every portion. `each_student` is None for a batch. With `unpriced` things the
    sums are the least that it can be.
    """

    needs: tuple[Need, ...]
    choices: Fraction
    containers: tuple[ContainerCost, ...]
    students: int | None = None

    def of(self, kind: SupplyKind) -> Fraction:
        """Return what one kind of thing costs, as far as it is used for certain."""
        return sum((need.value for need in self.needs if need.kind is kind), Fraction(0))

    @property
    def total(self) -> Fraction:
        """Return what all of it costs."""
        return sum((need.value for need in self.needs), self.choices)

    @property
    def each_student(self) -> Fraction | None:
        """Return what it costs for each student."""
        return self.total / self.students if self.students else None

    @property
    def till(self) -> Fraction:
        """Return what the whole packs cost at the till."""
        return sum((need.purchase.price for need in self.needs if need.purchase), Fraction(0))

    @property
    def left_value(self) -> Fraction:
        """Return what is left in the packs in money, if every choice was made by everybody."""
        return sum((need.left_value for need in self.needs), Fraction(0))

    @property
    def unpriced(self) -> tuple[str, ...]:
        """Name what has no price."""
        return tuple(need.name for need in self.needs if need.purchase is None)


@dataclass(frozen=True)
class Jug:
    """What one pack of a ready-made base serves, and how many of it a class takes, what is spare, shown and lost in the pot counted.

    `stroke` is what one stroke of its pump gives and `strokes` how many are needed, None without a pump. For a batch `students` is None.
    """

    supply: Supply
    ingredient: str
    holds: Mass
    containers: int
    students: int | None
    number: int
    left: Mass
    strokes: int | None = None
    stroke: Mass | None = None

    @property
    def left_share(self) -> Fraction:
        """Return what is left as a share of one pack."""
        return self.left / self.holds


@dataclass(frozen=True)
class PumpStrokes:
    """How many strokes of a pump give an amount: whole ones from ten on, halves below, the nearest; and what so many weigh."""

    ingredient: str
    strokes: Fraction
    weigh: Mass
    measured: str
