"""What a list of ingredients is made by: the region, the words of all regions for the same thing, the table of fragrance allergens."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from builder.model.label.region import Region
from builder.model.recipe.figure import Known, Source
from builder.model.recipe.ingredient import AllergenList, DeclaredAs, without_brackets
from builder.model.recipe.product import Contact
from builder.model.remembered import remembered


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

    def unnamed_up_to(self, contact: Contact) -> Fraction:
        """Return the share up to which it need not be named. What goes into a bath is washed off; what is on lips stays."""
        return self.leave_on if contact.stays_on else self.rinse_off


@dataclass(frozen=True)
class Labelling:
    """What a list of ingredients is made by: the region's rules, the words of all regions for the same thing, the table of allergens."""

    region: Region = field(default_factory=lambda: Region(""))
    regions: tuple[Region, ...] = ()
    allergens: tuple[Allergen, ...] = ()

    def named(self, key: str) -> Region:
        """Return the region of a name."""
        return next((one for one in self.regions if one.name == key), Region(key))

    @property
    def allergen_list(self) -> AllergenList | None:
        """Return the list of allergens that the region asks to be named; None where it asks for none."""
        return next((one for one in AllergenList if one == self.region.says("allergens")), None)

    @property
    def to_name(self) -> tuple[Allergen, ...]:
        """Return the allergens that the region asks to be named."""
        which = self.allergen_list
        return tuple(one for one in self.allergens if which and one.is_active and (one.is_original or which is AllergenList.EXTENDED))

    @property
    def covers(self) -> tuple[AllergenList, ...]:
        """Return the lists of allergens of which a supplier's statement has to cover one; none where the region asks for none."""
        which = self.allergen_list
        return () if which is None else tuple(AllergenList)[tuple(AllergenList).index(which) :]

    def common_name(self, name: str) -> str:
        """Return one key for all words of all regions for water, scent and flavour, for isomers, and for any other name its folded form.

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


@remembered(16)
def labelling_by(region: Region, regions: Mapping[str, Region], allergens: tuple[Allergen, ...]) -> Labelling:
    """Return what lists are made by in a region: one value for the same tables, so that what has been worked out from it is known."""
    return Labelling(region, tuple(regions.values()), allergens)
