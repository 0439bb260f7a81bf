"""A kind of product: where it goes on the body, and how it is sold."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from builder.model.label.language import Language
from builder.model.label.region import Region
from builder.model.place import NOWHERE, Place
from builder.model.recipe.body_part import BodyPart
from builder.model.recipe.figure import Figure


class Contact(StrEnum):
    """Where a product goes, and whether it stays there."""

    LEAVE_ON = "leave-on"
    RINSE_OFF = "rinse-off"
    LIPS = "lips"
    BATH = "bath"

    @property
    def stays_on(self) -> bool:
        """Tell whether the product stays on the skin or the lips."""
        return self in (Contact.LEAVE_ON, Contact.LIPS)


class Condition(StrEnum):
    """What a row of a table on words may hold for alone: what a recipe is, or what is in it."""

    LYE = "lye"
    NO_LYE = "no lye"
    UNPRESERVED = "unpreserved"
    FIZZ = "fizz"
    WET = "wet"
    BATH = "bath"
    SCRUB = "scrub"
    SCENTED = "scented"
    OILY = "oily"
    UNCURED = "uncured"
    ANIMAL = "animal"
    NUTS = "nuts"
    MILK = "milk"
    WHEAT = "wheat"
    SOY = "soy"


class DeclaredBy(StrEnum):
    """How net contents are stated."""

    WEIGHT = "weight"
    VOLUME = "volume"


@dataclass(frozen=True)
class Product:
    """One product kind of `content/products.yaml`, or of the studio's own `shelf/products.yaml`.

    `made_with_lye` says whether a recipe of this kind must have a lye block.
    `declared_by_in` says it for a region where the custom differs.
    `usual_ph` is the pH that such a product with water usually has, `when` it is measured so. `meets_water`: wet hands go into its jar.
    `used_on` are the parts of the body on which such a product goes unless its recipe says otherwise.
    `counts_as` are conditions that hold for such a product whatever is in it.
    `cooked`: a soap that is boiled. `usual_alkali` is the one that is meant where only its weight is given; empty where that is open.
    `like` are the kinds of the library whose limits and warnings hold for a kind of the studio's own, and
    `translations` its identity in other languages, by their names.
    """

    name: str
    identity: str
    contact: Contact
    made_with_lye: bool
    declared_by: DeclaredBy
    usual_ph: Figure | None = None
    meets_water: bool = False
    declared_by_in: Mapping[str, DeclaredBy] = field(default_factory=dict)
    cooked: bool = False
    used_on: tuple[BodyPart, ...] = ()
    counts_as: tuple[Condition, ...] = ()
    usual_alkali: str = ""
    like: tuple[str, ...] = ()
    translations: Mapping[str, str] = field(default_factory=dict)
    place: Place = field(default=NOWHERE, compare=False)

    def is_any_of(self, kinds: Iterable[str]) -> bool:
        """Tell whether what is meant for some kinds is meant for it."""
        return any(kind == self.name or kind in self.like for kind in kinds)

    def identity_in(self, language: Language) -> str:
        """Return what a label calls it in one language; empty where nobody has written it."""
        return self.translations.get(language.name, "") or language.text(self.identity)

    def by_volume(self, region: Region) -> bool:
        """Tell whether net contents are stated by volume in a region."""
        return self.declared_by_in.get(region.name, self.declared_by) == DeclaredBy.VOLUME
