"""A recipe as the rules on what goes with what see it: the card of everything that goes in, with its place and its phase."""

from collections.abc import Iterator
from dataclasses import dataclass

from builder.model.label.language import OWN
from builder.model.place import Place
from builder.model.recipe.ingredient import CountsAs, Ingredient
from builder.model.recipe.product import Product
from builder.model.recipe.recipe import Phase, Recipe
from builder.model.studio import Studio
from builder.words.fold import fold


@dataclass(frozen=True)
class FormulaPart:
    """One ingredient of a recipe: its card, where it is named, and the phase in which it stands (None: the lye, or a student's choice)."""

    card: Ingredient
    place: Place
    phase: Phase | None = None


@dataclass(frozen=True)
class Formulation:
    """What a recipe always holds (`parts`), and what students may add (`options`)."""

    recipe: Recipe
    product: Product
    parts: tuple[FormulaPart, ...]
    options: tuple[FormulaPart, ...]

    @property
    def all(self) -> tuple[FormulaPart, ...]:
        """Return the parts and the options."""
        return (*self.parts, *self.options)

    @property
    def stays_on(self) -> bool:
        """Tell whether the product stays on the skin or the lips."""
        return self.product.contact.stays_on

    @property
    def with_lye(self) -> bool:
        """Tell whether it is soap made with lye."""
        return self.product.made_with_lye or self.recipe.lye is not None

    def first(self, *counts: CountsAs) -> FormulaPart | None:
        """Return the first part that counts as one of these."""
        return next((part for part in self.parts if part.card.counts_as in counts), None)

    def of_kind(self, *kinds: str) -> tuple[FormulaPart, ...]:
        """Return the parts of some kinds."""
        return tuple(part for part in self.parts if part.card.kind in kinds)

    @property
    def label_text(self) -> str:
        """Return, folded, what the label tells the user in English."""
        return label_text_of(self.recipe)


def label_text_of(recipe: Recipe) -> str:
    """Return, folded, what the label of a recipe tells the user in English."""
    told = recipe.told_in(OWN)
    return fold(" ".join((*told.label_cautions, told.directions)))


def formulas_of(studio: Studio) -> Iterator[Formulation]:
    """Yield the formula of each recipe whose every name has a card and whose file could be read whole."""
    for recipe in studio.recipes.values():
        formula = formula_of(recipe, studio)
        if formula and not recipe.in_part:
            yield formula


def formula_of(recipe: Recipe, studio: Studio) -> Formulation | None:
    """Return the formula of one recipe; None where a name has no card."""
    if any(studio.ingredient(name) is None for name in recipe.names):
        return None
    in_phases = [(line.ingredient, phase) for phase in recipe.phases for line in phase.lines]
    in_lye = [liquid.name for liquid in recipe.lye.liquids] if recipe.lye else []
    parts = [FormulaPart(studio.ingredients[name.key], name.place, phase) for name, phase in in_phases]
    parts += [FormulaPart(studio.ingredients[name.key], name.place) for name in in_lye]
    chosen = tuple(FormulaPart(studio.ingredients[name.key], name.place) for name in recipe.options)
    return Formulation(recipe, studio.products[recipe.product], tuple(parts), chosen)
