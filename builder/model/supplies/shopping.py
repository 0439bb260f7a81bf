"""What to buy for several dates together: what they need in all, what is in stock, the packs for the rest, what is left after them."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, datetime
from fractions import Fraction

from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.supplies.cost import Purchase
from builder.model.supplies.supply import SupplyKind


@dataclass(frozen=True)
class Period:
    """Which dates a list is for: from a day on, until a day (None: all that follow), of some classes by their keys (none: of all)."""

    first: date
    until: date | None = None
    classes: frozenset[str] = frozenset()

    def holds(self, class_key: str, on: datetime) -> bool:
        """Tell whether a date of a class lies within."""
        in_time = self.first <= on.date() and (self.until is None or on.date() <= self.until)
        return in_time and (not self.classes or class_key in self.classes)


@dataclass(frozen=True, order=True)
class Occasion:
    """One date of one class, and how many come."""

    on: datetime
    class_key: str
    title: str
    students: int


@dataclass(frozen=True)
class Wanted:
    """One thing that the dates need, in grams or in pieces.

    `card_kind` is the kind of its ingredient card, None for what is no ingredient. `on_days` says what each day needs, in order; `have`
    is what is in stock and `counted` the day on which that was found. `purchase` holds the packs for what is short: None where nothing is
    short, and where no price is known.
    """

    kind: SupplyKind
    name: str
    card_kind: IngredientKind | None
    on_days: tuple[tuple[date, Fraction], ...]
    have: Fraction = Fraction(0)
    counted: date | None = None
    purchase: Purchase | None = None

    @property
    def needed(self) -> Fraction:
        """Return what all dates need together."""
        return sum((quantity for _, quantity in self.on_days), Fraction(0))

    @property
    def short(self) -> Fraction:
        """Return what the inventory leaves to be bought."""
        return max(self.needed - self.have, Fraction(0))

    @property
    def too_late(self) -> tuple[date, ...]:
        """Return the days that come after what is bought for the first day no longer keeps."""
        keeps = [pack.supply.keeps for pack in self.purchase.packs if pack.supply.keeps] if self.purchase else []
        last = min((one.after(self.on_days[0][0]) for one in keeps), default=None)
        return tuple(day for day, _ in self.on_days if last and day > last)

    @property
    def unpriced(self) -> bool:
        """Tell whether it has to be bought and no price is known."""
        return bool(self.short) and self.purchase is None

    @property
    def left(self) -> Fraction | None:
        """Return what is left of stock and packs after the last date; None where nobody knows what will be bought."""
        if self.unpriced:
            return None
        return self.have + (self.purchase.holds if self.purchase else 0) - self.needed


@dataclass(frozen=True)
class Shopping:
    """What to buy for `occasions`, once for all of them.

    `nobody_yet` are dates within the period to which nobody has come in, `held_since` those that have been held since the oldest count of
    what is in stock, `held_back` the keys of classes that a stop keeps from being worked out. A count older than `old_after` days is old.
    """

    today: date
    occasions: tuple[Occasion, ...]
    wanted: tuple[Wanted, ...]
    nobody_yet: tuple[Occasion, ...] = ()
    held_since: tuple[Occasion, ...] = ()
    held_back: tuple[str, ...] = ()
    old_after: int = 0

    @property
    def total(self) -> Fraction:
        """Return what all packs cost."""
        return price_of(self.wanted)


def price_of(wanted: Iterable[Wanted]) -> Fraction:
    """Return what the packs of some things cost together."""
    return sum((one.purchase.price for one in wanted if one.purchase), Fraction(0))
