"""How much of an ingredient a product may hold, and who says so; and the colours that a law lists."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from enum import StrEnum
from fractions import Fraction

from builder.model.figure import Known, Source
from builder.model.ingredient import Ingredient
from builder.model.place import NOWHERE, Place, fold
from builder.model.product import Product


class LimitWeight(StrEnum):
    """What stands behind a limit."""

    LAW = "law"
    OPINION = "opinion"
    GUIDANCE = "guidance"
    STANDARD = "standard"
    PRACTICE = "practice"


class PercentOf(StrEnum):
    """Of what a limit is a percentage."""

    PRODUCT = "product"
    OILS = "oils"


SCENT_ROLES = ("essential oil", "fragrance")


@dataclass(frozen=True)
class Limit:
    """One row of the table of limits.

    `names` are folded INCI names that count together ("a + b": a ready blend of exactly these). `most` is a share of one; 0 bans, None
    sets no maximum. `factor`: what one part of `counted_as` weighs as the one name of this row, which then restates another row.
    `products` and `narrower` say in what the row is narrower than `contact`; without products a narrower row is shown and not judged, but
    for one that is meant for people younger than `below_age` (years), where such people come.
    `parts` are limits of which a product may take up the whole (a share of one) only together, each in proportion.
    """

    ingredient: str
    names: tuple[str, ...]
    role: str
    most: Fraction | None
    percent_of: PercentOf
    counted_as: str
    factor: Fraction | None
    product_type: str
    contact: tuple[str, ...]
    products: tuple[str, ...]
    narrower: str
    hazard: str
    region: str
    weight: LimitWeight
    source: Source
    at: str
    known: Known
    note: str
    place: Place = field(default=NOWHERE, compare=False)
    below_age: int | None = None
    parts: tuple["Limit", ...] = ()

    @property
    def is_total_of_scent(self) -> bool:
        """Say whether it limits all scent of a product together."""
        return not self.names and self.role in SCENT_ROLES and self.most is not None and not self.parts

    def is_judged(self, youngest: int | None = None) -> bool:
        """Say whether a program can judge it: it sets a maximum for what is known here, and restates no other row.

        `youngest` is the age in years of the youngest who come; None where nobody knows.
        """
        if self.below_age is not None:
            is_meant = youngest is not None and youngest < self.below_age
        else:
            is_meant = bool(self.products or not self.narrower)
        return self.most is not None and self.factor is None and is_meant

    def is_for(self, product: Product) -> bool:
        """Say whether it is meant for a kind of product."""
        if self.products:
            return product.name in self.products
        return "all" in self.contact or product.contact in self.contact


@dataclass(frozen=True)
class ColourRule:
    """One colour additive of a law's list: where it may be used, and the most of it (shares of one).

    `products` are the kinds of product for which alone it is listed, `narrower` the one use where that is narrower than a contact.
    """

    name: str
    label_name: str
    section: str
    is_listed: bool
    contact: tuple[str, ...]
    products: tuple[str, ...]
    narrower: str
    most: Fraction | None
    most_on_lips: Fraction | None
    source: Source
    known: Known
    place: Place = field(default=NOWHERE, compare=False)

    def allows(self, product: Product) -> bool:
        """Say whether it is listed for a kind of product."""
        return product.name in self.products or product.contact in self.contact


def names_of(card: Ingredient) -> tuple[str, ...]:
    """Give the folded names that an ingredient list declares for a card, in their order."""
    return tuple(fold(name) for name in card.label_name.inci) if card.label_name else ()


def blend_of(names: tuple[str, ...]) -> str:
    """Give the one name of a blend of names, whatever their order; of a single name it is that name."""
    return " + ".join(sorted(names))


@dataclass(frozen=True)
class Rules:
    """What a product is judged by: the tables, the region whose law binds the studio, and the age of the youngest who come, if known."""

    region: str = ""
    limits: tuple[Limit, ...] = ()
    colour_rules: tuple[ColourRule, ...] = ()
    youngest: int | None = None


def is_own_law(limit: Limit, region: str, limits: Sequence[Limit]) -> bool:
    """Say whether a limit is law in a region; the UK has kept the EU's, but for what a row of its own says otherwise."""
    if limit.weight is not LimitWeight.LAW:
        return False
    if (region, limit.region) == ("UK", "EU"):
        return not any(other.region == "UK" and set(other.names) & set(limit.names) for other in limits)
    return limit.region in (region, "any")
