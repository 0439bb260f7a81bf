"""A region: what its law asks of a cosmetic and of its label, as data. Nothing else in the program knows a region by its name."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from builder.model.label.language import OWN
from builder.model.recipe.figure import Known, Source
from builder.model.recipe.ingredient import DeclaredAs
from builder.words.fold import fold


class ColourList(StrEnum):
    """The list of colours by which a region judges them; `NONE` where it is not known here."""

    US = "us"
    EU = "eu"
    NONE = "none"


# What stands in the column of regions for a rule of every region.
ANY_REGIONS = "any"


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
        """Return the English form of a name; nothing where it is not known."""
        key = fold(inci)
        if key in self.whole or "(" in inci:
            return self.whole.get(key, inci)
        words = inci.split()
        for count in range(len(words), 1, -1):
            if english := self.plants.get(fold(" ".join(words[:count]))):
                return " ".join((*words[:count], f"({english})", *words[count:]))
        return ""


@dataclass(frozen=True)
class Region:
    """A region of which a studio is: its rules by the keys of `content/regions.yaml`, and the English that it asks for on labels.

    `in_words` and `law` are the region and its law inside a sentence, `locale` is how it writes dates and money.
    """

    name: str
    in_words: str = ""
    law: str = ""
    locale: str = "en_GB"
    rules: Mapping[str, RegionRule] = field(default_factory=dict)
    english: EnglishNames | None = None

    def says(self, key: str) -> str:
        """Return what a rule says; nothing where the region has no such rule."""
        return self.rules[key].says if key in self.rules else ""

    def rule(self, key: str) -> RegionRule | None:
        """Return a rule with where it stands; None where the region has no such rule."""
        return self.rules.get(key)

    def has_as_law(self, name: str) -> bool:
        """Tell whether what is law in a region of that name is law in this one: its own, that of every region, or one that it has kept."""
        return name in (self.name, ANY_REGIONS) or self.has_kept(name)

    def has_kept(self, name: str) -> bool:
        """Tell whether this region has kept the law of another as its own."""
        return bool(name) and name == self.says("keeps the law of")

    def has_not_kept(self, since: int | None) -> bool:
        """Tell whether an act of another region's law, made in a year, is later than the law that this one has kept of it."""
        kept = self.says("kept as of the end of")
        return since is not None and bool(kept) and since > int(kept)

    @property
    def colours(self) -> tuple[ColourList, bool]:
        """Return the list by which colours are judged, and whether it is that of another region, kept."""
        return ColourList(self.says("colours that are allowed") or ColourList.NONE), "keeps the law of" in self.rules

    @property
    def with_ounces(self) -> bool:
        """Tell whether net contents stand in ounces and in metric units, or in metric units alone."""
        return self.says("net contents") == "ounces and metric"

    @property
    def open_jar_above(self) -> int | None:
        """Return the months above which the time after opening stands in place of a date; None where a label needs neither."""
        return int(self.says("open jar above").split()[0]) if "open jar above" in self.rules else None

    @property
    def languages(self) -> tuple[str, ...]:
        """Return the names of the languages that a label carries, in order."""
        return tuple((self.says("languages") or OWN).split(" and "))

    @property
    def person_within(self) -> tuple[str, ...]:
        """Return the countries, folded, of which the person who answers for a product is in one; nothing where the law asks for none."""
        says = self.says("responsible person")
        return () if says in ("", "none") else tuple(fold(country) for country in says.split(";"))

    @property
    def free_at_one(self) -> bool:
        """Tell whether an ingredient of exactly one per cent may stand in any order."""
        return self.says("exactly one per cent") == "any order"

    @property
    def scent_may_be_last(self) -> bool:
        """Tell whether scent and flavour may stand last whatever their amount."""
        return self.says("fragrance last") == "yes"

    def collective(self, declared_as: DeclaredAs) -> str:
        """Return the word under which scents or flavours are declared together; nothing for what is declared by its own name."""
        return self.says(declared_as) if declared_as in (DeclaredAs.FRAGRANCE, DeclaredAs.FLAVOUR) else ""


NO_REGION = Region("")
