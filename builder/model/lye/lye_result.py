"""The lye of a batch as weighed: its superfat, the worst case both ways, and how strong it is."""

from dataclasses import dataclass
from fractions import Fraction

from builder.model.recipe.ingredient import Ingredient
from builder.model.recipe.quantity import Mass


@dataclass(frozen=True)
class Purity:
    """The share of hydroxide in an alkali as bought, with its range, and whether the recipe or the card states it.

    Of a solution that is bought at a `strength` they are shares of that strength: what it holds of the hydroxide that it is counted for.
    """

    alkali: str
    low: Fraction
    typical: Fraction
    high: Fraction
    source: str
    assumed: bool
    strength: Fraction | None = None

    @property
    def hydroxide(self) -> tuple[Fraction, Fraction, Fraction]:
        """Return the hydroxide by weight in what is bought, as parts of one: the least, as counted, the most."""
        low, typical, high = (one * (self.strength or 1) for one in (self.low, self.typical, self.high))
        return low, typical, high


@dataclass(frozen=True)
class AlkaliPart:
    """One alkali of a mixed lye, as weighed: its share of the hydroxide's equivalents, and of the weight on the scales."""

    alkali: str
    card: Ingredient
    by_equivalents: Fraction
    by_weight: Fraction


@dataclass(frozen=True)
class Cause:
    """What the range of one ingredient's own figures takes from the superfat in the worst case, as a fraction of one."""

    ingredient: str
    takes: Fraction


@dataclass(frozen=True)
class LyeResult:
    """The lye of one column, from the amounts as weighed.

    Shares are fractions of one. `asked` is the superfat of the exact amounts, before anything is rounded to a scale, and
    `rounding_may_move` the most by which rounding may move that of a batch of this size. `lowest` and `highest` are the superfat in the
    worst case both ways; in cold process the lowest counts waxes as taking no lye. `before_the_cook` is the superfat of what is in the pot
    meanwhile, without the fats and acids that go in afterwards, which are `late`; None where there are none. `without_waxes` is the
    superfat if no wax takes lye (None where there is no wax), `lowest_without_waxes` the same in the worst case.
    `concentration` and `water_to_lye` are by weight as weighed; `in_water` counts only the water in a liquid that takes its place.
    `water_beside` is the water that comes from elsewhere and dissolves no lye: in later liquids, in solutions of acids, in milks.
    `causes` say what makes the worst case bad, the most first; `by_scales` is what the scales alone take.
    `parts` are the alkalis with both of their shares, so that neither is taken for the other.
    """

    superfat: Fraction
    asked: Fraction
    rounding_may_move: Fraction
    lowest: Fraction
    highest: Fraction
    before_the_cook: Fraction | None
    before_the_cook_lowest: Fraction | None
    late: tuple[str, ...]
    without_waxes: Fraction | None
    lowest_without_waxes: Fraction
    concentration: Fraction
    in_water: Fraction
    water_beside: Mass
    water_to_lye: Fraction
    water_of_oils: Fraction
    purities: tuple[Purity, ...]
    causes: tuple[Cause, ...]
    by_scales: Fraction
    parts: tuple[AlkaliPart, ...]

    @property
    def moved_by_rounding(self) -> Fraction:
        """Return how much rounding to the scales has added to the superfat."""
        return self.superfat - self.asked

    def grows_until(self, floor: Fraction) -> Fraction | None:
        """Return how many times as big a batch is on these scales of which the worst case is at least `floor`, however it is rounded.

        None where no size is big enough.
        """
        room = self.lowest + self.by_scales - self.moved_by_rounding - floor
        return (self.by_scales + self.rounding_may_move) / room if room > 0 else None
