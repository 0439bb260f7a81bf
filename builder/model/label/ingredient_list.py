"""The list of ingredients as a label declares them, in order, for each way to finish a portion."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from builder.model.recipe.ingredient import DeclaredAs


@dataclass(frozen=True)
class Declared:
    """One entry of an ingredient list, with the least and the most it can be, as shares of the product.

    The two are equal for what the recipe weighs; a ready-made base gives only its order, so that its parts have a range. An allergen of a
    scent is named beside the scent that holds it.
    """

    inci: str
    plain: str
    declared_as: DeclaredAs
    least: Fraction
    most: Fraction
    colour_name: Mapping[str, str] = field(default_factory=dict)
    is_nano: bool = False
    is_allergen: bool = False


@dataclass(frozen=True)
class Question:
    """The one figure of a supplier that would settle most: the share of `part` in a blend, or its one-per-cent line (empty).

    `settles` counts the open pairs that are settled if the figure is in the middle of what it can be.
    """

    blend: str
    part: str
    settles: int


@dataclass(frozen=True)
class MayHold:
    """What is published of a scent whose allergens nobody has stated: those that can come to so much that a label names them.

    `allergens` are their names on a label, each with the most of it in the scent (a share of one). It is what to ask the supplier for, and
    no statement.
    """

    scent: str
    allergens: tuple[tuple[str, Fraction], ...]


@dataclass(frozen=True)
class IngredientList:
    """Entries in the order in which a label prints them; `open_pairs` names those whose order is not proven.

    `nameless` are cards that say not how they are declared, `without_statement` scents whose allergens nobody has stated where the
    region wants them named, `may_hold` what is published of those.
    """

    entries: tuple[Declared, ...]
    open_pairs: tuple[tuple[str, str], ...] = ()
    nameless: tuple[str, ...] = ()
    question: Question | None = None
    without_statement: tuple[str, ...] = ()
    may_hold: tuple[MayHold, ...] = ()

    @property
    def is_proven(self) -> bool:
        """Tell whether the order of the entries is proven, and whether all that goes in is among them."""
        return not self.open_pairs and not self.nameless


@dataclass(frozen=True)
class Variant:
    """One way to finish a portion: the options chosen, and the ingredient list that goes with them."""

    chosen: tuple[tuple[str, str | None], ...]
    ingredients: IngredientList
