"""What people write of their allergies, and what of a class it meets."""

from dataclasses import dataclass
from enum import StrEnum

from builder.model.recipe.figure import Known, Source
from builder.model.recipe.ingredient_kind import IngredientKind


class Says(StrEnum):
    """What some words of an answer say."""

    AN_ALLERGEN = "an allergen"
    NO_ALLERGY = "no allergy"
    NOTHING = "nothing by itself"
    TOO_MUCH = "too much"


@dataclass(frozen=True)
class AllergyWords:
    """Words that say one thing: `families` of allergens, or `kinds` of ingredients.

    `but_not` are names that hold one of the words and are not meant. `mind` is what no card can show.
    """

    words: tuple[str, ...]
    families: tuple[str, ...]
    kinds: tuple[IngredientKind, ...]
    but_not: tuple[str, ...]
    mind: str
    source: Source
    at: str
    known: Known
    says: Says = Says.AN_ALLERGEN


class By(StrEnum):
    """How an ingredient was found."""

    FAMILY = "family"
    KIND = "kind"
    NAME = "name"
    PART = "part"
    STATEMENT = "statement"
    HELD = "held"


@dataclass(frozen=True)
class AllergyFound:
    """One ingredient of a class that an allergy meets, and by which family, kind or name.

    It stands in a `phase` of the recipe, or is an option of a `choice` (the other is empty); `taken`: the person has chosen it.
    """

    recipe: str
    ingredient: str
    phase: str
    choice: str
    by: By
    named: str
    taken: bool = False


@dataclass(frozen=True)
class Allergy:
    """One thing that a person wrote: what was found, and the words that nothing here knows.

    `unstated` are scents that may hold the fragrance allergen that is meant, since their suppliers' statements are not known.
    """

    written: str
    found: tuple[AllergyFound, ...] = ()
    unclear: tuple[str, ...] = ()
    unstated: tuple[str, ...] = ()
    minds: tuple[str, ...] = ()
