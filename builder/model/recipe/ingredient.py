"""An ingredient card: what a substance is called, what it counts as, and its figures with their sources."""

import re
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from enum import StrEnum
from fractions import Fraction
from functools import cached_property

from builder.model.hazard import Hazard
from builder.model.label.declaration import Polytope, Range, polytopes_of
from builder.model.place import NOWHERE, Place
from builder.model.recipe.body_part import BodyPart
from builder.model.recipe.essential_oil import Held
from builder.model.recipe.figure import OF_ONE_PACK, Figure, Figures, Known, Source
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.recipe.quantity import Mass
from builder.model.roster.allergen_family import AllergenFamily
from builder.words.fold import fold
from builder.words.plain_number import plain_number


class Microbe(StrEnum):
    """What spoils a product with water; fungi are yeast and mould."""

    BACTERIA = "bacteria"
    FUNGI = "fungi"


class Charge(StrEnum):
    """The charge of an ingredient in water."""

    NONE = "none"
    ANIONIC = "anionic"
    CATIONIC = "cationic"
    AMPHOTERIC = "amphoteric"


_BRACKETS = re.compile(r"\s*\([^()]*\)")


def without_brackets(inci: str) -> str:
    """Return an INCI name without what stands in brackets, which is English and no part of it: Olea Europaea (Olive) Fruit Oil."""
    return " ".join(_BRACKETS.sub(" ", inci).split()) or inci


class MixesWith(StrEnum):
    """In what an ingredient dissolves or disperses."""

    OIL = "oil"
    WATER = "water"
    BOTH = "both"
    NEITHER = "neither"


class CountsAs(StrEnum):
    """What an ingredient is in the sums."""

    FAT = "fat"
    WAX = "wax"
    FATTY_ACID = "fatty acid"
    WATER = "water"
    LIQUID = "liquid"
    ALKALI = "alkali"
    ACID = "acid"
    BASE = "base"
    OTHER = "other"

    @property
    def is_oil(self) -> bool:
        """Tell whether it belongs to the oils of which a soap recipe gives percentages."""
        return self in (CountsAs.FAT, CountsAs.WAX, CountsAs.FATTY_ACID)

    @property
    def is_watery(self) -> bool:
        """Tell whether it is water, or a liquid that is mostly water."""
        return self in WATERY


WATERY = (CountsAs.WATER, CountsAs.LIQUID)


class DeclaredAs(StrEnum):
    """How an ingredient list declares it."""

    INGREDIENT = "ingredient"
    COLOUR = "colour"
    FRAGRANCE = "fragrance"
    FLAVOUR = "flavour"


SCENTS = (DeclaredAs.FRAGRANCE, DeclaredAs.FLAVOUR)
# What a limit speaks of beside names: the total of aluminium, of which a figure of the cards says how much there is, all scent, or all of
# the essential oils; and by their names a colour, one oil of the table of constituents, and the certificate of one card.
ALUMINIUM, SCENT, ESSENTIAL_OIL = "aluminium", "all scent", "all essential oil"
COLOUR, OIL, CERTIFICATE = "colour ", "oil ", "certificate of "


def solution_name(name: str, strength: Fraction) -> str:
    """Name a solution of an ingredient by its strength (by weight, of one), so that it is never taken for the solid."""
    return f"{name} solution, {plain_number(strength * 100, 6)} %"


def blend_of(names: tuple[str, ...]) -> str:
    """Return the one name of a blend of names, whatever their order; of a single name it is that name."""
    return " + ".join(sorted(names))


@dataclass(frozen=True)
class LabelName:
    """The names under which an ingredient list declares it, in descending order where it is a blend (usually one name).

    `inci` and `plain` have the same length. What the supplier says of a blend beside the order, by the number of the part: `shares` of it,
    the first part `below` one per cent, which are `colours` and which are `nano`.
    """

    inci: tuple[str, ...]
    plain: tuple[str, ...]
    known: Known
    shares: Mapping[int, Range] = field(default_factory=dict)
    below: int | None = None
    colours: frozenset[int] = frozenset()
    nano: frozenset[int] = frozenset()

    @cached_property
    def polytopes(self) -> tuple[Polytope, ...]:
        """Return what the list allows."""
        return polytopes_of(len(self.inci), self.below, self.shares, sorted(self.colours))


class AllergenList(StrEnum):
    """A list of fragrance allergens that a label has to name: that of 2003, or that of 2023, which holds it."""

    ORIGINAL = "original list"
    EXTENDED = "extended list"


@dataclass(frozen=True)
class AllergenStatement:
    """The supplier's statement of the fragrance allergens of a scent: all that the list it `covers` names, as ranges of shares.

    `contains` is keyed by folded names; what is not in it is not in the scent.
    """

    covers: AllergenList
    contains: Mapping[str, tuple[Fraction, Fraction]]
    source: Source
    at: str
    known: Known


@dataclass(frozen=True)
class Certificate:
    """The supplier's certificate of one scent: what of some constituents it `contains` (by folded names), and how much of the scent a
    product may hold `at_most`, by where the product goes on the body. Both are shares of one.
    """

    contains: Mapping[str, Range]
    at_most: Mapping[str, Fraction]
    source: Source
    at: str
    known: Known


@dataclass(frozen=True)
class DropMass:
    """The mass of one drop, measured by the studio by weighing `drops` drops."""

    drops: int
    weigh: Mass
    measured: str

    @property
    def one(self) -> Mass:
        """Return the mass of one drop."""
        return self.weigh / self.drops


