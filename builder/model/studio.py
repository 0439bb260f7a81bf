"""The studio: everything that was read, sound or not, in one value."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from fractions import Fraction
from functools import cached_property

from builder.model.dates.booking import NO_BOOKING, Booking, Venue
from builder.model.dates.published_date import PublishedDate
from builder.model.dates.studio_class import StudioClass
from builder.model.dose.limit import LimitRules, rules_for
from builder.model.finding import Acceptance
from builder.model.label.label_sheet import NO_WISHES, LabelWishes, Paper
from builder.model.label.labelling import Labelling, labelling_by
from builder.model.label.language import ENGLISH, OWN, Language
from builder.model.label.own_font import OwnFont
from builder.model.label.region import Region
from builder.model.label.type_height import LabelStatement
from builder.model.label.typeface import Typeface
from builder.model.library import Library
from builder.model.own_document import USUAL_LOOK, Look, OwnDocument
from builder.model.picture import PictureFile
from builder.model.place import NOWHERE, Place, Placed
from builder.model.recipe.container import Container
from builder.model.recipe.ingredient import Ingredient
from builder.model.recipe.quantity import Density, Mass, Volume, WeighingUnit
from builder.model.recipe.recipe import Recipe
from builder.model.roster.roster import Roster
from builder.model.supplies.inventory import InventoryEntry
from builder.model.supplies.supply import Supply, density_on_card
from builder.model.teaching.lesson import Page
from builder.model.teaching.supervision import OwnNumbers
from builder.words.fold import fold


@dataclass(frozen=True)
class Scale:
    """A scale: its division, the most it holds, and the unit in which it is read, with the grams in one of it.

    `accurate_to` is how far it may be off by its own maker's word; None where nothing is said of it.
    """

    name: str
    division: Mass
    up_to: Mass
    unit: WeighingUnit
    grams_per_unit: Fraction = Fraction(1)
    accurate_to: Mass | None = None
    place: Place = field(default=NOWHERE, compare=False)

    @property
    def off(self) -> Mass:
        """Return how far one weighing may be off either way.

        A tared weighing is two readings, each half a division off, which makes one division; more where the maker says so.
        """
        return max(self.division, self.accurate_to) if self.accurate_to else self.division


@dataclass(frozen=True)
class Responsible:
    """Who answers for the products where a region wants somebody inside it: a name and an address, which ends with the country."""

    name: str
    address: tuple[str, ...]
    place: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True)
class Profile(Placed):
    """What studio.yaml says of the studio itself."""

    name: str
    address: tuple[str, ...]
    contact: Mapping[str, str]
    region: str
    currency: str
    paper: Paper
    scales: tuple[Scale, ...]
    home_scales: tuple[Scale, ...]
    responsible: Responsible | None = None
    tagline: str = ""
    teacher: str = ""
    public_address: str = ""
    emergency: Mapping[str, str] = field(default_factory=dict)
    teaching_policy: Mapping[str, OwnNumbers] = field(default_factory=dict)
    labels: LabelWishes = NO_WISHES
    accepts: Mapping[str, Acceptance] = field(default_factory=dict)
    costs_on_sheets: bool = False
    documents: tuple[OwnDocument, ...] = ()
    language: str = OWN
    time_zone: str = ""
    venue: Venue | None = None
    booking: Booking = NO_BOOKING
    look: Look = USUAL_LOOK


PICTURE_ENDINGS = (".svg", ".png", ".jpg", ".jpeg", ".webp")


@dataclass(frozen=True)
class InPart:
    """What can be read in part, kind by kind, with `UNREAD` in place of the rest (`model/recipe/unread.py`). It is in no other list."""

    recipes: tuple[Recipe, ...] = ()
    classes: tuple[StudioClass, ...] = ()
    cards: tuple[Ingredient, ...] = ()
    supplies: tuple[Supply, ...] = ()
    inventory: tuple[InventoryEntry, ...] = ()


NOTHING_IN_PART = InPart()


@dataclass(frozen=True, kw_only=True)
class Studio(Library):
    """A studio with the library that it works from.

    `pictures` are by their paths in the studio folder, `other_files` those of files that nothing can be made of; `letters` are the code
    points that every font of the printed sheets has, `typefaces` the two of the labels, `regular` and `bold`. `supplies` are the packs
    that the studio buys, `inventory` what it has counted on its shelf. `published` are the dates that the last publication showed.
    `told` says when each state of a date was first shown. `rosters` are by the key of their class. `speaks` is the language of pages and
    sheets. `title_font` is what was made of the font of its own.
    """

    profile: Profile
    recipes: Mapping[str, Recipe] = field(default_factory=dict)
    in_part: InPart = field(default=NOTHING_IN_PART, compare=False)
    classes: Mapping[str, StudioClass] = field(default_factory=dict)
    pages: Mapping[str, Page] = field(default_factory=dict)
    pictures: Mapping[str, PictureFile] = field(default_factory=dict)
    letters: frozenset[int] = frozenset()
    other_files: frozenset[str] = frozenset()
    supplies: tuple[Supply, ...] = ()
    inventory: tuple[InventoryEntry, ...] = ()
    rosters: Mapping[str, Roster] = field(default_factory=dict)
    published: tuple[PublishedDate, ...] = ()
    told: Mapping[PublishedDate, date] = field(default_factory=dict)
    typefaces: Mapping[str, Typeface] = field(default_factory=dict)
    speaks: Language = ENGLISH
    title_font: OwnFont | None = None

    @property
    def locale(self) -> str:
        """Return the locale of dates, numbers and prices on pages and sheets: the region's where those are English, else the language's."""
        return self.region.locale if self.speaks.is_own else self.speaks.locale

    @property
    def region(self) -> Region:
        """Return the region whose law binds the studio."""
        return self.regions.get(self.profile.region, Region(self.profile.region))

    @property
    def labelling(self) -> Labelling:
        """Return what the studio's lists of ingredients are made by."""
        return labelling_by(self.region, self.regions, self.allergens)

    @property
    def knows_type_heights(self) -> bool:
        """Tell whether anything says how high the type of a label has to be in the studio's region."""
        return any(rule.region == self.profile.region and rule.statement is LabelStatement.TEXT for rule in self.type_heights)

    @property
    def label_languages(self) -> tuple[Language, ...]:
        """Return the languages that the labels of the studio's region carry."""
        return tuple(self.languages[name] for name in self.labelling.region.languages)

    def name_in(self, language: Language, option: str) -> str:
        """Return what the library calls an option in a language: by its own name, or by that of the card that answers to it."""
        card = self.ingredient(option)
        return language.text(option) or (language.text(card.name) if card else "")

    def rules(self, youngest: int | None = None) -> LimitRules:
        """Return what a product is judged by, for people of whom the youngest is so many years old, if that is known."""
        return rules_for(self.region, self.limits, self.colour_rules, self.field_rules, youngest)

    def without_names(self) -> "Studio":
        """Return the studio as it may be published: without its rosters."""
        return replace(self, rosters={})

    def without_lessons(self) -> "Studio":
        """Return the studio without what its lessons and pages say, for what is asked of a recipe alone."""
        return replace(self, classes={key: one.without_lesson() for key, one in self.classes.items()}, pages={})

    @property
    def names_somebody(self) -> bool:
        """Tell whether it holds what somebody wrote of a person."""
        return bool(self.rosters)

    @property
    def recipes_made(self) -> tuple[Recipe, ...]:
        """Return the recipes that a class makes; any other has no label."""
        return tuple(recipe for key, recipe in self.recipes.items() if key in self.classes_by_recipe)

    def ingredient(self, name: object) -> Ingredient | None:
        """Return the card that answers to a name, without regard to case."""
        return self.ingredients.get(fold(str(name)))

    @cached_property
    def classes_by_recipe(self) -> Mapping[str, tuple[StudioClass, ...]]:
        """Return the classes that make each recipe, by its key, in their order."""
        found: dict[str, list[StudioClass]] = {}
        for studio_class in self.classes.values():
            for key in dict.fromkeys(studio_class.recipe_keys):
                found.setdefault(key, []).append(studio_class)
        return {key: tuple(making) for key, making in found.items()}

    @cached_property
    def bought_solutions(self) -> Mapping[str, Ingredient]:
        """Return the ready-mixed lyes that recipes say are bought, each as a thing to buy, by all of its folded names."""
        found: dict[str, Ingredient] = {}
        for lye in (recipe.lye for recipe in self.recipes.values() if recipe.lye and recipe.lye.bought):
            for card in (self.ingredient(alkali.name) for alkali in lye.alkalis):
                if card and lye.bought:
                    solution = card.solution(lye.bought.typical)
                    found |= {fold(name): solution for name in (solution.name, *solution.also_called)}
        return found

    def stocked(self, name: object) -> Ingredient | None:
        """Return what a pack or a line of the inventory holds: an ingredient, or a ready-mixed lye that is bought."""
        return self.ingredient(name) or self.bought_solutions.get(fold(str(name)))

    def container(self, name: object) -> Container | None:
        """Return the container that answers to a name, without regard to case."""
        return self.containers.get(fold(str(name)))

    def density_as_bought(self, name: object) -> Density | None:
        """Return the density of an ingredient: as the studio has weighed a pack of it, else as its card says; None where nobody knows."""
        card = self.stocked(name)
        if card is None:
            return None
        weighed = (one for one in self.supplies if one.weighs and isinstance(one.size, Volume) and self.stocked(one.name) is card)
        pack = next(weighed, None)
        return pack.density(card) if pack else density_on_card(card)
