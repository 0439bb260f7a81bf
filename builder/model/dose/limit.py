"""How much of an ingredient a product may hold, and who says so; and the colours that a law lists.

Decided: what goes into a bath counts as rinsed off, what is on lips as left on. Why: it is washed off with the bath; a judgement, the
text has only the two.

Decided: limits say which words they speak of, cards by which words they count (`speaks_of`). Why: the sums are the hot spot of `check`;
most pairs never meet.
"""

from collections.abc import Collection, Sequence
from dataclasses import dataclass, field, replace
from enum import StrEnum
from fractions import Fraction
from functools import cached_property

from builder.model.hazard import Hazard
from builder.model.label.region import NO_REGION, Region
from builder.model.place import NOWHERE, Place
from builder.model.recipe.body_part import BodyPart
from builder.model.recipe.essential_oil import Held
from builder.model.recipe.figure import Known, Source
from builder.model.recipe.ingredient import ALUMINIUM, COLOUR, ESSENTIAL_OIL, SCENT, Ingredient, without_brackets
from builder.model.recipe.product import Contact, Product
from builder.model.remembered import remembered
from builder.words.fold import fold


class LimitWeight(StrEnum):
    """What stands behind a limit, the weightiest first."""

    LAW = "law"
    OPINION = "opinion"
    STANDARD = "standard"
    GUIDANCE = "guidance"
    HANDBOOK = "handbook"
    PRACTICE = "practice"


class PercentOf(StrEnum):
    """Of what a limit is a percentage."""

    PRODUCT = "product"
    OILS = "oils"


class LimitRole(StrEnum):
    """What a limit speaks of, where that changes how it is counted; any other word of a table is `OTHER`."""

    ESSENTIAL_OIL = "essential oil"
    OIL_ALONE = "essential oil alone"
    FRAGRANCE = "fragrance"
    AS_STATED = "constituent as stated"
    CERTIFICATE = "certificate"
    COLOUR = "colour"
    ACID = "acid"
    LABELLING = "labelling"
    OTHER = "other"


SCENT_ROLES = (LimitRole.ESSENTIAL_OIL, LimitRole.FRAGRANCE, LimitRole.OIL_ALONE)

# What is merely custom is judged by what a recipe means, whatever its scale, and of a ready-made base not at all.
CUSTOM = (LimitWeight.HANDBOOK, LimitWeight.PRACTICE)


@dataclass(frozen=True)
class Limit:
    """One row of the table of limits.

    `names` are folded INCI names that count together ("a + b": a ready blend of exactly these). `most` is a share of one; 0 bans, None
    sets no maximum. `factor`: what one part of `counted_as` weighs as the one name of this row, which then restates another row.
    `products` and `narrower` say in what the row is narrower than `contact`; without products a narrower row is shown and not judged, but
    for one that is meant for people younger than `below_age` (years), where such people use the product, and for one that is meant for
    `parts_of_body`, where it is used on one of them. `lowest_ph` is the least pH that the row asks of the product.
    `since` is the year of the act that brought it, where a region may have kept the law without it.
    `besides` are the keys of cards whose supplier's certificate comes before it.
    `parts` are limits of which a product may take up the whole (a share of one) only together, each in proportion.
    """

    ingredient: str
    names: tuple[str, ...]
    role: LimitRole
    most: Fraction | None
    percent_of: PercentOf
    counted_as: str
    factor: Fraction | None
    product_type: str
    contact: tuple[Contact, ...]
    products: tuple[str, ...]
    narrower: str
    hazard: Hazard | None
    region: str
    weight: LimitWeight
    source: Source
    at: str
    known: Known
    note: str
    since: int | None = None
    lowest_ph: Fraction | None = None
    place: Place = field(default=NOWHERE, compare=False)
    below_age: int | None = None
    parts_of_body: tuple[BodyPart, ...] = ()
    parts: tuple["Limit", ...] = ()
    besides: frozenset[str] = frozenset()

    @property
    def is_total_of_scent(self) -> bool:
        """Tell whether it limits all scent of a product together."""
        return not self.names and self.role in SCENT_ROLES and self.most is not None and not self.parts

    @property
    def counts_what_is_held(self) -> bool:
        """Tell whether it counts what an oil is published to hold of its names: a ban means the thing itself, unless it is law."""
        return self.role is not LimitRole.AS_STATED and (self.most != 0 or self.weight is LimitWeight.LAW)

    @property
    def sums_up(self) -> bool:
        """Tell whether it lets all ingredients of one hazard take up their own limits only together."""
        return bool(self.hazard) and not self.names and self.most is None

    @cached_property
    def speaks_of(self) -> frozenset[str]:
        """Return the words of which a card must have one to count towards it (see `Ingredient.speaks_of`)."""
        if self.parts:
            return frozenset().union(*(part.speaks_of for part in self.parts))
        if self.is_total_of_scent:
            return frozenset((ESSENTIAL_OIL if self.role is LimitRole.OIL_ALONE else SCENT,))
        if self.role is LimitRole.COLOUR:
            return frozenset(COLOUR + name for name in self.names)
        return frozenset(self.names or ([ALUMINIUM] if self.counted_as == ALUMINIUM else []))

    def is_judged(self, youngest: int | None = None, used_on: Collection[str] = ()) -> bool:
        """Tell whether a program can judge it: it sets a maximum for what is known here, and restates no other row.

        `youngest` is the age in years of the youngest who use the product, None where nobody knows; `used_on` are the parts of the body.
        """
        if self.below_age is not None:
            is_meant = youngest is not None and youngest < self.below_age
        elif self.parts_of_body and not self.products:
            is_meant = any(part in used_on for part in self.parts_of_body)
        else:
            is_meant = bool(self.products or not self.narrower)
        return self.most is not None and self.factor is None and is_meant

    def is_for(self, product: Product) -> bool:
        """Tell whether it is meant for a kind of product."""
        if self.products:
            return product.is_any_of(self.products)
        return product.contact in self.contact


