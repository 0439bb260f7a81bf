"""How much of an ingredient a product may hold, and who says so; and the colours that a law lists."""

from collections.abc import Collection
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


# Words of `narrower` for who uses a product, each with the age in years below which it holds: years are whole, so that 30 months are 3.
AGES = {"children under 2": 2, "children under 30 months": 3, "children under 3": 3, "children 3 to 12": 13}
PLACES = ("face", "hand", "body", "hair")
SCENT_ROLES = ("essential oil", "fragrance")


@dataclass(frozen=True)
class Limit:
    """One row of the table of limits.

    `names` are folded INCI names that count together ("a + b": a ready blend of exactly these). `most` is a share of one; 0 bans, None
    sets no maximum. `factor`: what one part of `counted_as` weighs as the one name of this row, which then restates another row.
    `products` and `narrower` say in what the row is narrower than `contact`. A narrower row without products is judged where each word of
    `narrower` speaks of who uses the product (AGES) or where (PLACES), and the recipe or the class says so; otherwise it is shown and not
    judged. `lowest_ph` is the least pH that the row asks of the product.
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
    lowest_ph: Fraction | None = None
    place: Place = field(default=NOWHERE, compare=False)

    @property
    def is_total_of_scent(self) -> bool:
        """Say whether it limits all scent of a product together."""
        return not self.names and self.role in SCENT_ROLES and self.most is not None

    @property
    def is_judged(self) -> bool:
        """Say whether a program can judge it: it sets a maximum, for uses that are known here, and restates no other row."""
        return self.most is not None and self.factor is None and bool(self.products or not self.narrower or self.is_about_use)

    @property
    def is_about_use(self) -> bool:
        """Say whether it is narrower only in who uses the product, or where."""
        words = self.narrower_words
        return not self.products and bool(words) and all(word in AGES or word in PLACES for word in words)

    @property
    def narrower_words(self) -> tuple[str, ...]:
        """Give the words in which it is narrower."""
        return tuple(word.strip() for word in self.narrower.split(";") if word.strip())

    def is_for_use(self, used_on: Collection[str], youngest: int | None) -> bool:
        """Say whether it is meant for these parts of the body, or for people from this age in years on (None: not said)."""
        ages = [AGES[word] for word in self.narrower_words if word in AGES]
        return any(word in used_on for word in self.narrower_words) or any(youngest is not None and youngest < below for below in ages)

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
