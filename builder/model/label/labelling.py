"""How a region wants ingredients listed, and the fragrance allergens that have to be named: the rules of a label as data."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from builder.model.label.language import OWN
from builder.model.recipe.figure import Known, Source
from builder.model.recipe.ingredient import DeclaredAs, without_brackets
from builder.words.fold import fold


@dataclass(frozen=True)
class RegionRule:
    """One rule of a region: what it says in a word, where it stands, and how that is known."""

    says: str
    source: Source
    at: str
    known: Known


@dataclass(frozen=True)
class EnglishNames:
    """The English of Latin INCI names, by their folded form: of `plants` what stands in brackets behind the name, else the `whole` name."""

    plants: Mapping[str, str] = field(default_factory=dict)
    whole: Mapping[str, str] = field(default_factory=dict)

    def of(self, inci: str) -> str:
        """Give the English form of a name; nothing where it is not known."""
        key = fold(inci)
        if key in self.whole or "(" in inci:
            return self.whole.get(key, inci)
        words = inci.split()
        for count in range(len(words), 1, -1):
            if english := self.plants.get(fold(" ".join(words[:count]))):
                return " ".join((*words[:count], f"({english})", *words[count:]))
        return ""


@dataclass(frozen=True)
class LabelRegion:
    """The rules of one region for a list of ingredients, by the keys of `content/label_regions.yaml`, and the English that it asks for."""

    name: str
    rules: Mapping[str, RegionRule] = field(default_factory=dict)
    english: EnglishNames | None = None

    def says(self, key: str) -> str:
        """Give what a rule says; nothing where the region has no such rule."""
        return self.rules[key].says if key in self.rules else ""

    @property
    def languages(self) -> tuple[str, ...]:
        """Give the names of the languages that a label carries, in order."""
        return tuple((self.says("languages") or OWN).split(" and "))

    @property
    def free_at_one(self) -> bool:
        """Say whether an ingredient of exactly one per cent may stand in any order."""
        return self.says("exactly one per cent") == "any order"

    @property
    def scent_may_be_last(self) -> bool:
        """Say whether scent and flavour may stand last whatever their amount."""
        return self.says("fragrance last") == "yes"

    def collective(self, declared_as: DeclaredAs) -> str:
        """Give the word under which scents or flavours are declared together; nothing for what is declared by its own name."""
        return self.says(declared_as) if declared_as in (DeclaredAs.FRAGRANCE, DeclaredAs.FLAVOUR) else ""


@dataclass(frozen=True)
class Allergen:
    """One row of the table of fragrance allergens: the name on a label, and what counts towards it.

    `counts` are substances whose shares are added (isomers), `oils` folded INCI names of whole oils and extracts that count as they are.
    The most that need not be named are shares of one. `is_original`: it stood in the list before 2023; `is_active`: it may be used at all.
    """

    label_name: str
    counts: tuple[str, ...]
    oils: tuple[str, ...]
    leave_on: Fraction
    rinse_off: Fraction
    is_original: bool
    is_active: bool
    entry: str
    source: Source
    known: Known

    def unnamed_up_to(self, contact: str) -> Fraction:
        """Give the share up to which it need not be named. What goes into a bath is washed off; what is on lips stays."""
        return self.rinse_off if contact in ("rinse-off", "bath") else self.leave_on


@dataclass(frozen=True)
class Labelling:
    """What a list of ingredients is made by: the region's rules, the words of all regions for the same thing, the table of allergens."""

    region: LabelRegion = field(default_factory=lambda: LabelRegion(""))
    regions: tuple[LabelRegion, ...] = ()
    allergens: tuple[Allergen, ...] = ()

    @property
    def to_name(self) -> tuple[Allergen, ...]:
        """Give the allergens that the region asks to be named."""
        which = self.region.says("allergens")
        if which not in ("original list", "extended list"):
            return ()
        return tuple(one for one in self.allergens if one.is_active and (one.is_original or which == "extended list"))

    @property
    def covers(self) -> tuple[str, ...]:
        """Give the lists of allergens of which a supplier's statement has to cover one; none where the region asks for none."""
        which = self.region.says("allergens")
        return {"original list": ("original list", "extended list"), "extended list": ("extended list",)}.get(which, ())

    def common_name(self, name: str) -> str:
        """Give one key for all words of all regions for water, scent and flavour, for isomers, and for any other name its folded form.

        What stands in brackets is no part of a name: Helianthus Annuus (Sunflower) Seed Oil.
        """
        folded = without_brackets(name).casefold()
        for allergen in self.to_name:
            if folded in allergen.counts:
                return allergen.label_name.casefold()
        for key in ("water", DeclaredAs.FRAGRANCE, DeclaredAs.FLAVOUR):
            if any(folded == region.says(key).casefold() for region in self.regions):
                return str(key)
        return folded


ANY_REGION = Labelling()