class Field(StrEnum):
    """The products for which EU law allows a colourant."""

    ALL = "all products"
    NOT_EYES = "not in eye products"
    NOT_MUCOUS = "not on mucous membranes"
    RINSE_OFF = "rinse-off only"
    LIPS_AND_EYE_SHADOW = "lip products and eye shadow only"
    ORDINARY = "ordinary ingredient"
    NOT_LISTED = "not listed"


@dataclass(frozen=True)
class FieldRule:
    """One colourant of the list of EU law, or one that is known not to stand there: its folded names, what it is allowed for, and the most
    of it (shares of one).

    `in_uk`: the law that the UK has kept says the same, as far as it is remembered.
    """

    names: tuple[str, ...]
    common_name: str
    allowed_for: Field
    in_uk: bool
    most: Fraction | None
    most_on_lips: Fraction | None
    source: Source
    known: Known
    at: str
    place: Place = field(default=NOWHERE, compare=False)

    def allows(self, product: Product, *, on_eyes: bool) -> bool:
        """Tell whether it may be in a kind of product, which goes on the eyes or not; what is no colourant but an ingredient may."""
        match self.allowed_for:
            case Field.NOT_LISTED:
                return False
            case Field.ORDINARY | Field.ALL:
                return True
            case Field.NOT_EYES:
                return not on_eyes
            case Field.NOT_MUCOUS:
                return not on_eyes and product.contact is not Contact.LIPS
            case Field.RINSE_OFF:
                return not on_eyes and not product.contact.stays_on
            case Field.LIPS_AND_EYE_SHADOW:
                return on_eyes or product.contact is not Contact.LEAVE_ON


@dataclass(frozen=True)
class ColourRule:
    """One colour additive of the list of US law: where it may be used, and the most of it (shares of one).

    `certified`: each batch of it has to be certified. `for_eyes`: it may be used around the eye, be it for some things only.
    `products` are the kinds of product for which alone it is listed, `narrower` the one use where that is narrower than a contact.
    `how_known` says what was read, and in which edition.
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
    how_known: str
    certified: bool = False
    for_eyes: bool = True
    place: Place = field(default=NOWHERE, compare=False)

    @property
    def at(self) -> str:
        """Return the section in which it stands, and what was read of it; what is remembered is marked by `known`."""
        return f"21 CFR {self.section}" if self.known is Known.MEMORY else f"21 CFR {self.section}, {self.how_known}"

    def allows(self, product: Product) -> bool:
        """Tell whether it is listed for a kind of product."""
        return product.is_any_of(self.products) or product.contact in self.contact


def names_of(card: Ingredient) -> tuple[str, ...]:
    """Return the folded names that an ingredient list declares for a card, in their order."""
    return tuple(fold(without_brackets(name)) for name in card.label_name.inci) if card.label_name else ()


def held_of(card: Ingredient, limit: Limit) -> tuple[Held, ...]:
    """Return what a card holds, without declaring it, of the names of a limit: what its supplier states, or else what is published."""
    declared = names_of(card)
    holds = card.holds if limit.counts_what_is_held else ()
    by_name = {name: one for held in (*holds, card.stated) for name, one in held.items()}
    return tuple(one for name, one in by_name.items() if name in limit.names and name not in declared and one.high)


@dataclass(frozen=True)
class LimitRules:
    """What a product is judged by: the tables, the region whose law binds the studio, and who uses it where, as far as that is known.

    `youngest` is the age in years of the youngest who use it, `used_on` are parts of the body.
    """

    region: Region = NO_REGION
    limits: tuple[Limit, ...] = ()
    colour_rules: tuple[ColourRule, ...] = ()
    field_rules: tuple[FieldRule, ...] = ()
    youngest: int | None = None
    used_on: tuple[str, ...] = ()

    def for_use(self, used_on: tuple[str, ...], youngest: int | None) -> "LimitRules":
        """Return the same for a product whose recipe says where it is used, and who uses it (None: those who come)."""
        return replace(self, used_on=used_on, youngest=self.youngest if youngest is None else youngest)


@remembered(64)
def rules_for(
    region: Region,
    limits: tuple[Limit, ...],
    colour_rules: tuple[ColourRule, ...],
    field_rules: tuple[FieldRule, ...],
    youngest: int | None,
) -> LimitRules:
    """Return what a product is judged by: one value for the same tables and age, so that what has been worked out from it is known."""
    return LimitRules(region, limits, colour_rules, field_rules, youngest)


def is_own_law(limit: Limit, region: Region, limits: Sequence[Limit]) -> bool:
    """Tell whether a limit is law in a region; law that it has kept of another gives way to rows of its own."""
    if limit.weight is not LimitWeight.LAW:
        return False
    if region.has_kept(limit.region):
        of_its_own = any(other.region == region.name and set(other.names) & set(limit.names) for other in limits)
        return not of_its_own and not region.has_not_kept(limit.since)
    return region.has_as_law(limit.region)