@dataclass(frozen=True)
class Preserves:
    """What a preservative holds back at its usual amount, and where that was published.

    `alone` is False for what is only a part of a system. It fails beside an ingredient of one of the charges of `fails_with`.
    """

    covers: tuple[Microbe, ...]
    alone: bool
    fails_with: tuple[Charge, ...]
    source: Source
    at: str
    known: Known


@dataclass(frozen=True)
class Ingredient:
    """One ingredient card. Figures are keyed by their name (`saponification`, `density`, ...).

    `charge` is None where it is not known. `like_food`: it makes a product look or smell like food. `speeds_trace`: it
    makes raw soap thicken fast. `too_rough_for`: parts of the body that its grains scratch. `saponified_as` is the second word
    of the name of its soap or salt (Sodium Olivate). `oil` is which oil of the table of constituents a scent is, where its card says so.
    `oils` are those that each part of its label name may be, `holds` is what each can hold of each constituent, by folded names, and
    `stated` what its supplier states of it as a whole.
    `replaces` is the card of the library whose place a studio's own card takes.
    `colour_certificate` is the lot of a certified colour, `acid_frees` what acid sets free from it, `also_works_as`
    what a colour can be there for instead.
    `name_places` say where each name that it answers to is written.
    """

    name: str
    kind: IngredientKind
    counts_as: CountsAs
    mixes_with: MixesWith
    also_called: tuple[str, ...] = ()
    label_name: LabelName | None = None
    colour_name: Mapping[str, str] = field(default_factory=dict)
    declared_as: DeclaredAs = DeclaredAs.INGREDIENT
    saponified_as: str = ""
    oil: str = ""
    oils: tuple[tuple[str, ...], ...] = ()
    holds: tuple[Mapping[str, Held], ...] = ()
    stated: Mapping[str, Held] = field(default_factory=dict)
    allergen_statement: AllergenStatement | None = None
    certificate: Certificate | None = None
    hazards: tuple[Hazard, ...] = ()
    allergens: tuple[AllergenFamily, ...] = ()
    charge: Charge | None = None
    like_food: bool = False
    speeds_trace: bool = False
    too_rough_for: tuple[BodyPart, ...] = ()
    preserves: Preserves | None = None
    about: str = ""
    figures: Mapping[str, Figures] = field(default_factory=dict)
    colour_certificate: str = ""
    acid_frees: str = ""
    also_works_as: str = ""
    drop_mass: DropMass | None = None
    replaces: "Ingredient | None" = field(default=None, repr=False, compare=False)
    place: Place = field(default=NOWHERE, compare=False)
    name_places: Mapping[str, Place] = field(default_factory=dict, compare=False)

    @property
    def label_names(self) -> tuple[str, ...]:
        """Return the names of its parts on a label, by INCI and in plain words; none without a label name."""
        return (*self.label_name.inci, *self.label_name.plain) if self.label_name else ()

    @cached_property
    def key(self) -> str:
        """The form in which names are compared."""
        return fold(self.name)

    @cached_property
    def speaks_of(self) -> frozenset[str]:
        """Return everything by which a limit can count it: its names, what it holds, and what it is (see `Limit.speaks_of`)."""
        names = tuple(fold(name) for name in self.label_name.inci) if self.label_name else ()
        held = (one.name for part in (*self.holds, self.stated) for one in part.values() if one.high)
        kinds = [SCENT] if self.declared_as in SCENTS else []
        kinds += [ESSENTIAL_OIL] if self.kind is IngredientKind.ESSENTIAL_OIL else []
        kinds += [ALUMINIUM] if ALUMINIUM in self.figures else []
        colours = (COLOUR + fold(name).removesuffix(" lake") for name in (*self.us_colour_names, *self.eu_colour_names))
        kinds += [CERTIFICATE + self.key] if self.certificate else []
        oils = (OIL + fold(oil) for part in self.oils for oil in part)
        return frozenset((*names, blend_of(names), *held, *kinds, *colours, *oils))

    def figure(self, name: str) -> Figure | None:
        """Return the figure in use of that name, if the card holds one."""
        figures = self.figures.get(name)
        return figures.in_use if figures else None

    def figure_of_any_pack(self, name: str) -> Figure | None:
        """Return the figure in use of that name for a pack that others buy: what the studio knows of its own pack alone does not count."""
        own = self.figure(name)
        if self.replaces is not None and (own is None or own.known in OF_ONE_PACK):
            return self.replaces.figure(name) or own
        return own

    def solution(self, strength: Fraction) -> "Ingredient":
        """Return a solution of it as something that is bought; `strength` is by weight, of one. No figure of the solid is one of it."""
        called = tuple(solution_name(name, strength) for name in self.also_called)
        return replace(self, name=solution_name(self.name, strength), also_called=called, figures={}, replaces=None, drop_mass=None)

    @property
    def is_oily(self) -> bool:
        """Tell whether it is oil, butter or wax, also one that lye does not take (mineral oil)."""
        return self.counts_as.is_oil or self.kind in (IngredientKind.OIL, IngredientKind.BUTTER, IngredientKind.WAX)

    @property
    def eu_colour_names(self) -> tuple[str, ...]:
        """Return the names under which EU law lists it as a colour, or else the names that a list of ingredients declares."""
        if "eu" in self.colour_name:
            return tuple(self.colour_name["eu"].split(", "))
        return self.label_name.inci if self.label_name else ()

    @property
    def us_colour_names(self) -> tuple[str, ...]:
        """Return the names under which US law lists it as a colour, or else the names that a list of ingredients declares."""
        if "us" in self.colour_name:
            return tuple(self.colour_name["us"].split(", "))
        return self.label_name.inci if self.label_name else ()


# Cards by their keys.
Cards = Mapping[str, Ingredient]
